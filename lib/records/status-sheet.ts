import type { Tx } from '../db/client';
import { calendarDate, calendarDateOrNull } from '../db/dates';
import { aircraftFacts, type AircraftRow } from '../fleet/facts';
import { dueOf } from '../rules/due';
import type { CalendarDate } from '../rules/facts';
import { entryContent, WORK_ROW } from '../work/entry';

/** One thing that recurs, as 91.417(a)(2) wants its status told. */
export interface StatusLine {
  readonly id: string;
  readonly name: string;
  readonly reference: string | null;
  readonly binding: boolean;
  readonly lastOn: CalendarDate | null;
  readonly lastTenths: number | null;
  /** Time in service since; null when either time is not known. */
  readonly sinceTenths: number | null;
  readonly dueOn: CalendarDate | null;
  readonly dueTenths: number | null;
  readonly remainingDays: number | null;
  readonly remainingTenths: number | null;
  /** Directives: how it was met, and the revision. */
  readonly method: string | null;
  readonly revision: string | null;
  readonly missing: string | null;
  /** The last record was carried over from paper. */
  readonly carriedOver: boolean;
}

/** 91.417(a)(2), (i) to (vi), as the records stand. What they do not hold is null and is said. */
export interface StatusSheet {
  /** (i) Of the airframe; engines and propellers have no time of their own here. */
  readonly ttisTenths: number | null;
  readonly engines: number;
  /** (ii) */
  readonly lifeLimits: readonly StatusLine[];
  /** (iii), with the maker's intervals, which are not told from overhauls. */
  readonly intervals: readonly StatusLine[];
  /** (iv) */
  readonly inspections: readonly StatusLine[];
  /** (v) */
  readonly directives: readonly StatusLine[];
  readonly namedDirectives: readonly {
    readonly id: string;
    readonly number: string;
    readonly title: string;
  }[];
  readonly directivesReviewedOn: CalendarDate | null;
  /** (vi) */
  readonly forms337: readonly {
    readonly workId: string;
    readonly title: string;
    readonly on: CalendarDate | null;
    readonly form: string | null;
  }[];
}

const INSPECTIONS: readonly string[] = [
  'annual',
  'hundred-hour',
  'static-and-altimeter',
  'transponder',
  'elt-inspection',
  'elt-battery',
  'vor-check',
];

export async function statusSheet(tx: Tx, row: AircraftRow, today: CalendarDate): Promise<StatusSheet> {
  const facts = aircraftFacts(row);
  const lines = row.requirements.map((requirement) => {
    const fact = facts.requirements.find((one) => one.id === requirement.id);
    return { kind: requirement.kind, line: statusLine(row, requirement, fact, facts, today) };
  });
  const of = (...kinds: readonly string[]) =>
    lines.flatMap(({ kind, line }) => (kinds.includes(kind) && line ? [line] : []));
  const major = await tx.maintenanceAction.findMany({
    where: { operatorId: row.operatorId, aircraftId: row.id, workKind: 'major', state: 'signed' },
    include: WORK_ROW,
    orderBy: { completedOn: 'desc' },
  });
  return {
    ttisTenths: row.ttisTenths,
    engines: row.type.engines,
    lifeLimits: of('life-limit'),
    intervals: of('maker-interval'),
    inspections: of(...INSPECTIONS),
    directives: of('directive'),
    namedDirectives: row.directives.map(({ id, number, title }) => ({ id, number, title })),
    directivesReviewedOn: calendarDateOrNull(row.directivesReviewedOn),
    forms337: major.map((work) => {
      const entry = entryContent(work);
      return { workId: work.id, title: work.title, on: entry.completedOn, form: entry.form337 ?? null };
    }),
  };
}

function statusLine(
  row: AircraftRow,
  requirement: AircraftRow['requirements'][number],
  fact: ReturnType<typeof aircraftFacts>['requirements'][number] | undefined,
  facts: ReturnType<typeof aircraftFacts>,
  today: CalendarDate,
): StatusLine | null {
  if (!fact) return null;
  const due = dueOf(fact, facts.ttisTenths, facts.requirements);
  const last = fact.lastDone.known ? fact.lastDone.value : null;
  const answered = requirement.compliances.find(
    (done) => last !== null && calendarDate(done.doneOn) === last.on && done.ttisTenths === last.ttisTenths,
  );
  const details = (answered?.details ?? {}) as { method?: unknown; revision?: unknown };
  const text = (value: unknown) => (typeof value === 'string' && value !== '' ? value : null);
  return {
    id: requirement.id,
    name: requirement.name,
    reference: requirement.reference,
    binding: requirement.binding,
    lastOn: last?.on ?? null,
    lastTenths: last?.ttisTenths ?? null,
    sinceTenths: last && row.ttisTenths !== null ? row.ttisTenths - last.ttisTenths : null,
    dueOn: due.on,
    dueTenths: due.tenths,
    remainingDays: due.remainingDays(today),
    remainingTenths: due.remainingTenths,
    method: text(details.method),
    revision: text(details.revision),
    missing: due.missing,
    carriedOver: (answered?.vouchingId ?? null) !== null,
  };
}
