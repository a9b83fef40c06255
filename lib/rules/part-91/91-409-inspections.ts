/**
 * 14 CFR 91.409: annual and 100-hour inspections.
 *
 * - (a): within the preceding 12 calendar months, an annual inspection with approval for return to service by a
 *   person 43.7 authorizes (for an annual, the holder of an inspection authorization: 65.95(a)(2)), or the inspection
 *   for an airworthiness certificate.
 * - (b): carrying a person other than crew for hire, or instruction for hire in an aircraft which the instructor's
 *   side provides, needs an annual or a 100-hour inspection within the preceding 100 hours of time in service.
 *   141.39(a)(3) puts training flights and solo flights of a part 141 school under the same rule.
 *   The limit may be exceeded by not more than 10 hours while en route to reach a place where the inspection can be
 *   done; the excess is included in computing the next 100 hours.
 * - (c): not for flight under a special flight permit: see `special-flight-permit.ts`.
 * - (d): a progressive inspection is not covered; such an aircraft is answered by (a) and (b).
 */
import type { AircraftFacts, RequirementFacts } from '../aircraft';
import { known, type Fact, type HoursTenths } from '../facts';
import { formatTenths } from '../hours';
import type { CiteId } from '../law';
import { lastDayOfCalendarMonthAfter } from '../months';
import type { UseOfAircraft } from '../operations';
import {
  aboutRequirement,
  barsForUnknownTime,
  calendarLine,
  doubtsAboutRecord,
  hoursLine,
  unlessInDoubt,
} from '../requirement-lines';
import { barsForMissing, type Line } from '../verdict';

export const ANNUAL_MONTHS = 12;
/** 100 hours, in tenths. */
export const HUNDRED_HOURS_TENTHS = 1000;
/** The 10 hours of 91.409(b), in tenths. */
export const OVERFLY_TENTHS = 100;

/** 91.409(a). Bars without a recorded annual, after its last day, or when approved by a person who could not. */
export function checkAnnual(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  const cite: CiteId = '14cfr91.409(a)';
  const annuals = aircraft.requirements.filter((row) => row.kind === 'annual');
  if (annuals.length === 0) {
    const about = { kind: 'aircraft', id: aircraft.id, label: aircraft.registration } as const;
    return [barsForMissing(cite, 'when the last annual inspection was done', about)];
  }
  return annuals.flatMap((annual) => {
    const doubts = doubtsAboutRecord(annual, aircraft, use, cite);
    if (!annual.lastDone.known) return doubts;
    const through = lastDayOfCalendarMonthAfter(annual.lastDone.value.on, ANNUAL_MONTHS);
    return unlessInDoubt(doubts, calendarLine(annual, through, use, cite));
  });
}

/** 91.409(b) with 141.39(a)(3). Over the limit a flight that does not need the inspection only gets a note. */
export function checkHundredHour(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  const rows = aircraft.requirements.filter((row) => row.kind === 'hundred-hour');
  const need = needOf(aircraft, use, rows);
  const about = { kind: 'aircraft', id: aircraft.id, label: aircraft.registration } as const;
  if (!need.applies.known) return [barsForMissing(need.cite, need.applies.missing, about)];
  if (!need.applies.value) return rows.flatMap((row) => noteIfOver(row, aircraft, use));
  if (rows.length === 0) {
    return [barsForMissing(need.cite, 'when the last 100-hour inspection was done', about)];
  }
  return rows.flatMap((row) => checkHundredHourRow(row, aircraft, use, need.cite));
}

/**
 * 91.409(b), last sentences: when the next inspection falls due, time in service in tenths. Done early, 100 hours
 * from when it was done; done late, 100 hours from when it was due, so that the excess is paid back.
 * Done at 1104.0 when due at 1100.0: next at 1200.0.
 * @param wasDue null for the first inspection, which answered no earlier one
 */
export function nextHundredHourDue({
  doneAt,
  wasDue,
}: {
  readonly doneAt: HoursTenths;
  readonly wasDue: HoursTenths | null;
}): HoursTenths {
  return (wasDue === null ? doneAt : Math.min(doneAt, wasDue)) + HUNDRED_HOURS_TENTHS;
}

/**
 * When this 100-hour row next falls due, given the annual rows beside it: an annual satisfies (b) too, and pays back
 * an excess all the same. Null while the row has no last inspection recorded.
 */
export function hundredHourDue(
  row: RequirementFacts,
  requirements: readonly RequirementFacts[],
): HoursTenths | null {
  const last = lastThatCounts(row, requirements);
  return last === null ? null : nextHundredHourDue(last);
}

interface Need {
  readonly applies: Fact<boolean>;
  readonly cite: CiteId;
}

function needOf(aircraft: AircraftFacts, use: UseOfAircraft, rows: readonly RequirementFacts[]): Need {
  if (use.hire) return { applies: known(true), cite: '14cfr91.409(b)' };
  if (use.purpose === 'student-solo') return { applies: aircraft.part141, cite: '14cfr141.39(a)(3)' };
  // A flight to the inspection is held to the ten hours whoever is aboard, if the aircraft is kept on 100-hours at all.
  if (use.purpose === 'to-inspection') return { applies: known(rows.length > 0), cite: '14cfr91.409(b)' };
  return { applies: known(false), cite: '14cfr91.409(b)' };
}

function checkHundredHourRow(
  row: RequirementFacts,
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  cite: CiteId,
): Line[] {
  const doubts = doubtsAboutRecord(row, aircraft, use, cite);
  const last = lastThatCounts(row, aircraft.requirements);
  if (last === null) return doubts;
  if (last.wasDue !== null && last.doneAt - last.wasDue >= HUNDRED_HOURS_TENTHS) {
    doubts.push({
      effect: 'bars',
      cite,
      because: `${row.name} was 100 hours or more late last time. A person must work out when the next is due.`,
      about: aboutRequirement(row),
      strictReading: '91.409(b) does not say how an excess of a whole interval is paid back.',
    });
  }
  if (!aircraft.ttisTenths.known) return [...doubts, ...barsForUnknownTime(aircraft)];
  return unlessInDoubt(
    doubts,
    againstLimit(row, nextHundredHourDue(last), aircraft.ttisTenths.value, use, cite),
  );
}

function againstLimit(
  row: RequirementFacts,
  due: HoursTenths,
  ttis: HoursTenths,
  use: UseOfAircraft,
  cite: CiteId,
): Line {
  const line = hoursLine(row, due, ttis, use, cite);
  if (line.effect !== 'bars') return line;
  const strictReading =
    'The 10 hours are taken to serve only a flight made to reach the place of inspection.';
  if (use.purpose !== 'to-inspection') return { ...line, strictReading };
  const latest = formatTenths(due + OVERFLY_TENTHS);
  if (ttis + use.plannedTenths > due + OVERFLY_TENTHS) {
    return {
      ...line,
      because: `${row.name} more than 10 hours over. The last tenth is ${latest} h, even on the way to it.`,
    };
  }
  return {
    effect: 'limits',
    cite,
    because: `${row.name} is over: only straight to the place of inspection, down by ${latest} h.`,
    about: aboutRequirement(row),
    strictReading,
  };
}

function noteIfOver(row: RequirementFacts, aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  const due = hundredHourDue(row, aircraft.requirements);
  if (due === null || !aircraft.ttisTenths.known) return [];
  if (aircraft.ttisTenths.value + use.plannedTenths <= due) return [];
  const because = `${row.name} is over at ${formatTenths(due)} h. This flight does not need it, and the excess counts.`;
  return [{ effect: 'notes', cite: '14cfr91.409(b)', because, about: aboutRequirement(row) }];
}

interface LastInspection {
  readonly doneAt: HoursTenths;
  readonly wasDue: HoursTenths | null;
}

function lastThatCounts(
  row: RequirementFacts,
  requirements: readonly RequirementFacts[],
): LastInspection | null {
  if (!row.lastDone.known) return null;
  const hundred = { doneAt: row.lastDone.value.ttisTenths, wasDue: row.lastDone.value.wasDueTenths };
  const annual = latestAnnual(requirements);
  if (annual === null || annual.doneAt <= hundred.doneAt) return hundred;
  return { doneAt: annual.doneAt, wasDue: annual.wasDue ?? nextHundredHourDue(hundred) };
}

/** Only an annual known to be approved by somebody who could counts for (b). */
function latestAnnual(requirements: readonly RequirementFacts[]): LastInspection | null {
  const annuals = requirements.flatMap(({ kind, lastDone }) => {
    if (kind !== 'annual' || !lastDone.known) return [];
    const { ttisTenths, wasDueTenths, approvedByAuthorised } = lastDone.value;
    const counts = approvedByAuthorised.known && approvedByAuthorised.value;
    return counts ? [{ doneAt: ttisTenths, wasDue: wasDueTenths }] : [];
  });
  return annuals.sort((a, b) => b.doneAt - a.doneAt)[0] ?? null;
}
