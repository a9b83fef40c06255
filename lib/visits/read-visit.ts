import { z } from 'zod';
import { query } from '../access/service';
import { calendarDateOrNull, instant } from '../db/dates';
import type { Prisma } from '../db/client';
import { nextFlights } from '../flights/next-flights';
import { nameIn, namesOf } from '../people/names';
import { Refusal } from '../problems';
import type { CalendarDate, Instant } from '../rules/facts';
import { flightInWords } from '../rules/queue-order';
import { said } from '../words/said';

/** A write-up in a visit. */
export interface VisitWriteUp {
  readonly itemId: string;
  readonly discrepancyId: string;
  readonly number: string;
  readonly title: string;
  /** Where on the aircraft, in the words of whoever found it. */
  readonly place: string;
  readonly state: string;
  readonly severity: string | null;
  readonly closedHow: string | null;
  /** State of the work begun on it; null when none is. */
  readonly work: string | null;
  /** Signed work on it, whose entries can be printed. */
  readonly signedWorkIds: readonly string[];
  readonly done: boolean;
}

/** A recurring item in a visit. */
export interface VisitRequirement {
  readonly itemId: string;
  readonly requirementId: string;
  readonly kind: string;
  readonly name: string;
  /** Annual or 100-hour: done by an inspection that is begun and signed as one. */
  readonly byInspection: boolean;
  /** The inspection under way that answers it. */
  readonly inspectionId: string | null;
  /** When it was answered since it was put into the visit. */
  readonly doneOn: CalendarDate | null;
  readonly done: boolean;
}

export interface VisitView {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  readonly plannedOn: CalendarDate | null;
  readonly aircraftId: string;
  readonly registration: string;
  readonly baseIdent: string;
  readonly zone: string;
  readonly openedBy: string;
  readonly openedAt: Instant;
  readonly closedBy: string | null;
  readonly closedAt: Instant | null;
  /** When the aircraft next departs, in words. */
  readonly nextFlight: string | null;
  readonly writeUps: readonly VisitWriteUp[];
  readonly requirements: readonly VisitRequirement[];
}

const BY_INSPECTION: readonly string[] = ['annual', 'hundred-hour'];

const IN_FULL = {
  aircraft: { include: { base: { select: { ident: true, zone: true } } } },
  items: {
    where: { removedAt: null },
    orderBy: [{ addedAt: 'asc' }, { id: 'asc' }],
    include: {
      discrepancy: {
        include: {
          finding: { select: { place: true } },
          work: { where: { state: { not: 'abandoned' } }, select: { id: true, state: true } },
        },
      },
      requirement: { include: { compliances: { orderBy: { recordedAt: 'desc' } } } },
    },
  },
} as const satisfies Prisma.VisitInclude;
type VisitRow = Prisma.VisitGetPayload<{ include: typeof IN_FULL }>;
type Item = VisitRow['items'][number];

/** One visit with the state of everything in it. Refuses `not_found`. */
export const readVisit = query({
  verb: 'visit.read',
  input: z.object({ visitId: z.uuid() }),
  async run({ tx, operatorId, now }, { visitId }): Promise<VisitView> {
    const row = await tx.visit.findUnique({
      where: { operatorId_id: { operatorId, id: visitId } },
      include: IN_FULL,
    });
    if (!row) throw new Refusal('not_found', { say: said('There is no such visit here.') });
    const names = await namesOf(tx, row.closedById ? [row.openedById, row.closedById] : [row.openedById]);
    const underWay = await tx.inspection.findMany({
      where: { operatorId, aircraftId: row.aircraftId, state: { in: ['begun', 'entered'] } },
      select: { id: true, requirementIds: true },
    });
    const departs = (await nextFlights(tx, operatorId, now)).get(row.aircraftId);
    const { zone, ident } = row.aircraft.base;
    return {
      id: row.id,
      title: row.title,
      words: row.words,
      plannedOn: calendarDateOrNull(row.plannedOn),
      aircraftId: row.aircraftId,
      registration: row.aircraft.registration,
      baseIdent: ident,
      zone,
      openedBy: nameIn(names, row.openedById),
      openedAt: instant(row.openedAt),
      closedBy: row.closedById ? nameIn(names, row.closedById) : null,
      closedAt: row.closedAt ? instant(row.closedAt) : null,
      nextFlight: departs ? flightInWords(departs, instant(now), zone) : null,
      writeUps: row.items.flatMap(writeUpIn),
      requirements: row.items.flatMap((item) => requirementIn(item, underWay)),
    };
  },
});

function writeUpIn({ id, discrepancy }: Item): VisitWriteUp[] {
  if (!discrepancy) return [];
  const { number, title, finding, state, severity, closedHow, work } = discrepancy;
  return [
    {
      itemId: id,
      discrepancyId: discrepancy.id,
      number,
      title,
      place: finding.place,
      state,
      severity,
      closedHow,
      work: work.find((one) => one.state !== 'signed')?.state ?? null,
      signedWorkIds: work.flatMap((one) => (one.state === 'signed' ? one.id : [])),
      done: state === 'closed',
    },
  ];
}

function requirementIn(
  { id, addedAt, requirement }: Item,
  underWay: readonly { readonly id: string; readonly requirementIds: readonly string[] }[],
): VisitRequirement[] {
  if (!requirement) return [];
  const superseded = new Set(requirement.compliances.map(({ supersedesId }) => supersedesId));
  const answer = requirement.compliances.find((one) => !superseded.has(one.id) && one.recordedAt >= addedAt);
  const inspection = underWay.find(({ requirementIds }) => requirementIds.includes(requirement.id));
  return [
    {
      itemId: id,
      requirementId: requirement.id,
      kind: requirement.kind,
      name: requirement.name,
      byInspection: BY_INSPECTION.includes(requirement.kind),
      inspectionId: inspection?.id ?? null,
      doneOn: calendarDateOrNull(answer?.doneOn ?? null),
      done: answer !== undefined,
    },
  ];
}
