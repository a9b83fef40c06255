'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { z } from 'zod';
import { CommandForm } from '@/app/_ui/command-form';
import { Checkbox, NumberField, TextArea } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { type ReadingCorrected } from '@/lib/releases/correct-meters';
import { correctMetersInput } from '@/lib/releases/meters-schema';
import { type FlightReading } from '@/lib/releases/readings';
import { formatTenths, parseTenths } from '@/lib/rules/hours';
import { METERS, type ReadingMoment } from '@/lib/rules/meters';
import { correctMeters } from '../../actions';
import styles from '../release.module.css';

interface CorrectProps {
  readonly moment: ReadingMoment;
  readonly reading: FlightReading;
  /** The return of the flight, when it was read. */
  readonly back: FlightReading | null;
  readonly onDone: (corrected: ReadingCorrected) => void;
}

/** As typed: hours as a meter shows them. */
const EMPTY = {
  hobbsTenths: '',
  tachTenths: '',
  isBackToo: false,
  back: { hobbsTenths: '', tachTenths: '' },
  why: '',
};
type Typed = typeof EMPTY;

/** A mistyped reading put right, folded away: it is seldom needed, and both meters are typed anew. */
export function Correct({ moment, reading, back, onDone }: CorrectProps) {
  const t = useWords();
  const end = moment === 'out' ? 'departure' : 'return';
  const backBeside = moment === 'out' ? back : null;
  const asInput = ({ requestId, isBackToo, why, ...typed }: Typed & { requestId: string }) => ({
    requestId,
    readingId: reading.id,
    ...tenthsOf(typed),
    back: backBeside && isBackToo ? { readingId: backBeside.id, ...tenthsOf(typed.back) } : null,
    why,
  });
  const command = useCommand<Typed, ReadingCorrected>({
    schema: z.preprocess((typed) => asInput(typed as Typed & { requestId: string }), correctMetersInput),
    action: (typed) => correctMeters(asInput(typed)),
    start: EMPTY,
    onDone,
  });
  return (
    <details className={styles.kept}>
      <summary>
        {t('{which} mistyped? Correct it', { which: end === 'departure' ? t('Departure') : t('Return') })}
      </summary>
      <CommandForm
        command={command}
        submit={t('Correct the {end}', { end })}
        pendingWords={t('Correcting…')}
        label={t('Correct the {end}', { end })}
      >
        <p className={styles.soft}>
          {t(
            'What was written first stays on record. The hours of the aircraft go by the corrected figures.',
          )}
        </p>
        <Both stands={reading} />
        {backBeside && <BackToo back={backBeside} />}
        <TextArea
          name="why"
          label={t('Why is it corrected?')}
          hint={t('For example: two digits swapped. Stays on record with your name.')}
          rows={2}
          maxLength={500}
        />
      </CommandForm>
    </details>
  );
}

const tenthsOf = ({ hobbsTenths, tachTenths }: Pick<Typed, 'hobbsTenths' | 'tachTenths'>) => ({
  hobbsTenths: parseTenths(hobbsTenths.trim()),
  tachTenths: parseTenths(tachTenths.trim()),
});

function Both({ stands, within = '' }: { stands: FlightReading; within?: 'back.' | '' }) {
  const t = useWords();
  return (
    <div className={styles.meters}>
      {METERS.map(({ field, name }) => (
        <NumberField
          key={field}
          name={`${within}${field}`}
          label={within ? t('{name} at return', { name }) : name}
          unit="h"
          hint={t('Stands as {tenths}', { tenths: formatTenths(stands[field]) })}
        />
      ))}
    </div>
  );
}

/** A departure and a return misread the same way cannot be put right one by one: neither fits beside the other. */
function BackToo({ back }: { back: FlightReading }) {
  const t = useWords();
  const isBackToo = useWatch<Typed>({ name: 'isBackToo' });
  return (
    <>
      <Checkbox name="isBackToo" label={t('The return is mistyped too')} />
      {isBackToo === true && <Both stands={back} within="back." />}
    </>
  );
}
