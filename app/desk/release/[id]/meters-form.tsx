'use client';

import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useFormContext, useWatch } from 'react-hook-form';
import { z } from 'zod';
import { CommandForm } from '@/app/_ui/command-form';
import { Checkbox, ChoiceGroup, NumberField, TextField } from '@/app/_ui/fields';
import { momentInWords } from '@/app/_ui/moment';
import { useCommand } from '@/app/_ui/use-command';
import { instantOfWallClock } from '@/app/_ui/wall-clock';
import { readMetersInInput, readMetersOutInput } from '@/lib/releases/meters-schema';
import { type ReadingTaken } from '@/lib/releases/record-meters';
import { formatTenths, parseTenths } from '@/lib/rules/hours';
import { METERS, type LastOnRecord, type ReadingMoment } from '@/lib/rules/meters';
import { recordMeters } from '../../actions';
import styles from '../release.module.css';

interface FormProps {
  readonly releaseId: string;
  readonly moment: ReadingMoment;
  /** Shown as a hint, never filled in: a meter is read, not copied. */
  readonly last: LastOnRecord;
  readonly zone: string;
  readonly onDone: (taken: ReadingTaken) => void;
}

/** As typed: hours as a meter shows them, a time as a clock at the base shows it. */
const EMPTY = { hobbsTenths: '', tachTenths: '', whenRead: 'now', readAt: '', isSure: false };
type Typed = typeof EMPTY;

/** Hobbs and tach at departure or return, written down at the desk. */
export function MetersForm({ releaseId, moment, last, zone, onDone }: FormProps) {
  const t = useWords();
  const asInput = ({
    hobbsTenths,
    tachTenths,
    whenRead,
    readAt,
    requestId,
  }: Typed & { requestId: string }) => ({
    requestId,
    releaseId,
    moment,
    hobbsTenths: parseTenths(hobbsTenths.trim()),
    tachTenths: parseTenths(tachTenths.trim()),
    readAt: whenRead === 'now' ? 'now' : (instantOfWallClock(readAt, zone) ?? ''),
  });
  const command = useCommand<Typed, ReadingTaken>({
    schema: z.preprocess(
      (typed) => asInput(typed as Typed & { requestId: string }),
      moment === 'out' ? readMetersOutInput : readMetersInInput,
    ),
    action: async (typed) => {
      if (moment === 'out' && !typed.isSure && gapsOf(t, typed, last).length > 0) {
        return {
          ok: false,
          problem: {
            code: 'invalid',
            say: t('Hours that nobody wrote down. Read the meters once more before you write this down.'),
            fields: { isSure: [t('Say that the figures are right.')] },
          },
        };
      }
      return recordMeters(asInput(typed));
    },
    start: EMPTY,
    onDone,
  });
  return (
    <CommandForm
      command={command}
      submit={moment === 'out' ? t('Write down the departure') : t('Write down the return')}
      pendingWords={t('Writing down…')}
      label={moment === 'out' ? t('Meters at departure') : t('Meters at return')}
    >
      <div className={styles.meters}>
        {METERS.map(({ field, name }) => (
          <NumberField
            key={field}
            name={field}
            label={name}
            unit="h"
            hint={lastInWords(t, last, field, zone)}
          />
        ))}
      </div>
      <WhenRead />
      {moment === 'out' && <Gaps last={last} />}
    </CommandForm>
  );
}

function lastInWords(
  t: Translate,
  last: LastOnRecord,
  field: 'hobbsTenths' | 'tachTenths',
  zone: string,
): string {
  const tenths = last[field];
  if (tenths === null) return t('No reading on record.');
  const when = last.at === null ? '' : `, ${momentInWords(last.at, zone)}`;
  return t('Last on record {tenths}{when}', { tenths: formatTenths(tenths), when });
}

function WhenRead() {
  const t = useWords();
  const whenRead = useWatch<Typed>({ name: 'whenRead' });
  return (
    <>
      <ChoiceGroup
        name="whenRead"
        label={t('When were they read?')}
        sideBySide
        choices={[
          { value: 'now', label: t('Just now') },
          { value: 'earlier', label: t('Earlier') },
        ]}
      />
      {whenRead === 'earlier' && (
        <TextField
          name="readAt"
          label={t('Read at')}
          type="datetime-local"
          hint={t('In the time of the aircraft’s base.')}
        />
      )}
    </>
  );
}

/** A departure above the last reading: hours nobody wrote down, or a slip of the hand that would be on record for ever. */
function Gaps({ last }: { last: LastOnRecord }) {
  const t = useWords();
  const { control } = useFormContext<Typed>();
  const gaps = gapsOf(t, useWatch({ control }), last);
  return (
    <div aria-live="polite" className={styles.gaps}>
      {gaps.map((gap) => (
        <p key={gap}>{gap}</p>
      ))}
      {gaps.length > 0 && (
        <Checkbox name="isSure" label={t('I have read them once more: the figures are right')} />
      )}
    </div>
  );
}

function gapsOf(t: Translate, typed: Partial<Typed>, last: LastOnRecord): string[] {
  return METERS.flatMap(({ field, name }) => {
    const shown = parseTenths((typed[field] ?? '').trim());
    const before = last[field];
    if (shown === null || before === null || shown <= before) return [];
    return [
      t('{name} stands {tenths} h above the last on record. Those hours will count.', {
        name,
        tenths: formatTenths(shown - before),
      }),
    ];
  });
}
