import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate, calendarDateOrNull, instant } from '../db/dates';
import { dueList, type DueLine } from '../due/due-list';
import { SUMMARY, summaryOf, type WriteUpSummary } from '../findings/summary';
import { requireAircraft } from '../fleet/require-aircraft';
import { nameIn, namesOf } from '../people/names';
import { whereSpendsPermit } from '../releases/active-releases';
import { dayAtBase } from '../records/signature';
import type { PaperKind } from '../rules/aircraft';

/** One aircraft as the mechanic needs it: what is open, what is under way, what falls due, its papers and permits. */
export interface AircraftBench {
  readonly asOf: string;
  readonly today: string;
  readonly zone: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly serial: string;
  readonly typeName: string;
  readonly baseIdent: string;
  readonly baseName: string;
  readonly hobbsTenths: number | null;
  readonly tachTenths: number | null;
  readonly ttisTenths: number | null;
  /** Whole tenths flown in a mean week; null with why not. */
  readonly tenthsAWeek: number | null;
  readonly paceWeeks: number | null;
  readonly paceMissing: string | null;
  /** Oldest first. */
  readonly writeUps: readonly WriteUpSummary[];
  /** Begun or entered, not signed. */
  readonly work: readonly {
    readonly id: string;
    readonly title: string;
    readonly state: string;
    readonly startedBy: string;
    readonly startedAt: string;
    readonly discrepancyId: string | null;
    readonly requirementId: string | null;
    readonly inspectionId: string | null;
  }[];
  readonly inspection: {
    readonly id: string;
    readonly kind: string;
    readonly begunAt: string;
    readonly begunBy: string;
  } | null;
  readonly visits: readonly {
    readonly id: string;
    readonly title: string;
    readonly plannedOn: string | null;
  }[];
  readonly due: readonly DueLine[];
  readonly ended: readonly {
    readonly id: string;
    readonly name: string;
    readonly on: string;
    readonly why: string;
    readonly by: string;
  }[];
  readonly papers: readonly {
    readonly id: string;
    readonly kind: PaperKind;
    readonly reference: string | null;
    readonly aboard: boolean | null;
    readonly expires: boolean | null;
    readonly validThrough: string | null;
  }[];
  readonly permits: readonly {
    readonly id: string;
    readonly reference: string;
    readonly goodThrough: string;
    readonly used: boolean;
  }[];
  readonly hasDeferrals: boolean;
}

/** How many permits and ended requirements are listed. */
const SHOWN = 10;

export const readAircraftBench = query({
  verb: 'bench.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId, now }, { aircraftId }): Promise<AircraftBench> {
    const aircraft = await requireAircraft(tx, operatorId, aircraftId);
    const here = { operatorId, aircraftId };
    const writeUps = await tx.discrepancy.findMany({
      where: { ...here, state: { not: 'closed' } },
      include: SUMMARY,
      orderBy: { openedAt: 'asc' },
    });
    const work = await tx.maintenanceAction.findMany({
      where: { ...here, state: { in: ['started', 'entered'] } },
      orderBy: { startedAt: 'asc' },
    });
    const inspection = await tx.inspection.findFirst({
      where: { ...here, state: { in: ['begun', 'entered'] } },
    });
    const visits = await tx.visit.findMany({
      where: { ...here, closedAt: null },
      orderBy: { openedAt: 'asc' },
    });
    const ended = await tx.requirement.findMany({
      where: { ...here, endedOn: { not: null } },
      orderBy: { endedOn: 'desc' },
      take: SHOWN,
    });
    const papers = await tx.paper.findMany({ where: here, orderBy: { kind: 'asc' } });
    const permits = await tx.specialFlightPermit.findMany({
      where: here,
      include: { releases: { where: whereSpendsPermit, select: { id: true } } },
      orderBy: { goodThrough: 'desc' },
      take: SHOWN,
    });
    const names = await namesOf(tx, [
      ...writeUps.map((row) => row.finding.personId),
      ...work.map((row) => row.startedById),
      ...(inspection ? [inspection.begunById] : []),
      ...ended.flatMap((row) => (row.endedById === null ? [] : [row.endedById])),
    ]);
    const due = await dueList(tx, operatorId, now, aircraftId);
    const pace = due.aircraft[0];
    return {
      asOf: instant(now),
      today: dayAtBase(now, aircraft.base.zone),
      zone: aircraft.base.zone,
      aircraftId,
      registration: aircraft.registration,
      serial: aircraft.serial,
      typeName: aircraft.type.name,
      baseIdent: aircraft.base.ident,
      baseName: aircraft.base.name,
      hobbsTenths: aircraft.hobbsTenths,
      tachTenths: aircraft.tachTenths,
      ttisTenths: aircraft.ttisTenths,
      tenthsAWeek: pace?.tenthsAWeek ?? null,
      paceWeeks: pace?.paceWeeks ?? null,
      paceMissing: pace?.paceMissing ?? null,
      writeUps: writeUps.map((row) => summaryOf(row, names)),
      work: work.map((row) => ({
        id: row.id,
        title: row.title,
        state: row.state,
        startedBy: nameIn(names, row.startedById),
        startedAt: instant(row.startedAt),
        discrepancyId: row.discrepancyId,
        requirementId: row.requirementId,
        inspectionId: row.inspectionId,
      })),
      inspection: inspection && {
        id: inspection.id,
        kind: inspection.kind,
        begunAt: instant(inspection.begunAt),
        begunBy: nameIn(names, inspection.begunById),
      },
      visits: visits.map(({ id, title, plannedOn }) => ({
        id,
        title,
        plannedOn: calendarDateOrNull(plannedOn),
      })),
      due: due.lines,
      ended: ended.map((row) => ({
        id: row.id,
        name: row.name,
        on: calendarDateOrNull(row.endedOn) ?? '',
        why: row.endedWhy ?? '',
        by: row.endedById === null ? 'not on record' : nameIn(names, row.endedById),
      })),
      papers: papers.map(({ id, kind, reference, aboard, expires, validThrough }) => ({
        id,
        kind: kind as PaperKind,
        reference,
        aboard,
        expires,
        validThrough: calendarDateOrNull(validThrough),
      })),
      permits: permits.map(({ id, reference, goodThrough, releases }) => ({
        id,
        reference,
        goodThrough: calendarDate(goodThrough),
        used: releases.length > 0,
      })),
      hasDeferrals: writeUps.some((row) => row.deferrals.some(({ end }) => end === null)),
    };
  },
});
