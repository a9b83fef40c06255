import type { Severity } from '../aircraft';
import type { Line } from '../verdict';
import { findingOf } from './catalogue';
import {
  isUsableLimit,
  judgeAgainstLimit,
  judgeMeasured,
  type Measured,
  type StoredLimit,
} from './measured-against-limits';
import { measurementOf } from './measurements';

/** What is on the books about the thing that somebody has seen again. */
export interface StandingWriteUp {
  readonly number: string;
  readonly state: 'open' | 'deferred' | 'closed';
  /** What counts; null while undecided, and undecided grounds. */
  readonly severity: Severity | null;
  readonly findingKey: string | null;
}

/**
 * Why an observation may not rest on the write-up it is about, in a sentence; null when it may. It may not when the
 * write-up is closed, when a value measured now lies outside a limit stored for the aircraft, or when triage of what was
 * measured proposes more than counts now. Exactly on a limit is within.
 *
 * A write-up that grounds already cannot be outdone. A value without a limit to hold it against is undecided, and undecided
 * grounds: where the old write-up lets the aircraft fly, it opens a new one. A value not taken this time is nothing
 * worse, or whoever measures one thing would ground what whoever measures nothing does not. The scheme is our design
 * (issue 3).
 */
export function whyAnew(
  writeUp: StandingWriteUp,
  measured: Measured,
  limits: readonly StoredLimit[],
): string | null {
  const { number, state, severity } = writeUp;
  if (state === 'closed') return `${number} is closed. The same trouble again is a new write-up.`;
  if (state === 'open' && (severity === null || severity === 'grounding')) return null;
  const outside = outsideALimit(measured, limits);
  if (outside) return worse(number, outside.because);
  const judged = judgedNow(writeUp.findingKey, measured, limits);
  if (judged?.result === 'undecided')
    return worse(number, `Not known: ${judged.missing ?? 'what was measured'}.`);
  // What is measured within a limit is a watch, which a mechanic has still to find so; that is more than a note.
  return judged?.result === 'within' && severity === 'note'
    ? worse(number, 'It is measurable. A mechanic has to find it within limits.')
    : null;
}

const worse = (number: string, because: string): string => `More than ${number} stands for. ${because}`;

/** The first value outside a usable limit, whatever finding the limit was stored beside. */
const outsideALimit = (measured: Measured, limits: readonly StoredLimit[]): Line | undefined =>
  limits
    .flatMap((limit) => {
      const measurement = measurementOf(limit.measurement);
      const value = Object.hasOwn(measured, limit.measurement) ? measured[limit.measurement] : undefined;
      return measurement && value !== undefined && isUsableLimit(limit, measurement)
        ? [judgeAgainstLimit(value, limit, measurement)]
        : [];
    })
    .find((line) => line.effect === 'bars');

/** What was taken now, judged as triage judges it; null outside the catalogue, where nothing says what to measure. */
function judgedNow(findingKey: string | null, measured: Measured, limits: readonly StoredLimit[]) {
  const finding = findingKey === null ? null : findingOf(findingKey);
  if (!finding) return null;
  const taken = finding.measurements.filter(({ key }) => Object.hasOwn(measured, key));
  return judgeMeasured({ ...finding, measurements: taken }, measured, limits);
}
