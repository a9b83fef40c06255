/** How old open deferrals are, and how long those lasted that ended. No regulation; the definition is ours. */
import type { CalendarDate, Instant } from '../facts';
import { localDate } from '../months';
import { daysBetween } from '../queue-order';
import type { AircraftHistory } from './history';
import { spreadOf, type Spread } from './quantile';
import { minuteOf, type Stretch } from './spans';
import { said } from '../said';

export const DEFERRAL_AGE_DEFINITION = said(
  'Deferrals open now, whatever the period, by age: days on the calendar of the base from the day the deferral was begun; begun today is 0. Beside each the day it has to end by at the latest: its repair interval, the next required inspection (14 CFR 91.405(c)), or 90 days of a removed transmitter. Of those that ended in the period: how many days they lasted, whatever ended them; median by nearest rank, with fewer than five none.',
);

export interface OpenDeferral {
  readonly deferralId: string;
  readonly writeUpId: string;
  readonly number: string;
  readonly title: string;
  readonly registration: string;
  readonly begunOn: CalendarDate;
  readonly days: number;
  /** Last day; null: no day ends it, or it is not known. */
  readonly endsOn: CalendarDate | null;
  /** Days to the last day; negative when it has passed. */
  readonly daysLeft: number | null;
}

export interface DeferralAgeFigure {
  readonly definition: string;
  /** Oldest first. */
  readonly rows: readonly OpenDeferral[];
  /** Of those that ended in the period, in days. */
  readonly ended: Spread;
  readonly endedRows: readonly {
    readonly deferralId: string;
    readonly number: string;
    readonly title: string;
    readonly registration: string;
    readonly begunOn: CalendarDate;
    readonly endedOn: CalendarDate;
    readonly days: number;
  }[];
  readonly counts: { readonly open: number; readonly ended: number };
}

/** @param endsOn last day of an open deferral by its id, from the rules of 91.213 and 91.405(c) */
export function deferralAgeFigure(
  fleet: readonly AircraftHistory[],
  windowOf: (aircraft: AircraftHistory) => Stretch,
  asOf: Instant,
  endsOn: ReadonlyMap<string, CalendarDate>,
): DeferralAgeFigure {
  const all = fleet.flatMap((aircraft) =>
    aircraft.writeUps.flatMap(({ id, number, title, deferrals }) =>
      deferrals.map((deferral) => ({
        aircraft,
        deferral,
        about: { deferralId: deferral.id, number, title, registration: aircraft.registration },
        writeUpId: id,
        begunOn: localDate(deferral.begunAt, aircraft.zone),
      })),
    ),
  );
  const rows = all.flatMap(({ aircraft, deferral, about, writeUpId, begunOn }): OpenDeferral[] => {
    if (deferral.endedAt !== null) return [];
    const today = localDate(asOf, aircraft.zone);
    const last = endsOn.get(deferral.id) ?? null;
    const daysLeft = last === null ? null : daysBetween(today, last);
    return [{ ...about, writeUpId, begunOn, days: daysBetween(begunOn, today), endsOn: last, daysLeft }];
  });
  const endedRows = all.flatMap(({ aircraft, deferral, about, begunOn }) => {
    if (deferral.endedAt === null || !isIn(deferral.endedAt, windowOf(aircraft))) return [];
    const endedOn = localDate(deferral.endedAt, aircraft.zone);
    return [{ ...about, begunOn, endedOn, days: daysBetween(begunOn, endedOn) }];
  });
  const oldestFirst = (a: { days: number; number: string }, b: { days: number; number: string }) =>
    b.days - a.days || (a.number < b.number ? -1 : 1);
  return {
    definition: DEFERRAL_AGE_DEFINITION,
    rows: rows.toSorted(oldestFirst),
    ended: spreadOf(endedRows.map(({ days }) => days)),
    endedRows: endedRows.toSorted(oldestFirst),
    counts: { open: rows.length, ended: endedRows.length },
  };
}

const isIn = (at: Instant, { from, until }: Stretch): boolean =>
  minuteOf(at) >= minuteOf(from) && (until === null || minuteOf(at) < minuteOf(until));
