/**
 * What a dispatcher should see before a flight is released, whatever its answer is: legs that run into the dark, hours
 * spent past an inspection even where that does not bar, and what the flight leaves for the others that are booked.
 *
 * Night: 14 CFR 1.1. Sunset: 91.209(a)(1). The inspections: each its own paragraph (`due-paragraphs.ts`). Overlaps and hours
 * for later flights: common practice, no source. All booked flights are counted here, plans too.
 */
import type { AircraftFacts, RequirementFacts } from './aircraft';
import { dueOf } from './due';
import { PARAGRAPH_OF_KIND } from './due-paragraphs';
import type { HoursTenths, Instant } from './facts';
import { formatTenths } from './hours';
import { clockInWords, dayInWords } from './in-words';
import type { CiteId } from './law';
import { instantOfMs, msOf } from './light-over-time';
import type { Place, ProposedFlight, UseOfAircraft } from './operations';
import { lastDayOf } from './requirement-lines';
import { afterFlights, sumTenths, type BookedFlight } from './spent-hours';
import { lightDuring, nextSunEvent, type Light, type SunEvent } from './sun';

export interface FlightWarning {
  readonly kind:
    'runs-into-night' | 'lands-after-sunset' | 'runs-past-inspection' | 'overlaps' | 'leaves-too-few-hours';
  /** A sentence for the dispatcher. */
  readonly because: string;
  readonly cite?: CiteId;
}

/**
 * The warnings for a flight, in the order of {@link FlightWarning.kind}. None of light or hours when it cannot be judged as
 * composed (`use` null).
 * @param aircraft the facts as they are now: the hours of `booked` are added here
 * @param booked flights of this aircraft, without this one
 */
export function warningsFor(
  aircraft: AircraftFacts,
  flight: ProposedFlight,
  use: UseOfAircraft | null,
  booked: readonly BookedFlight[],
): readonly FlightWarning[] {
  if (use === null) return [];
  return [
    ...ofLight(use),
    ...ofInspections(aircraft, use, booked),
    ...ofOverlaps(flight, booked),
    ...ofHoursLeft(aircraft, use, booked),
  ];
}

/**
 * A flight that leaves before the dark and meets it. One that leaves in the dark was meant so: the light at departure is that
 * of the place it leaves, whatever it is by then where it goes to.
 */
function ofLight(use: UseOfAircraft): FlightWarning[] {
  const here = lightAt(use.departAt, use.from);
  const there = lightAt(use.departAt, use.to);
  const { ident } = use.to;
  if (use.light === 'night') {
    if (here.night) return [];
    const because = there.night
      ? `Runs into night. At ${ident} it is night already when this flight departs.`
      : `Runs into night. Night begins ${firstInWords('civilDusk', use)}.`;
    return [{ kind: 'runs-into-night', because, cite: '14cfr1.1(night)' }];
  }
  if (!use.betweenSunsetAndSunrise || here.betweenSunsetAndSunrise) return [];
  const because = there.betweenSunsetAndSunrise
    ? `Lands after sunset. At ${ident} the sun is down already when this flight departs. Position lights are needed there.`
    : `Lands after sunset, ${firstInWords('sunset', use)}. Position lights are needed from then on.`;
  return [{ kind: 'lands-after-sunset', because, cite: '14cfr91.209(a)(1)' }];
}

const lightAt = (at: Instant, place: Place): Light =>
  lightDuring({ from: at, to: instantOfMs(msOf(at) + 1) }, place);

/** "17:04 at 0WC": the first such event of the two places after departure. A flight lasts a day at most. */
function firstInWords(event: SunEvent, { departAt, from, to }: UseOfAircraft): string {
  const [first] = [from, to]
    .flatMap((place): { readonly at: Instant; readonly place: Place }[] => {
      const at = nextSunEvent(event, place, departAt, 1);
      return at === null ? [] : [{ at, place }];
    })
    .sort((a, b) => msOf(a.at) - msOf(b.at));
  return first === undefined
    ? 'on the way'
    : `${clockInWords(first.at, first.place.zone)} at ${first.place.ident}`;
}

/** What binds and is over before the flight ends, by date or by hours, whether or not this flight needs it. */
function ofInspections(
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  booked: readonly BookedFlight[],
): FlightWarning[] {
  const { facts } = afterFlights(aircraft, booked, use.departAt);
  const { ttisTenths } = facts;
  return facts.requirements
    .filter((row) => isWatched(row, use))
    .flatMap((row) => {
      const due = dueOf(row, ttisTenths, facts.requirements);
      const cite = PARAGRAPH_OF_KIND[row.kind];
      const warnings: FlightWarning[] = [];
      if (due.on !== null && lastDayOf(use) > due.on) {
        const because = `${row.name} runs out with ${dayInWords(due.on)}. This flight ends on ${dayInWords(lastDayOf(use))}.`;
        warnings.push({ kind: 'runs-past-inspection', because, cite });
      }
      if (due.tenths !== null && ttisTenths.known && ttisTenths.value + use.plannedTenths > due.tenths) {
        const ends = formatTenths(ttisTenths.value + use.plannedTenths);
        const because = `${row.name} is due at ${formatTenths(due.tenths)} h. This flight ends at ${ends} h.`;
        warnings.push({ kind: 'runs-past-inspection', because, cite });
      }
      return warnings;
    });
}

/** Binding, and not one that only a flight under IFR needs when this one is under VFR. */
const isWatched = ({ binding, kind }: RequirementFacts, { rules }: UseOfAircraft): boolean =>
  binding && (rules === 'IFR' || (kind !== 'vor-check' && kind !== 'static-and-altimeter'));

function ofOverlaps(flight: ProposedFlight, booked: readonly BookedFlight[]): FlightWarning[] {
  const [depart, arrive] = [msOf(flight.departAt), msOf(flight.arriveAt)];
  return booked
    .filter((other) => msOf(other.departAt) < arrive && msOf(other.arriveAt) > depart)
    .map((other) => {
      const from = clockInWords(other.departAt, flight.from.zone);
      const until = clockInWords(other.arriveAt, flight.from.zone);
      const because = `Overlaps a flight that is ${other.state}, ${from} to ${until}: ${other.label}.`;
      return { kind: 'overlaps', because };
    });
}

/** The flight itself fits before an inspection by hours, and what is booked after it then does not. */
function ofHoursLeft(
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  booked: readonly BookedFlight[],
): FlightWarning[] {
  const { facts, counted } = afterFlights(aircraft, booked, use.departAt);
  const { ttisTenths } = facts;
  const needed = sumTenths(booked.filter((flight) => !counted.includes(flight)));
  if (!ttisTenths.known || needed === 0) return [];
  const after: HoursTenths = ttisTenths.value + use.plannedTenths;
  return facts.requirements
    .filter((row) => isWatched(row, use))
    .flatMap((row) => {
      const { tenths: due } = dueOf(row, ttisTenths, facts.requirements);
      if (due === null || after > due || after + needed <= due) return [];
      const left = formatTenths(due - after);
      const because = `${row.name}: ${left} h left after this flight. Flights booked after it need ${formatTenths(needed)} h.`;
      return [{ kind: 'leaves-too-few-hours', because, cite: PARAGRAPH_OF_KIND[row.kind] }];
    });
}
