import type { AircraftFacts, DiscrepancyFacts, RequirementFacts, RequirementKind } from '../rules/aircraft';
import { repairCategoryCite, repairDeadline } from '../rules/advisory/mmel-repair-categories';
import { dueOf } from '../rules/due';
import { PARAGRAPH_OF_KIND, PARAGRAPH_OF_PAPER } from '../rules/due-paragraphs';
import { dueGroupOf, type DueGroup } from '../rules/due-window';
import { known, unknown, type CalendarDate, type Fact, type HoursTenths } from '../rules/facts';
import { hoursForecast, whicheverFirst, type FirstLimit, type Pace } from '../rules/forecast';
import type { CiteId } from '../rules/law';
import { lastDayWithinDays, parseCalendarDate } from '../rules/months';
import { paperName } from '../rules/papers-in-words';
import {
  OVERFLY_TENTHS,
  HUNDRED_HOURS_TENTHS,
  nextHundredHourDue,
} from '../rules/part-91/91-409-inspections';

/** One thing that falls due on one aircraft. */
export interface DueRow {
  readonly kind: 'requirement' | 'paper' | 'deferral';
  /** Of the requirement, the paper, or the write-up that is deferred. */
  readonly id: string;
  readonly name: string;
  readonly requirementKind: RequirementKind | null;
  /** False for a maker's recommendation. */
  readonly binding: boolean;
  readonly cite: CiteId;
  readonly group: DueGroup;
  readonly last: { readonly on: CalendarDate; readonly ttisTenths: HoursTenths } | null;
  /** Last good day, and last good time in service; null where it is not limited so. */
  readonly on: CalendarDate | null;
  readonly tenths: HoursTenths | null;
  readonly remainingDays: number | null;
  readonly remainingTenths: HoursTenths | null;
  readonly missing: string | null;
  /** Whichever comes first, with the band where hours decide. */
  readonly first: FirstLimit | null;
  /** Why there is no date for the hours; null where there is one or hours do not limit it. */
  readonly noForecast: string | null;
  /** Deferrals that may not outlive it: 91.405(c). */
  readonly endsDeferrals: readonly {
    readonly discrepancyId: string;
    readonly number: string;
    readonly title: string;
  }[];
  readonly overfly: Overfly | null;
}

/** 91.409(b): how far the 100 hours may be overflown on the way to the inspection, and what that would cost. */
export interface Overfly {
  /** The last tenth, ten hours beyond. */
  readonly lastTenths: HoursTenths;
  /** How much is over now; 0 when nothing is. */
  readonly excessTenths: HoursTenths;
  /** Hours that remain until the next one, when this one is done now, and when it is done at the last tenth. */
  readonly thenLeftTenths: HoursTenths;
  readonly thenLeftAtLastTenths: HoursTenths;
}

/** Everything that falls due on one aircraft: what recurs, papers that run out, deferrals that end on a day. */
export function dueRows(aircraft: AircraftFacts, pace: Fact<Pace>, today: CalendarDate): DueRow[] {
  return [
    ...aircraft.requirements.map((row) => requirementRow(row, aircraft, pace, today)),
    ...annualNotOnRecord(aircraft),
    ...aircraft.papers.flatMap((paper) => paperRow(paper, today)),
    ...aircraft.discrepancies.flatMap((one) => deferralRow(one, aircraft, today)),
  ];
}

function requirementRow(
  row: RequirementFacts,
  aircraft: AircraftFacts,
  pace: Fact<Pace>,
  today: CalendarDate,
): DueRow {
  const due = dueOf(row, aircraft.ttisTenths, aircraft.requirements);
  const left = { remainingDays: due.remainingDays(today), remainingTenths: due.remainingTenths };
  const missing = missingOf(row, aircraft, due);
  const hours = left.remainingTenths === null ? null : hoursForecast(left.remainingTenths, pace, today);
  return {
    kind: 'requirement',
    id: row.id,
    name: row.name,
    requirementKind: row.kind,
    binding: row.binding || row.kind !== 'maker-interval',
    cite: PARAGRAPH_OF_KIND[row.kind],
    group: dueGroupOf({ ...left, missing }),
    last: row.lastDone.known
      ? { on: row.lastDone.value.on, ttisTenths: row.lastDone.value.ttisTenths }
      : null,
    on: due.on,
    tenths: due.tenths,
    ...left,
    missing,
    // What is not known gets no date: one that looks certain would be believed.
    first: missing === null ? whicheverFirst(due.on, hours) : null,
    noForecast: hours === null || hours.known ? null : hours.missing,
    endsDeferrals: ENDS_DEFERRALS.includes(row.kind) ? liveDeferrals(aircraft) : [],
    overfly: row.kind === 'hundred-hour' ? overflyOf(due.tenths, aircraft.ttisTenths) : null,
  };
}

const ENDS_DEFERRALS: readonly RequirementKind[] = ['annual', 'hundred-hour'];

const liveDeferrals = (aircraft: AircraftFacts) =>
  aircraft.discrepancies
    .filter(({ deferral }) => deferral !== null)
    .map(({ id, number, title }) => ({ discrepancyId: id, number, title }));

/** What is not known although it decides: no record, no approval that counts, no time in service, no interval. */
function missingOf(
  row: RequirementFacts,
  aircraft: AircraftFacts,
  due: ReturnType<typeof dueOf>,
): string | null {
  if (due.missing !== null) return due.missing;
  if (row.lastDone.known && row.kind !== 'elt-battery') {
    const { approvedByAuthorised } = row.lastDone.value;
    if (!approvedByAuthorised.known) return approvedByAuthorised.missing;
    if (!approvedByAuthorised.value) {
      return `an approval of "${row.name}" that counts: who gave the last one did not hold what the law asks`;
    }
  }
  if (due.tenths !== null && !aircraft.ttisTenths.known) return aircraft.ttisTenths.missing;
  if (due.on !== null || due.tenths !== null || row.kind === 'directive') return null;
  return row.kind === 'elt-battery' ? 'the expiry date of the battery' : `the interval of "${row.name}"`;
}

/** 91.409(a) asks for an annual whether or not somebody has entered one. */
function annualNotOnRecord(aircraft: AircraftFacts): DueRow[] {
  if (aircraft.requirements.some(({ kind }) => kind === 'annual')) return [];
  return [
    {
      ...NOTHING_LEFT,
      kind: 'requirement',
      id: '',
      name: 'Annual inspection',
      requirementKind: 'annual',
      cite: PARAGRAPH_OF_KIND.annual,
      group: 'unknown',
      missing: 'when the last annual inspection was done',
      endsDeferrals: liveDeferrals(aircraft),
    },
  ];
}

const NOTHING_LEFT = {
  requirementKind: null,
  binding: true,
  last: null,
  on: null,
  tenths: null,
  remainingDays: null,
  remainingTenths: null,
  missing: null,
  first: null,
  noForecast: null,
  endsDeferrals: [],
  overfly: null,
} as const;

/** A paper that runs out, or of which nobody knows whether it does. */
function paperRow(paper: AircraftFacts['papers'][number], today: CalendarDate): DueRow[] {
  if (paper.validThrough.known && paper.validThrough.value === null) return [];
  return [
    dated(paper.validThrough as Fact<CalendarDate>, today, {
      kind: 'paper',
      id: paper.id,
      name: paperName(paper.kind),
      cite: PARAGRAPH_OF_PAPER[paper.kind],
    }),
  ];
}

/** A deferral that ends on a day: a repair category of the list, or the removal of the locator transmitter. */
function deferralRow(one: DiscrepancyFacts, aircraft: AircraftFacts, today: CalendarDate): DueRow[] {
  const { deferral } = one;
  if (deferral === null) return [];
  const rows: DueRow[] = [];
  const row = (cite: CiteId, through: Fact<CalendarDate>) =>
    rows.push(
      dated(through, today, {
        kind: 'deferral',
        id: one.id,
        name: `Deferral ${one.number}: ${one.title}`,
        cite,
      }),
    );
  const mel = aircraft.mel.known ? aircraft.mel.value : null;
  const item = mel?.items.find(({ id }) => id === deferral.melItemId);
  if (mel?.enforceCategories && item) {
    const deadline = repairDeadline(item.category, deferral.recordedOn, item.categoryADays);
    const { extendedThrough } = deferral;
    row(repairCategoryCite(item.category), extendedThrough === null ? deadline : known(extendedThrough));
  } else if (deferral.basis === 'mel' && !item) {
    row('14cfr91.213(a)', unknown(`the item of the list on which ${one.number} is deferred`));
  }
  if (deferral.eltRemoval) {
    const { firstRemovedOn } = deferral.eltRemoval;
    row('14cfr91.207(f)(10)(ii)', known(lastDayWithinDays(firstRemovedOn, ELT_REMOVED_DAYS)));
  }
  return rows;
}

/** 91.207(f)(10)(ii). */
const ELT_REMOVED_DAYS = 90;

function dated(
  through: Fact<CalendarDate>,
  today: CalendarDate,
  row: Pick<DueRow, 'kind' | 'id' | 'name' | 'cite'>,
): DueRow {
  const on = through.known ? through.value : null;
  const missing = through.known ? null : through.missing;
  const remainingDays =
    on === null ? null : parseCalendarDate(today).until(parseCalendarDate(on), { largestUnit: 'days' }).days;
  return {
    ...NOTHING_LEFT,
    ...row,
    group: dueGroupOf({ remainingDays, remainingTenths: null, missing }),
    on,
    remainingDays,
    missing,
    first: whicheverFirst(on, null),
  };
}

/** Null while the due point or the time in service is not known, or when it is a whole interval late. */
function overflyOf(due: HoursTenths | null, ttis: Fact<HoursTenths>): Overfly | null {
  if (due === null || !ttis.known) return null;
  const excessTenths = Math.max(0, ttis.value - due);
  if (excessTenths >= HUNDRED_HOURS_TENTHS) return null;
  const lastTenths = due + OVERFLY_TENTHS;
  const leftAfter = (doneAt: HoursTenths) => nextHundredHourDue({ doneAt, wasDue: due }) - doneAt;
  return {
    lastTenths,
    excessTenths,
    thenLeftTenths: leftAfter(ttis.value),
    thenLeftAtLastTenths: leftAfter(lastTenths),
  };
}
