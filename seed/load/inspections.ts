import type { RequirementKind } from '../../lib/rules/aircraft';
import type { AircraftPlan } from '../shapes';
import { dayOf, daysBefore, instantAt, daysSince, endOfMonth, monthsBefore } from './calendar';
import { ttisAt, whenAt, type HoursPast } from './meters';

/** One requirement row of an aircraft. */
export interface RequirementPlan {
  readonly kind: RequirementKind;
  readonly name: string;
  readonly reference: string | null;
  readonly binding: boolean;
  readonly intervalMonths: number | null;
  readonly intervalDays: number | null;
  readonly intervalTenths: number | null;
  readonly fixedExpiry: string | null;
}

/** One requirement answered once. */
export interface CompliancePlan {
  readonly kind: RequirementKind;
  readonly at: Date;
  readonly doneOn: string;
  readonly ttisTenths: number;
  readonly wasDueTenths: number | null;
  readonly testedToFt: number | null;
  readonly by: 'inspector' | 'station' | 'pilot';
}

/** What recurs on an aircraft. */
export function requirementsOf(plan: AircraftPlan, now: Date, zone: string): RequirementPlan[] {
  const row = (kind: RequirementKind, name: string, more: Partial<RequirementPlan>): RequirementPlan => ({
    kind,
    name,
    reference: null,
    binding: true,
    intervalMonths: null,
    intervalDays: null,
    intervalTenths: null,
    fixedExpiry: null,
    ...more,
  });
  return [
    row('annual', 'Annual inspection', { intervalMonths: 12, reference: '14 CFR 91.409(a)' }),
    ...(plan.hundredHourTenthsLeft === null
      ? []
      : [
          row('hundred-hour', '100-hour inspection', {
            intervalTenths: HUNDRED_HOURS,
            reference: '14 CFR 91.409(b)',
          }),
        ]),
    row('static-and-altimeter', 'Altimeter and static test', {
      intervalMonths: 24,
      reference: '14 CFR 91.411',
    }),
    row('transponder', 'Transponder test', { intervalMonths: 24, reference: '14 CFR 91.413' }),
    row('elt-inspection', 'Emergency locator inspection', {
      intervalMonths: 12,
      reference: '14 CFR 91.207(d)',
    }),
    row('elt-battery', 'Emergency locator battery', {
      fixedExpiry: endOfMonth(now, zone, plan.eltBatteryGoodMonths),
      reference: 'Date marked on the battery',
    }),
    row('vor-check', 'VOR check', { intervalDays: 30, reference: '14 CFR 91.171' }),
    row('directive', 'Recurring directive, carburettor heat valve', {
      intervalTenths: HUNDRED_HOURS,
      intervalMonths: 12,
      reference: 'Demo directive 97-017, invented',
    }),
    row('maker-interval', 'Oil change', {
      intervalTenths: 500,
      intervalMonths: 4,
      binding: false,
      reference: 'Engine maker’s recommendation, invented for the demo',
    }),
  ];
}

const HUNDRED_HOURS = 1000;
/** Tenths between one 100-hour inspection and the next: always a little early, as a shop does it. */
const HUNDRED_HOUR_STEPS = [978, 991, 966, 984];
const OIL_STEPS = [476, 491, 468];
const TEST_MONTHS = 23;
const VOR_STEP_DAYS = 27;
/** How far back the records go. */
const RECORDS_DAYS = 420;

/** All inspections and tests of an aircraft that the records hold, in order of time. */
export function compliancesOf(past: HoursPast, now: Date, zone: string): CompliancePlan[] {
  const { plan } = past;
  const on = (date: string) => instantAt(now, zone, daysSince(now, zone, date), '16:30');
  const dated = (
    kind: RequirementKind,
    date: string,
    by: CompliancePlan['by'],
    more: Partial<CompliancePlan> = {},
  ): CompliancePlan => ({
    kind,
    at: on(date),
    doneOn: date,
    ttisTenths: ttisAt(past, on(date)),
    wasDueTenths: null,
    testedToFt: null,
    by,
    ...more,
  });

  const annuals = [plan.annualMonthsAgo, plan.annualMonthsAgo + 12].map((months) =>
    dated('annual', monthsBefore(now, zone, months), 'inspector'),
  );
  const hundreds = plan.hundredHourTenthsLeft === null ? [] : hundredHours(past, annuals, now, zone);
  const tests = [plan.altimeterTestMonthsAgo, plan.altimeterTestMonthsAgo + TEST_MONTHS].map((months) =>
    monthsBefore(now, zone, months),
  );
  return [
    ...annuals,
    ...annuals.map((annual) => ({ ...annual, kind: 'elt-inspection' as const })),
    ...annuals.slice(0, 1).map((annual) => ({ ...annual, kind: 'elt-battery' as const })),
    ...hundreds,
    ...(hundreds.length > 0 ? hundreds : annuals).map((one) => ({
      ...one,
      kind: 'directive' as const,
      wasDueTenths: null,
    })),
    ...tests.flatMap((date) => [
      dated('static-and-altimeter', date, 'station', { testedToFt: plan.altimeterTestedToFt }),
      dated('transponder', date, 'station'),
    ]),
    ...every(VOR_STEP_DAYS, plan.vorCheckDaysAgo).map((days) =>
      dated('vor-check', daysBefore(now, zone, days), 'pilot'),
    ),
    ...byHours(past, plan.ttisTenths - plan.oilChangeTenthsAgo, OIL_STEPS, now).map(({ at, ttisTenths }) =>
      dated('maker-interval', dayOf(at, zone), 'inspector', { at, ttisTenths }),
    ),
  ].sort((a, b) => a.at.getTime() - b.at.getTime());
}

/** The 100-hour inspections, one with each annual; each says when it was due. */
function hundredHours(
  past: HoursPast,
  annuals: readonly CompliancePlan[],
  now: Date,
  zone: string,
): CompliancePlan[] {
  const { plan } = past;
  const last = plan.ttisTenths + (plan.hundredHourTenthsLeft ?? 0) - HUNDRED_HOURS;
  const own = byHours(past, last, HUNDRED_HOUR_STEPS, now).map(({ at, ttisTenths }): CompliancePlan => ({
    kind: 'hundred-hour',
    at,
    doneOn: dayOf(at, zone),
    ttisTenths,
    wasDueTenths: null,
    testedToFt: null,
    by: 'inspector',
  }));
  const all = [...own, ...annuals.map((annual) => ({ ...annual, kind: 'hundred-hour' as const }))].sort(
    (a, b) => a.ttisTenths - b.ttisTenths,
  );
  return all.map((one, index) => {
    const before = all[index - 1];
    return before ? { ...one, wasDueTenths: before.ttisTenths + HUNDRED_HOURS } : one;
  });
}

/** Points of total time going back in steps, as far as the records go. */
function byHours(
  past: HoursPast,
  last: number,
  steps: readonly number[],
  now: Date,
): { readonly at: Date; readonly ttisTenths: number }[] {
  const points: { at: Date; ttisTenths: number }[] = [];
  const earliest = now.getTime() - RECORDS_DAYS * 86_400_000;
  for (
    let ttisTenths = last, step = 0;
    ;
    ttisTenths -= steps[step % steps.length] ?? HUNDRED_HOURS, step += 1
  ) {
    const at = whenAt(past, ttisTenths);
    if (points.length > 0 && at.getTime() < earliest) return points;
    points.push({ at, ttisTenths });
  }
}

const every = (step: number, last: number): number[] =>
  Array.from({ length: Math.floor((RECORDS_DAYS - last) / step) + 1 }, (_, index) => last + index * step);
