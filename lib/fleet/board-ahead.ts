import { headline } from '../rules/answer';
import type { AircraftFacts } from '../rules/aircraft';
import type { CalendarDate, HoursTenths, Instant } from '../rules/facts';
import { lightOverTime, type LightStep, type TimeWindow } from '../rules/light-over-time';
import { endOfDay, localDate, startOfDay } from '../rules/months';
import { nextChange, spanAt, type LaneOverTime } from '../rules/over-time';
import { sumTenths, type BookedFlight } from '../rules/spent-hours';
import type { ReferenceBase } from '../rules/use-of-flight';
import { joinLines, type Outcome } from '../rules/verdict';
import { keptOverTime } from './kept-over-time';

/** What an answer becomes, and when. */
export interface ChangeAhead {
  readonly at: Instant;
  readonly outcome: Outcome;
  /** What decides from then on, in a few words; null when all is in order. */
  readonly headline: string | null;
}

/** VFR or IFR on the aircraft's usual use, in the light of this moment, and what becomes of it. */
export interface LaneAhead {
  readonly rules: 'VFR' | 'IFR';
  readonly light: 'day' | 'night';
  /** For an aircraft in the air now; a flight of an hour may have another answer, which the cell gives. */
  readonly outcome: Outcome;
  /** The first change that matters to a desk, or null: none before the end of the window. */
  readonly next: ChangeAhead | null;
}

export interface FlightAhead {
  readonly id: string;
  readonly label: string;
  readonly state: BookedFlight['state'];
  readonly departAt: Instant;
  readonly arriveAt: Instant;
}

/** What comes for one aircraft, as far as the board looks. */
export interface RowAhead {
  /** End of tomorrow at the base: nothing is said of what comes after. */
  readonly until: Instant;
  readonly lanes: readonly LaneAhead[];
  /** The flight that is out, or else the one that leaves next. */
  readonly flight: FlightAhead | null;
  /** Planned time of all that is booked. */
  readonly bookedTenths: HoursTenths;
}

/** How far the board looks at a base, and the light there until then. Worked out once a base. */
export interface WindowAtBase {
  readonly window: TimeWindow;
  readonly light: readonly LightStep[];
}

/** Today and tomorrow at the base. From the beginning of today, so that it is the same all day and is worked out once. */
export function windowAtBase(base: ReferenceBase, today: CalendarDate): WindowAtBase {
  const tomorrow = localDate(endOfDay(today, base.zone), base.zone);
  const window = { from: startOfDay(today, base.zone), until: endOfDay(tomorrow, base.zone) };
  return { window, light: lightOverTime(base, window) };
}

/** What comes for one aircraft. Only its usual use is judged over time: the board shows no other. */
export function rowAhead(
  facts: AircraftFacts,
  base: ReferenceBase,
  { window, light }: WindowAtBase,
  booked: readonly BookedFlight[],
  forHire: boolean,
  now: Instant,
): RowAhead {
  const lanes = (['VFR', 'IFR'] as const).map((rules) => ({ rules, hire: forHire }));
  return {
    until: window.until,
    lanes: keptOverTime(facts, base, window, booked, lanes, light).map((lane) => laneAhead(lane, now)),
    flight: flightAhead(booked),
    bookedTenths: sumTenths(booked),
  };
}

function laneAhead(over: LaneOverTime, now: Instant): LaneAhead {
  const span = spanAt(over, now);
  if (!span) throw new Error('Now is not in the window of today and tomorrow');
  return {
    rules: over.lane.rules,
    light: span.kind.light,
    outcome: span.answer.outcome,
    next: changeAhead(over, now),
  };
}

/** An aircraft that stays no go for other reasons besides is no news to a desk. */
function changeAhead(over: LaneOverTime, now: Instant): ChangeAhead | null {
  for (let after = now; ;) {
    const change = nextChange(over, after);
    if (!change) return null;
    const { at, from, to, border } = change;
    if (from.answer.outcome === 'no-go' && to.answer.outcome === 'no-go') {
      after = at;
      continue;
    }
    // What comes there is the reason; where something only ends, what is left is.
    const reasons = border.comes.length > 0 ? joinLines(border.comes) : to.answer;
    const outcome = to.answer.outcome;
    return { at, outcome, headline: outcome === 'go' ? null : headline(reasons) };
  }
}

function flightAhead(booked: readonly BookedFlight[]): FlightAhead | null {
  const ahead = booked.filter(({ hasEnded }) => !hasEnded);
  const flight = ahead.find(({ state }) => state === 'out') ?? ahead[0];
  if (!flight) return null;
  const { id, label, state, departAt, arriveAt } = flight;
  return { id, label, state, departAt, arriveAt };
}
