import { createHash } from 'node:crypto';
import type { AircraftFacts } from '../rules/aircraft';
import { answersByOperation } from '../rules/answer';
import type { CalendarDate } from '../rules/facts';
import { agesEndAt, agesEnded } from '../rules/house/readings';
import { localDate } from '../rules/months';
import { answersOverTime, type LaneOverTime } from '../rules/over-time';
import type { ReferenceBase } from '../rules/use-of-flight';
import { inSpan } from '../telemetry/spans';

/** Enough for a few schools; what was asked for longest ago goes first. */
const MOST = 400;

/**
 * What the rules answered, worked out once for the same facts: boards are drawn every few seconds on many screens, and
 * between two drawings most aircraft have not changed. The key is a sum over everything the rules are given, so that
 * nothing can be kept for facts that are no longer so.
 */
function keeping<T>(): (given: unknown, workOut: () => T) => T {
  const kept = new Map<string, T>();
  return (given, workOut) => {
    const key = createHash('sha256').update(JSON.stringify(given)).digest('hex');
    const answer = kept.get(key) ?? inSpan('rules', {}, workOut);
    kept.delete(key);
    kept.set(key, answer);
    const [oldest] = kept.keys();
    if (kept.size > MOST && oldest !== undefined) kept.delete(oldest);
    return answer;
  };
}

const overTime = keeping<readonly LaneOverTime[]>();
const today = keeping<ReturnType<typeof answersByOperation>>();

/** `answersOverTime`, kept. */
export const keptOverTime = (...given: Parameters<typeof answersOverTime>): readonly LaneOverTime[] =>
  overTime(given, () => answersOverTime(...given));

const AN_HOUR_MS = 3_600_000;

/**
 * `answersByOperation` for a flight of an hour from now, kept. Of the moment only the dates are in the key: the rules read
 * nothing else of it for a column of the board (lib/rules/over-time.ts says how that was looked through and is tested), but
 * for how old a reading is where a rule of the house asks: so which of those have become too old is in the key as well.
 */
export function keptToday(
  facts: AircraftFacts,
  base: ReferenceBase,
  on: CalendarDate,
  now: Date,
): ReturnType<typeof answersByOperation> {
  const lands = localDate(new Date(now.getTime() + AN_HOUR_MS).toISOString(), base.zone);
  const tooOld = agesEnded(agesEndAt(facts), now.getTime());
  return today([facts, base, on, lands, tooOld], () =>
    answersByOperation(facts, base, on, now.toISOString()),
  );
}
