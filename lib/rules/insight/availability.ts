/**
 * Availability: the share of the window's minutes in which nothing on record grounded the aircraft for every kind of flight.
 * No regulation defines it; the definition is ours and stands beside the figure. What holds an aircraft: `held.ts`.
 */
import { heldByRequirement, heldByWriteUp } from './held';
import type { AircraftHistory } from './history';
import { clip, minuteOf, minutesIn, spanOf, type Span, type Stretch } from './spans';
import { said } from '../said';

export const AVAILABILITY_DEFINITION = said(
  'Share of the time in which nothing on record here grounded the aircraft for every kind of flight, counted in minutes. What grounds: a write-up, from the moment it was written until it was closed, found within limits, judged not to ground, or deferred with placard and signature in place; undecided grounds, and a deferral stops counting when its interval runs out or an inspection passes without a word on it. Work begun, until it is signed. An annual, a directive, a life limit or a binding maker’s interval whose last day has passed, until its compliance. Several at once count once. An aircraft counts from its first record. Not seen: weather, pilots and bookings; bars of some kinds of flight only (night, IFR, hire, a 100-hour); hours limits; papers; check flights and tests owed; facts nobody entered, and what nobody wrote up.',
);

/** One aircraft's time in the window. */
export interface AircraftAvailability {
  readonly aircraftId: string;
  readonly registration: string;
  /** Minutes of the window in which the aircraft was here; 0: there is no record of it yet. */
  readonly minutes: number;
  readonly heldMinutes: number;
  /** Whole tenths of a per cent, rounded down: 1000 only when nothing held it. Null without any minutes. */
  readonly permille: number | null;
  /** Why, each by itself; they may overlap and then sum to more than `heldMinutes`. */
  readonly heldBy: {
    readonly writeUps: number;
    readonly work: number;
    readonly requirements: number;
  };
  /** How many write-ups held it in the window. */
  readonly writeUps: number;
}

export interface AvailabilityFigure {
  readonly definition: string;
  /** In order of registration. */
  readonly rows: readonly AircraftAvailability[];
  /** All aircraft together, minutes over minutes. */
  readonly permille: number | null;
  readonly counts: { readonly aircraft: number; readonly writeUps: number };
}

/** The part of a window in which the aircraft was here: from its first record until it left the fleet. */
export function timeHere(aircraft: AircraftHistory, time: Stretch): Span {
  const { from, until } = spanOf(time);
  if (aircraft.knownFrom === null) return { from, until: from };
  const left = aircraft.retiredFrom === null ? until : Math.min(until, minuteOf(aircraft.retiredFrom));
  const came = Math.max(from, minuteOf(aircraft.knownFrom));
  return { from: came, until: Math.max(came, left) };
}

export function availabilityOf(aircraft: AircraftHistory, time: Stretch): AircraftAvailability {
  const here = timeHere(aircraft, time);
  const within = (spans: readonly Span[]) => spans.flatMap((span) => clip(span, here));
  const byWriteUp = aircraft.writeUps.map((one) => within(heldByWriteUp(one)));
  const work = within(aircraft.otherWork.map(spanOf));
  const requirements = within(aircraft.requirements.flatMap((one) => heldByRequirement(one, aircraft)));
  const heldMinutes = minutesIn([...byWriteUp.flat(), ...work, ...requirements]);
  const minutes = here.until - here.from;
  return {
    aircraftId: aircraft.id,
    registration: aircraft.registration,
    minutes,
    heldMinutes,
    permille: permilleOf(minutes, heldMinutes),
    heldBy: {
      writeUps: minutesIn(byWriteUp.flat()),
      work: minutesIn(work),
      requirements: minutesIn(requirements),
    },
    writeUps: byWriteUp.filter((spans) => spans.length > 0).length,
  };
}

/** @param windowOf the window of one aircraft, between days at its own base; it must have ended */
export function availabilityFigure(
  fleet: readonly AircraftHistory[],
  windowOf: (aircraft: AircraftHistory) => Stretch,
): AvailabilityFigure {
  const rows = fleet
    .map((aircraft) => availabilityOf(aircraft, windowOf(aircraft)))
    .sort((a, b) => (a.registration < b.registration ? -1 : 1));
  const sum = (of: (row: AircraftAvailability) => number) => rows.reduce((all, row) => all + of(row), 0);
  return {
    definition: AVAILABILITY_DEFINITION,
    rows,
    permille: permilleOf(
      sum(({ minutes }) => minutes),
      sum(({ heldMinutes }) => heldMinutes),
    ),
    counts: {
      aircraft: rows.filter(({ minutes }) => minutes > 0).length,
      writeUps: sum(({ writeUps }) => writeUps),
    },
  };
}

const permilleOf = (minutes: number, held: number): number | null =>
  minutes === 0 ? null : Math.floor(((minutes - held) * 1000) / minutes);
