'use client';

import { useWords } from '#words';
import { z } from 'zod';
import { type LimitView } from '@/lib/determinations/limits-of-write-up';
import { findWithinLimitsInput } from '@/lib/determinations/schema';
import { readMeasurement } from '@/lib/findings/measurement-input';
import { type Result } from '@/lib/problems';
import { MEASURE_UNITS } from '@/lib/rules/findings/measurements';
import { CommandForm } from '../../_ui/command-form';
import { NumberField, TextArea, TextField } from '../../_ui/fields';
import { useCommand } from '../../_ui/use-command';
import { findWithin } from '../actions';
import { useSaid } from '../acts';
import { SigningPassword } from './signing-password';

type Typed = {
  boxes: string[];
  measured: string;
  limitText: string;
  limitSource: string;
  statement: string;
  password: string;
};

/**
 * A condition measured against the stored limits of this aircraft: a box for each, in the limit's own unit. What has to be
 * measured too and has no stored limit is written in words.
 */
export function MeasuredWithinForm(props: {
  discrepancyId: string;
  signer: string;
  limits: readonly LimitView[];
  neededInWords: readonly string[];
}) {
  const t = useWords();
  const { discrepancyId, signer, limits, neededInWords } = props;
  const said = useSaid();
  const asInput = ({ boxes, measured, limitText, limitSource, statement, password }: Typed) => {
    const readings = readingsOf(boxes, limits);
    const [first, ...more] = readings.map(({ limitId, measuredValue }) => ({ limitId, measuredValue }));
    return {
      discrepancyId,
      statement,
      password,
      measured,
      limitText,
      limitSource,
      limitId: first?.limitId ?? limits[0]?.id,
      measuredValue: first?.measuredValue,
      ...(more.length > 0 ? { alsoMeasured: more } : {}),
    };
  };
  /** The service names a number by its place among those sent; the form by the box it was typed into. */
  const boxOf = (path: string, typed: Typed): string => {
    const place =
      path === 'measuredValue' ? 0 : Number(/^alsoMeasured\.(\d+)\./.exec(path)?.[1] ?? Number.NaN) + 1;
    return Number.isNaN(place) ? path : `boxes.${readingsOf(typed.boxes, limits)[place]?.box ?? 0}`;
  };
  const command = useCommand<Typed, unknown>({
    action: async (typed) =>
      inBoxes(await findWithin({ ...asInput(typed), requestId: typed.requestId }), (path) =>
        boxOf(path, typed),
      ),
    schema: z.unknown().superRefine((raw, context) => {
      const typed = raw as Typed & { requestId: string };
      for (const [box, text] of typed.boxes.entries()) {
        const limit = limits[box];
        const read = limit && text.trim() !== '' ? readMeasurement(text, limit.unit) : null;
        if (read && !read.ok) context.addIssue({ code: 'custom', path: ['boxes', box], message: read.say });
      }
      const parsed = findWithinLimitsInput.safeParse({ ...asInput(typed), requestId: typed.requestId });
      for (const issue of parsed.error?.issues ?? []) {
        const path = boxOf(issue.path.join('.'), typed).split('.');
        context.addIssue({ code: 'custom', path, message: issue.message });
      }
    }),
    start: {
      boxes: limits.map(() => ''),
      measured: '',
      limitText: '',
      limitSource: '',
      statement: '',
      password: '',
    },
    onDone: () => said('Found within limits and signed. It stays open as a watch.'),
  });
  const rest = neededInWords.join(' and ');
  const either = limits.length > 1 && limits.every(({ needed }) => !needed);
  return (
    <CommandForm
      command={command}
      submit={t('Sign the finding')}
      pendingWords={t('Signing…')}
      label={t('Find within limits')}
    >
      {either && <p>{t('Enter what you measured; leave the other box empty.')}</p>}
      {limits.map((limit, box) => (
        <NumberField
          key={limit.id}
          name={`boxes.${box}`}
          label={limit.label}
          unit={MEASURE_UNITS[limit.unit].label}
          optional={either}
          hint={t('Limit: {bounds}. Source: {source}.{which}', {
            bounds: limit.bounds,
            source: limit.source,
            which: limit.reported === null ? '' : t(' Reported: {reported}.', { reported: limit.reported }),
          })}
        />
      ))}
      {rest !== '' && (
        <>
          <p>
            {t('No limit is stored for this, and it has to be measured too: {rest}. Write it in words.', {
              rest,
            })}
          </p>
          <TextField
            name="measured"
            label={t('{rest}: measured', { rest })}
            hint={t('Value, unit, and with what.')}
          />
          <TextField
            name="limitText"
            label={t('{rest}: the limit', { rest })}
            hint={t('As the source states it.')}
          />
          <TextField
            name="limitSource"
            label={t('{rest}: where the limit comes from', { rest })}
            hint={t('Manual, revision, page. A limit without a source is no limit.')}
          />
        </>
      )}
      <TextArea name="statement" label={t('Your finding')} rows={3} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}

/** What was typed, as whole numbers of the smallest unit; empty boxes left out, unreadable ones no number. */
function readingsOf(boxes: readonly string[], limits: readonly LimitView[]) {
  return limits.flatMap(({ id, unit }, box) => {
    const text = boxes[box] ?? '';
    if (text.trim() === '') return [];
    const read = readMeasurement(text, unit);
    return [{ box, limitId: id, measuredValue: read.ok ? read.value : Number.NaN }];
  });
}

/** A refusal with its fields renamed to the form's own. */
function inBoxes<T>(result: Result<T>, rename: (path: string) => string): Result<T> {
  if (result.ok || !result.problem.fields) return result;
  const fields = Object.fromEntries(
    Object.entries(result.problem.fields).map(([path, messages]) => [rename(path), messages]),
  );
  return { ok: false, problem: { ...result.problem, fields } };
}
