/**
 * When a recurring requirement next falls due, by calendar, by time in service, or both: for the rules that read a
 * row's own interval (directives, life limits, maker's intervals) and for screens that show what is coming.
 *
 * For the kinds whose interval the regulation sets, that interval counts and not the one in the row: 91.409(a) and
 * (b), 91.411(a)(1), 91.413(a), 91.207(d), 91.171(a)(2).
 */
import type { RequirementFacts, RequirementKind } from './aircraft';
import type { CalendarDate, Fact, HoursTenths } from './facts';
import { lastDayOfCalendarMonthAfter, lastDayWithinDays, parseCalendarDate } from './months';
import { VOR_CHECK_DAYS } from './part-91/91-171-vor-check';
import { ELT_INSPECTION_MONTHS } from './part-91/91-207-elt-inspection';
import { ANNUAL_MONTHS, hundredHourDue } from './part-91/91-409-inspections';
import { ALTIMETER_TEST_MONTHS, TRANSPONDER_TEST_MONTHS } from './part-91/91-411-413-altimeter-transponder';

/** When something is due. What is null does not limit it; `missing` says why nothing can be said at all. */
export interface DueReport {
  /** Last good day. */
  readonly on: CalendarDate | null;
  /** Last good time in service. */
  readonly tenths: HoursTenths | null;
  /** Time in service left; negative when over, null without an hours limit or without a known time in service. */
  readonly remainingTenths: HoursTenths | null;
  /** Whole days left after `asOf`: 0 on the last good day, negative when over, null without a calendar limit. */
  readonly remainingDays: (asOf: CalendarDate) => number | null;
  /** Set when the last compliance is not known, though it decides. */
  readonly missing: string | null;
}

/** The calendar intervals which the regulations set. */
const MONTHS_BY_LAW: Partial<Record<RequirementKind, number>> = {
  annual: ANNUAL_MONTHS,
  'static-and-altimeter': ALTIMETER_TEST_MONTHS,
  transponder: TRANSPONDER_TEST_MONTHS,
  'elt-inspection': ELT_INSPECTION_MONTHS,
};

/** Kinds measured only as the regulation says; every other kind by the intervals in its row. */
const MEASURED_BY_LAW: readonly RequirementKind[] = [
  'annual',
  'hundred-hour',
  'static-and-altimeter',
  'transponder',
  'elt-inspection',
  'elt-battery',
  'vor-check',
];

/**
 * When `requirement` next falls due.
 * @param ttis total time in service of the aircraft now
 * @param beside all requirements of the aircraft: an annual among them also satisfies the 100-hour inspection
 */
export function dueOf(
  requirement: RequirementFacts,
  ttis: Fact<HoursTenths>,
  beside: readonly RequirementFacts[],
): DueReport {
  const on = earliest([requirement.fixedExpiry, ...calendarLimits(requirement)]);
  const tenths =
    requirement.kind === 'hundred-hour' ? hundredHourDue(requirement, beside) : hoursLimit(requirement);
  return {
    on,
    tenths,
    remainingTenths: tenths === null || !ttis.known ? null : tenths - ttis.value,
    remainingDays: (asOf) =>
      on === null ? null : parseCalendarDate(asOf).until(parseCalendarDate(on), { largestUnit: 'days' }).days,
    missing: missingRecord(requirement),
  };
}

function calendarLimits({ kind, lastDone, intervalMonths, intervalDays }: RequirementFacts): CalendarDate[] {
  if (!lastDone.known) return [];
  const { on } = lastDone.value;
  const byLaw = MEASURED_BY_LAW.includes(kind);
  const months = byLaw ? (MONTHS_BY_LAW[kind] ?? null) : intervalMonths;
  const days = kind === 'vor-check' ? VOR_CHECK_DAYS : byLaw ? null : intervalDays;
  return [
    ...(months === null ? [] : [lastDayOfCalendarMonthAfter(on, months)]),
    ...(days === null ? [] : [lastDayWithinDays(on, days)]),
  ];
}

function hoursLimit({ kind, lastDone, intervalTenths }: RequirementFacts): HoursTenths | null {
  if (MEASURED_BY_LAW.includes(kind) || intervalTenths === null || !lastDone.known) return null;
  return lastDone.value.ttisTenths + intervalTenths;
}

/** A row that only carries a date marked on the part needs no record of when it was fitted. */
function missingRecord({ kind, lastDone, fixedExpiry, ...row }: RequirementFacts): string | null {
  if (lastDone.known) return null;
  const onlyDated = row.intervalMonths === null && row.intervalDays === null && row.intervalTenths === null;
  if (fixedExpiry !== null && (kind === 'elt-battery' || onlyDated)) return null;
  return lastDone.missing;
}

function earliest(dates: readonly (CalendarDate | null)[]): CalendarDate | null {
  return dates.filter((date) => date !== null).sort()[0] ?? null;
}
