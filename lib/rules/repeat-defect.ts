/**
 * Repeat defects: a write-up on a system that was signed off a little while ago. No regulation counts them for a school; the
 * window of 30 days or 10 flights is issue 4's, and what makes two write-ups "the same system" is our own choice.
 *
 * - The same system is the same finding of the catalogue, the same line of the equipment list, or a system code with the
 *   same first three digits (3340 and 3341 are both exterior lights). Any one of the three is enough.
 * - In the window is not more than 30 days after the sign-off that closed the earlier one, or not more than 10 flights after
 *   it, whichever lasts longer. Day 30 and flight 10 still count.
 * - Only closures that somebody signed for count: repaired, and looked for and not found. Servicing (oil, air) is no repair
 *   that could have failed.
 * - A number of flights that is not known decides nothing: then the days alone do.
 */
import type { Fact, Instant } from './facts';

export const REPEAT_DAYS = 30;
export const REPEAT_FLIGHTS = 10;

export type SignedClosure = 'repaired' | 'could-not-duplicate';

/** What is compared of a write-up. Null or empty: not named, and then like nothing else. */
export interface WhatItIsAbout {
  readonly findingKey: string | null;
  readonly equipmentId: string | null;
  /** Four digits, or empty. */
  readonly jasc: string;
}

/** An earlier write-up of the same aircraft, closed with a signature before the new one was opened. */
export interface EarlierWriteUp extends WhatItIsAbout {
  readonly id: string;
  readonly closedAt: Instant;
  readonly how: SignedClosure;
  /** Whole days at the base from the sign-off to the new write-up. */
  readonly days: number;
  /** Flights flown between the two. */
  readonly flights: Fact<number>;
}

export type SameBy = 'finding' | 'equipment' | 'system';

/** An earlier write-up of the same system, and whether the new one is a repeat of it. */
export interface SameSystem<Earlier extends EarlierWriteUp> {
  readonly earlier: Earlier;
  readonly sameBy: SameBy;
  readonly inWindow: boolean;
}

/** By what two write-ups are of the same system, the closest likeness first; null when they are not. */
export function sameSystemBy(one: WhatItIsAbout, other: WhatItIsAbout): SameBy | null {
  if (one.findingKey !== null && one.findingKey === other.findingKey) return 'finding';
  if (one.equipmentId !== null && one.equipmentId === other.equipmentId) return 'equipment';
  const digits = systemDigits(one.jasc);
  return digits !== null && digits === systemDigits(other.jasc) ? 'system' : null;
}

/** The first three digits of a system code: the system within its chapter. */
export const systemDigits = (jasc: string): string | null => (/^\d{4}$/.test(jasc) ? jasc.slice(0, 3) : null);

/** Whether a new write-up, so many days and flights after the sign-off, is still a repeat. */
export const inRepeatWindow = (days: number, flights: Fact<number>): boolean =>
  days <= REPEAT_DAYS || (flights.known && flights.value <= REPEAT_FLIGHTS);

/**
 * The earlier write-ups of the same system, the one closed last first. The new one is a repeat when one of them is in the
 * window; the others are its history.
 */
export function sameSystemBefore<Earlier extends EarlierWriteUp>(
  fresh: WhatItIsAbout,
  earlier: readonly Earlier[],
): readonly SameSystem<Earlier>[] {
  return earlier
    .flatMap((one) => {
      const sameBy = sameSystemBy(fresh, one);
      return sameBy === null
        ? []
        : [{ earlier: one, sameBy, inWindow: inRepeatWindow(one.days, one.flights) }];
    })
    .sort((a, b) => (a.earlier.closedAt < b.earlier.closedAt ? 1 : -1));
}

/** A flight as far as it explains time in service: tenths it flew, or was planned to where nobody read the meters. */
export interface FlightSince {
  readonly tenths: number;
}

/** Time in service beyond the flights on record, in tenths, that is still taken for taxiing and rounding: one hour. */
export const UNEXPLAINED_TENTHS = 10;

/**
 * How many flights were flown, from the flights on record: unknown when the aircraft gained more time in service than they
 * explain, because then somebody flew it off the record.
 * @param gainedTenths time in service gained over the same time; unknown when the meters were not read
 */
export function flightsFlown(flights: readonly FlightSince[], gainedTenths: Fact<number>): Fact<number> {
  if (flights.length > REPEAT_FLIGHTS) return { known: true, value: flights.length };
  if (!gainedTenths.known) return gainedTenths;
  const explained = flights.reduce((sum, { tenths }) => sum + tenths, 0);
  return gainedTenths.value - explained > UNEXPLAINED_TENTHS
    ? { known: false, missing: 'how many flights were flown: the meters ran on without a release' }
    : { known: true, value: flights.length };
}
