/**
 * The instants at which the answer for an aircraft may change, for `over-time.ts`: what the sun does, the end of a date at the
 * base, and booked flights that depart or end.
 */
import type { CalendarDate, HoursTenths, Instant } from './facts';
import { instantOfMs, msOf, type LightEvent, type LightStep, type TimeWindow } from './light-over-time';
import { endOfDay, localDate } from './months';
import { sumTenths, type BookedFlight } from './spent-hours';

/** Something that happens at an instant; `at` is when it does. The border of sunrise lies one second later. */
export type BorderEvent =
  | LightEvent
  /** The last instant at which a reading is new enough for a rule of the house. */
  | { readonly what: 'reading-too-old'; readonly at: Instant }
  | { readonly what: 'date-ends'; readonly at: Instant; readonly date: CalendarDate }
  | { readonly what: 'flight-departs' | 'flight-ends'; readonly at: Instant; readonly flight: BookedFlight };

/** An instant at which something may change, with all the rules may know of it. */
export interface Moment {
  readonly ms: number;
  /** When the flight in the air departed, the first where there are several; this instant when there is none. */
  readonly departMs: number;
  readonly step: LightStep;
  readonly on: CalendarDate;
  readonly inTheAir: readonly BookedFlight[];
  /** Hours of flights that are over. */
  readonly spentTenths: HoursTenths;
  /** Hours of those in the air; the least that can be flown when there is none. */
  readonly plannedTenths: HoursTenths;
  readonly events: readonly BorderEvent[];
}

const LEAST_TENTHS = 1;

/**
 * Every instant of the window at which an answer may change, in order, the beginning of the window first.
 * Refuses (RangeError) a malformed instant or zone, and light that does not reach from the beginning of the window on.
 */
export function momentsOf(
  zone: string,
  stretch: TimeWindow,
  booked: readonly BookedFlight[],
  light: readonly LightStep[],
  agesEnd: readonly Instant[] = [],
): Moment[] {
  const fromMs = msOf(stretch.from);
  const untilMs = msOf(stretch.until);
  const happening = new Map<number, BorderEvent[]>([[fromMs, []]]);
  const happens = (ms: number, ...events: BorderEvent[]) => {
    if (ms <= fromMs || ms >= untilMs) return;
    happening.set(ms, [...(happening.get(ms) ?? []), ...events]);
  };
  for (const step of light) happens(step.fromMs, ...step.events);
  for (const event of datesEnding(zone, stretch)) happens(msOf(event.at), event);
  // Exactly as old as allowed is allowed: the next thousandth of a second is not.
  for (const at of agesEnd) happens(msOf(at) + 1, { what: 'reading-too-old', at });
  const flights = booked.map((flight) => ({
    flight,
    departMs: msOf(flight.departAt),
    arriveMs: msOf(flight.arriveAt),
  }));
  for (const { flight, departMs, arriveMs } of flights) {
    happens(arriveMs, { what: 'flight-ends', at: flight.arriveAt, flight });
    happens(departMs, { what: 'flight-departs', at: flight.departAt, flight });
  }
  return [...happening]
    .sort(([a], [b]) => a - b)
    .map(([ms, events]) => {
      const over = flights.filter(({ arriveMs, departMs }) => departMs <= ms && arriveMs <= ms);
      const inTheAir = flights.filter(({ arriveMs, departMs }) => departMs <= ms && ms < arriveMs);
      return {
        ms,
        departMs: Math.min(ms, ...inTheAir.map(({ departMs }) => departMs)),
        step: stepAt(light, ms),
        on: localDate(instantOfMs(ms), zone),
        inTheAir: inTheAir.map(({ flight }) => flight),
        spentTenths: sumTenths(over.map(({ flight }) => flight)),
        plannedTenths: Math.max(LEAST_TENTHS, sumTenths(inTheAir.map(({ flight }) => flight))),
        events,
      };
    });
}

function stepAt(light: readonly LightStep[], ms: number): LightStep {
  const step = light.findLast(({ fromMs }) => fromMs <= ms);
  if (step === undefined) throw new RangeError('The light does not cover the window');
  return step;
}

function datesEnding(zone: string, { from, until }: TimeWindow): Extract<BorderEvent, { date: string }>[] {
  const ends: Extract<BorderEvent, { date: string }>[] = [];
  const untilMs = msOf(until);
  for (let at = from; msOf(at) < untilMs;) {
    const date = localDate(at, zone);
    at = endOfDay(date, zone);
    ends.push({ what: 'date-ends', at, date });
  }
  return ends;
}
