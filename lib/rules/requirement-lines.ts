/**
 * What every recurring requirement has in common, whatever paragraph asks for it: whether the record of the last
 * compliance can be relied on, and whether a flight ends inside a calendar or an hours limit.
 *
 * The citation is always the caller's, because the paragraph that sets the limit is. Both limits allow the border:
 * a flight may end on the last day, and at the last tenth.
 */
import type { AircraftFacts, RequirementFacts } from './aircraft';
import type { CalendarDate, HoursTenths } from './facts';
import { formatTenths } from './hours';
import { dayInWords } from './in-words';
import type { CiteId } from './law';
import type { UseOfAircraft } from './operations';
import { barsForMissing, type Line, type Subject } from './verdict';

/** Last local date the flight touches; calendar limits are held against it. */
export const lastDayOf = (use: UseOfAircraft): CalendarDate =>
  use.departOn > use.arriveOn ? use.departOn : use.arriveOn;

export const aboutRequirement = (requirement: RequirementFacts): Subject => ({
  kind: 'requirement',
  id: requirement.id,
  label: requirement.name,
});

/** 91.417(a)(2)(i): bars when the time in service is not known; nothing can then be held against an hours limit. */
export function barsForUnknownTime(aircraft: AircraftFacts): Line[] {
  if (aircraft.ttisTenths.known) return [];
  const about = { kind: 'aircraft', id: aircraft.id, label: aircraft.registration } as const;
  return [barsForMissing('14cfr91.417(a)(2)(i)', aircraft.ttisTenths.missing, about)];
}

/**
 * Why the record of the last compliance cannot be relied on; no line when it can. Refused: nothing recorded, done
 * after the flight, done at more hours than the aircraft has, approved by a person who could not.
 */
export function doubtsAboutRecord(
  requirement: RequirementFacts,
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  cite: CiteId,
): Line[] {
  const about = aboutRequirement(requirement);
  const { name, lastDone } = requirement;
  if (!lastDone.known) return [barsForMissing(cite, lastDone.missing, about)];

  const done = lastDone.value;
  const lines: Line[] = [];
  const bars = (because: string) => lines.push({ effect: 'bars', cite, because, about });
  if (done.on > lastDayOf(use)) {
    bars(`${name} not yet done on the day of the flight. The record is dated ${dayInWords(done.on)}.`);
  }
  if (aircraft.ttisTenths.known && done.ttisTenths > aircraft.ttisTenths.value) {
    const had = formatTenths(aircraft.ttisTenths.value);
    bars(
      `${name} record does not fit. It says ${formatTenths(done.ttisTenths)} h, the aircraft has ${had} h.`,
    );
  }
  if (!done.approvedByAuthorised.known) {
    lines.push(barsForMissing(cite, done.approvedByAuthorised.missing, about));
  } else if (!done.approvedByAuthorised.value) {
    bars(`${name} does not count. The person who approved it did not hold what the law asks that day.`);
  }
  return lines;
}

/** Supports when the flight ends on or before `through`, bars when it ends later. */
export function calendarLine(
  requirement: RequirementFacts,
  through: CalendarDate,
  use: UseOfAircraft,
  cite: CiteId,
): Line {
  const about = aboutRequirement(requirement);
  const day = dayInWords(through);
  return lastDayOf(use) <= through
    ? { effect: 'supports', cite, because: `${requirement.name} good through ${day}.`, about }
    : { effect: 'bars', cite, because: `${requirement.name} ran out ${day}.`, about };
}

/** Supports when the flight ends at or before `due`, bars when it ends later. Times in service, in tenths. */
export function hoursLine(
  requirement: RequirementFacts,
  due: HoursTenths,
  ttis: HoursTenths,
  use: UseOfAircraft,
  cite: CiteId,
): Line {
  const about = aboutRequirement(requirement);
  const end = ttis + use.plannedTenths;
  if (end <= due) {
    const because = `${requirement.name} due at ${formatTenths(due)} h. This flight ends at ${formatTenths(end)} h.`;
    return { effect: 'supports', cite, because, about };
  }
  const because =
    ttis > due
      ? `${requirement.name} overdue by ${formatTenths(ttis - due)} h. It was due at ${formatTenths(due)} h.`
      : `${requirement.name} has ${formatTenths(due - ttis)} h left. This flight takes ${formatTenths(use.plannedTenths)} h.`;
  return { effect: 'bars', cite, because, about };
}

/** A limit met says nothing while the record itself is in doubt, so a supporting line is then left out. */
export const unlessInDoubt = (doubts: readonly Line[], line: Line): Line[] =>
  doubts.length > 0 && line.effect === 'supports' ? [...doubts] : [...doubts, line];
