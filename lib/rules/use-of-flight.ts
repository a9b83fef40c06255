/**
 * From a proposed flight to a use of the aircraft that the rules can judge: works out the light, whether it is for
 * hire, and the local dates. Also makes the reference use that stands behind one column of the fleet board.
 *
 * - 14 CFR 1.1 (night) and 91.209(a)(1) (sunset to sunrise): see `sun.ts` for the exact borders.
 * - 14 CFR 91.205(b)(12), (c)(4), "operated for hire": the text does not settle whether instruction counts. The
 *   strict reading does: all instruction the school is paid for is for hire.
 */
import { Temporal } from 'temporal-polyfill';
import { known, type CalendarDate, type Fact, type HoursTenths, type Instant } from './facts';
import { isTenths } from './hours';
import { endOfDay, localDate, parseCalendarDate, parseInstant } from './months';
import type { OperationKind, Place, ProposedFlight, UseOfAircraft } from './operations';
import { lightDuring, nextSunEvent } from './sun';

/** The use, or why the flight as composed cannot be judged. `because` is a sentence for the person who composed it. */
export type UseOfFlight =
  { readonly ok: true; readonly use: UseOfAircraft } | { readonly ok: false; readonly because: string };

/** A base, with what is known of the airspace a local flight there goes through. */
export interface ReferenceBase extends Place {
  readonly transponderAirspace: Fact<boolean>;
  readonly adsbAirspace: Fact<boolean>;
  readonly controlledAirspace: Fact<boolean>;
}

const LONGEST_FLIGHT_MS = 24 * 60 * 60 * 1000;
/** From one sunset to the next can be a little more than a day in spring; a flight is at most one day. */
const SUNSET_SEARCH_DAYS = 2;

const REFERENCE_TENTHS = 10;
const REFERENCE_MINUTES = 60;
/** The highest whole foot below 10,000 ft, so that a column covers every local flight below that altitude. */
const REFERENCE_ALTITUDE_FT_MSL = 9_999;

/**
 * The use of the aircraft that a proposed flight makes.
 *
 * Light: the whole interval is looked at from the departure and from the arrival place, and dark at either counts.
 * On a straight leg the place where the sun is lowest is, to within seconds, always one of the two ends, so this
 * covers the ground in between as well; it errs towards dark, because the aircraft is at one end at a time. A flight that
 * wanders far to one side of both places is not covered.
 *
 * `sunsetAt` is the earlier next sunset of the two places, for a flight wholly in daylight; null when part of the
 * flight is between sunset and sunrise, or when the sun does not set.
 *
 * Refused: an instant, date zone or position that is malformed, an arrival that is not after the departure, more than
 * 24 hours from departure to arrival, planned time that is not whole tenths above zero.
 */
export function useOfFlight(flight: ProposedFlight): UseOfFlight {
  const because = refusal(flight);
  if (because !== null) return { ok: false, because };
  try {
    return { ok: true, use: composeUse(flight) };
  } catch (error) {
    // Zones and positions are judged where they are used; anything but a refusal of theirs is a fault of ours.
    if (error instanceof RangeError) {
      return { ok: false, because: `The place of departure or arrival cannot be used: ${error.message}.` };
    }
    throw error;
  }
}

/**
 * The use behind one column of the board: what "Night VFR, for hire" means for an aircraft at its base on a date.
 * Nobody composed this flight, so every fact is known by definition:
 * - local, from and back to the base, 1.0 h, over land, highest altitude below 10,000 ft MSL;
 * - light, flight rules and hire as the column says; a night column is between sunset and sunrise, a day column not;
 * - a hire column is instruction within 50 nautical miles of the base, any other is a private flight;
 * - not crew only; a private pilot in command; an IFR column navigates by VOR (strict);
 * - nothing asked of air traffic control, no special flight permit, not a continuation to a place of repair.
 * The airspace is the base's, and unknown where that is unknown.
 *
 * When `on` is today at the base, the flight departs now, and may land tomorrow. On any other date it lands in the
 * last minute of the date, so that whatever runs out in the course of that date is seen.
 * Refuses (RangeError) a malformed date, instant or zone.
 */
export function referenceUse(
  kind: OperationKind,
  base: ReferenceBase,
  on: CalendarDate,
  now: Instant,
): UseOfAircraft {
  const { departAt, arriveAt } = referenceTimes(base.zone, on, now);
  return {
    ...referenceFacts(kind, base),
    departAt,
    arriveAt,
    plannedTenths: REFERENCE_TENTHS,
    betweenSunsetAndSunrise: kind.light === 'night',
    departOn: localDate(departAt, base.zone),
    arriveOn: localDate(arriveAt, base.zone),
    sunsetAt: null,
  };
}

/** What a moment in the air adds to a kind of operation. */
export interface Moment {
  readonly at: Instant;
  /** When it departed; left out when it departs at this moment. Only the ages of readings are held against it. */
  readonly departedAt?: Instant;
  /** Local date at the base. */
  readonly on: CalendarDate;
  readonly betweenSunsetAndSunrise: boolean;
  /** The next sunset, as {@link useOfFlight} gives it; null between sunset and sunrise. */
  readonly sunsetAt: Instant | null;
  /** What the flight takes. The least that can be flown is one tenth. */
  readonly plannedTenths: HoursTenths;
}

/**
 * The use of an aircraft that is in the air at one moment: the facts of {@link referenceUse}, with the light, the date and
 * the hours of that moment instead of those of a flight of an hour. So a flight may make it exactly when every moment of
 * it may.
 */
export const momentUse = (kind: OperationKind, base: ReferenceBase, moment: Moment): UseOfAircraft => ({
  ...referenceFacts(kind, base),
  departAt: moment.departedAt ?? moment.at,
  arriveAt: moment.at,
  plannedTenths: moment.plannedTenths,
  betweenSunsetAndSunrise: moment.betweenSunsetAndSunrise,
  departOn: moment.on,
  arriveOn: moment.on,
  sunsetAt: moment.sunsetAt,
});

/** Everything but the times: known by definition, because nobody composed this flight. */
function referenceFacts(
  kind: OperationKind,
  base: ReferenceBase,
): Omit<
  UseOfAircraft,
  'departAt' | 'arriveAt' | 'plannedTenths' | 'betweenSunsetAndSunrise' | 'departOn' | 'arriveOn' | 'sunsetAt'
> {
  return {
    from: base,
    to: base,
    rules: kind.rules,
    purpose: kind.hire ? 'instruction-for-hire' : 'private',
    overWaterBeyondGlide: known(false),
    transponderAirspace: base.transponderAirspace,
    adsbAirspace: base.adsbAirspace,
    controlledAirspace: base.controlledAirspace,
    usesVor: known(kind.rules === 'IFR'),
    highestAltitudeFtMsl: known(REFERENCE_ALTITUDE_FT_MSL),
    trainingWithin50Nm: known(kind.hire),
    crewOnly: known(false),
    pilotInCommandGrade: known('private'),
    atcTransponder: 'not-asked',
    atcAdsb: 'not-asked',
    continuingToRepair: false,
    specialFlightPermit: null,
    light: kind.light,
    hire: kind.hire,
  };
}

function refusal(flight: ProposedFlight): string | null {
  const departMs = readMs(flight.departAt);
  if (departMs === null) return 'The departure time is not a time in UTC.';
  const arriveMs = readMs(flight.arriveAt);
  if (arriveMs === null) return 'The arrival time is not a time in UTC.';
  if (arriveMs <= departMs) return 'The arrival is not after the departure.';
  if (arriveMs - departMs > LONGEST_FLIGHT_MS) return 'The flight is longer than 24 hours.';
  if (!isTenths(flight.plannedTenths) || flight.plannedTenths === 0) {
    return 'The planned time is not a whole number of tenths of an hour above zero.';
  }
  return null;
}

function readMs(instant: Instant): number | null {
  try {
    return parseInstant(instant).epochMilliseconds;
  } catch {
    return null;
  }
}

function composeUse(flight: ProposedFlight): UseOfAircraft {
  const { departAt, arriveAt, from, to } = flight;
  const interval = { from: departAt, to: arriveAt };
  const lights = [lightDuring(interval, from), lightDuring(interval, to)];
  const betweenSunsetAndSunrise = lights.some((light) => light.betweenSunsetAndSunrise);
  return {
    ...flight,
    light: lights.some((light) => light.night) ? 'night' : 'day',
    betweenSunsetAndSunrise,
    hire: flight.purpose === 'instruction-for-hire' || flight.purpose === 'carriage-for-hire',
    departOn: localDate(departAt, from.zone),
    arriveOn: localDate(arriveAt, to.zone),
    sunsetAt: betweenSunsetAndSunrise ? null : earliestSunset(departAt, [from, to]),
  };
}

function earliestSunset(after: Instant, places: readonly Place[]): Instant | null {
  const sunsets = places
    .map((place) => nextSunEvent('sunset', place, after, SUNSET_SEARCH_DAYS))
    .filter((sunset) => sunset !== null);
  // All are whole seconds in the same form, so they compare as text.
  return sunsets.sort()[0] ?? null;
}

function referenceTimes(
  zone: string,
  on: CalendarDate,
  now: Instant,
): { departAt: Instant; arriveAt: Instant } {
  parseCalendarDate(on);
  if (localDate(now, zone) === on) {
    const arriveAt = parseInstant(now).add({ minutes: REFERENCE_MINUTES }).toString();
    return { departAt: now, arriveAt };
  }
  const arrive = Temporal.Instant.from(endOfDay(on, zone)).subtract({ minutes: 1 });
  return {
    departAt: arrive.subtract({ minutes: REFERENCE_MINUTES }).toString(),
    arriveAt: arrive.toString(),
  };
}
