/**
 * Rules of the house about what was read on the last walkaround: how much oil, how long ago. Common practice, no source.
 *
 * Ages are held against the departure, to the millisecond: exactly as old as allowed is allowed. Of the time of a flight
 * these are the only rules that read the departure itself, so the answer over time takes {@link agesEndAt} as borders.
 */
import type { AircraftFacts } from '../aircraft';
import { counted } from '../counted';
import { known, type Fact, type Instant } from '../facts';
import { sayMeasured } from '../findings/measurements';
import { clockInWords, dayInWords } from '../in-words';
import { localDate, parseInstant } from '../months';
import type { UseOfAircraft } from '../operations';
import type { Subject } from '../verdict';
import type { HouseFinding, HouseRule, HouseReadings } from './house-rule';

const HOUR_MS = 3_600_000;

const msOf = (at: Instant): number => parseInstant(at).epochMilliseconds;

const about = ({ id, registration }: AircraftFacts): Subject => ({
  kind: 'aircraft',
  id,
  label: registration,
});

const barsForMissing = (aircraft: AircraftFacts, missing: string, first = ''): HouseFinding => ({
  effect: 'bars',
  because: `${first}Not known: ${missing}.`,
  missing,
  about: about(aircraft),
});

/** What was read at `at`, unless it is too old at departure; then what is missing is a newer one. */
function fresh<T extends { readonly at: Instant }>(
  fact: Fact<T>,
  oldestHours: number,
  use: UseOfAircraft,
  what: string,
): Fact<T> {
  if (!fact.known || msOf(use.departAt) - msOf(fact.value.at) <= oldestHours * HOUR_MS) return fact;
  const { at } = fact.value;
  const { zone } = use.from;
  return {
    known: false,
    missing:
      `${what} not older than ${counted(oldestHours, 'hour')} at departure ` +
      `(the last is of ${dayInWords(localDate(at, zone))}, ${clockInWords(at, zone)})`,
  };
}

/** Bars under the least, and without a reading that is new enough. Exactly the least is enough. */
export function oilMinimum(
  aircraft: AircraftFacts,
  { leastTenthsQuart, oldestHours }: { readonly leastTenthsQuart: number; readonly oldestHours: number },
  use: UseOfAircraft,
): HouseFinding[] {
  const oil = fresh(aircraft.lastOil, oldestHours, use, 'an oil reading');
  const least = sayMeasured(leastTenthsQuart, 'tenth-quart');
  if (!oil.known) return [barsForMissing(aircraft, oil.missing, `Least oil of the house is ${least}. `)];
  const { tenthsQuart, at } = oil.value;
  if (tenthsQuart >= leastTenthsQuart) return [];
  const { zone } = use.from;
  const read = `${dayInWords(localDate(at, zone))}, ${clockInWords(at, zone)}`;
  return [
    {
      effect: 'bars',
      because: `Oil ${sayMeasured(tenthsQuart, 'tenth-quart')} is under the least of the house, ${least}. Read ${read}.`,
      about: about(aircraft),
    },
  ];
}

/** Bars without a finished walkaround that is new enough. */
export function walkaroundBeforeFlight(
  aircraft: AircraftFacts,
  oldestHours: number,
  use: UseOfAircraft,
): HouseFinding[] {
  const walk = fresh(aircraft.lastWalkaround, oldestHours, use, 'a finished walkaround');
  return walk.known ? [] : [barsForMissing(aircraft, walk.missing)];
}

/** Of each rule about an age the last instant at which a flight may still depart, in order, each once. */
export function agesEndAt(aircraft: Pick<AircraftFacts, 'houseRules' | keyof HouseReadings>): Instant[] {
  const ends = aircraft.houseRules.flatMap(({ setting }: HouseRule) => {
    const read =
      setting.kind === 'oil-minimum'
        ? aircraft.lastOil
        : setting.kind === 'walkaround-before-flight'
          ? aircraft.lastWalkaround
          : null;
    if (!read?.known || !('oldestHours' in setting)) return [];
    return [msOf(read.value.at) + setting.oldestHours * HOUR_MS];
  });
  return [...new Set(ends)]
    .sort((a, b) => a - b)
    .map((ms) => parseInstant('1970-01-01T00:00:00Z').add({ milliseconds: ms }).toString());
}

/** How many of these have ended for a departure at `departMs`: while it stays the same, no age changes an answer. */
export const agesEnded = (ends: readonly Instant[], departMs: number): number =>
  ends.filter((end) => msOf(end) < departMs).length;

/** The newer of two readings; one that nobody knows gives way. */
export const newer = <T extends { readonly at: Instant }>(a: T | null, b: T | null): T | null =>
  a === null || (b !== null && msOf(b.at) > msOf(a.at)) ? b : a;

/** A reading as a fact, and what is missing without one. */
export const readingOr = <T>(value: T | null, missing: string): Fact<T> =>
  value === null ? { known: false, missing } : known(value);
