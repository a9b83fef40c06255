import type { Tx } from '../db/client';
import { calendarDate, instant } from '../db/dates';
import { superseded } from '../determinations/record-of-write-up';
import { determinedOn } from '../fleet/carried-determination';
import { nameIn, namesOf } from '../people/names';
import type { RequirementKind } from '../rules/aircraft';
import { known, type CalendarDate } from '../rules/facts';
import { workPartOf } from '../rules/findings/catalogue';
import { dayInWords } from '../rules/in-words';
import { localDate } from '../rules/months';
import {
  kindOfCompliance,
  retentionOf,
  type RecordKind,
  type Retention,
} from '../rules/part-91/91-417-records';
import { nextAnswer, type Answers } from './answers';
import { changesOf, type Asked } from './asked';
import { markInWords, markOf, VOUCHED } from './carried-mark';
import { partOfRecord, type PartOfRecord, type RecordRow } from './record-row';

const kept = (
  asked: Asked,
  kind: RecordKind,
  on: CalendarDate,
  ends: { supersededOn?: CalendarDate | null; repairedOn?: CalendarDate | null } = {},
): Retention =>
  retentionOf({ kind, doneOn: known(on), supersededOn: null, repairedOn: null, ...ends }, asked.today);

/** Judgements of write-ups; one that a deferral rests on stands for the deferral. */
export async function determinationRecords(tx: Tx, asked: Asked): Promise<RecordRow[]> {
  const { operatorId, aircraftId } = asked;
  const rows = await tx.determination.findMany({
    where: { operatorId, discrepancy: { aircraftId }, signedAt: asked.signed },
    include: {
      discrepancy: { include: { determinations: true } },
      deferrals: { include: { end: true } },
      vouching: VOUCHED,
    },
  });
  return rows.map(({ discrepancy, deferrals: [deferral], vouching, ...row }) => {
    const mark = markOf(vouching);
    const part = workPartOf(discrepancy.findingKey, discrepancy.jasc);
    const on = calendarDate(row.signedOn);
    const measured = row.measured
      ? ` Measured ${row.measured}; limit ${row.limitText ?? 'not stated'} (${row.limitSource ?? 'no source'}).`
      : '';
    const ended = deferral?.end ? ` Ended: ${deferral.end.how}, ${deferral.end.words}.` : '';
    const how = deferral ? ` ${deferral.methodWords}.${ended}` : '';
    return {
      id: row.id,
      kind: deferral ? 'deferral' : 'determination',
      part: part.known ? partOfRecord(part.value) : 'aircraft',
      title: `${DETERMINED[row.kind] ?? row.kind}: ${discrepancy.title}`,
      words: mark
        ? `${markInWords(mark)}. ${determinedInWords(row)}${how}`
        : `${row.statement}${measured}${how}`,
      on,
      at: instant(row.signedAt),
      ttisTenths: null,
      by: row.personName,
      certificate: { kind: row.certificateKind, number: row.certificateNumber },
      hash: row.hash,
      changes: changesOf(asked, row.id),
      supersededWords: superseded(row, discrepancy.determinations)
        ? 'A later judgement has taken its place'
        : null,
      correctsWords: null,
      retention: kept(asked, 'judgement', on),
      about: { kind: 'write-up', id: discrepancy.id, label: discrepancy.number },
      paper: null,
    };
  });
}

/** Who determined on paper, and when. */
function determinedInWords(row: Parameters<typeof determinedOn>[0] & { personName: string }): string {
  const day = determinedOn(row, '');
  return `On paper: ${row.personName}, ${day.known ? dayInWords(day.value) : 'the day is not known'}.`;
}

const DETERMINED: Readonly<Record<string, string>> = {
  severity: 'Judged',
  'within-limits': 'Within limits',
  'no-hazard': 'No hazard, 91.213(d)(4)',
  servicing: 'Serviced',
  'inspected-at-inspection': 'Inspected, 91.405(c)',
};

/** Lists of 43.11(b). */
export async function listRecords(tx: Tx, asked: Asked): Promise<RecordRow[]> {
  const { operatorId, aircraftId } = asked;
  const rows = await tx.discrepancyList.findMany({
    where: { operatorId, inspection: { aircraftId }, signedAt: asked.signed },
    include: { supersededBy: true, supersedes: true },
  });
  return Promise.all(
    rows.map(async (row): Promise<RecordRow> => {
      const items = Array.isArray(row.items) ? row.items : [];
      const on = calendarDate(row.dated);
      return {
        id: row.id,
        kind: 'list',
        part: 'aircraft',
        title: `List of ${items.length} discrepancies and unairworthy items`,
        words: null,
        on,
        at: instant(row.signedAt),
        ttisTenths: null,
        by: row.personName,
        certificate: { kind: row.certificateKind, number: row.certificateNumber },
        hash: row.hash,
        changes: changesOf(asked, row.id),
        supersededWords: row.supersededBy
          ? `A list of ${dayInWords(calendarDate(row.supersededBy.dated))} has taken its place`
          : null,
        correctsWords: row.supersedes
          ? `Takes the place of the list of ${dayInWords(calendarDate(row.supersedes.dated))}`
          : null,
        retention: kept(asked, 'list', on, { repairedOn: await repairedOn(tx, asked, items) }),
        about: { kind: 'inspection', id: row.inspectionId, label: 'Inspection' },
        paper: { kind: 'list', id: row.id },
      };
    }),
  );
}

/** The day on which the last of these write-ups was closed; null while one is open, or an item names none. */
async function repairedOn(tx: Tx, asked: Asked, items: readonly unknown[]): Promise<CalendarDate | null> {
  const ids = items.map((item) => (item as { discrepancyId?: unknown } | null)?.discrepancyId);
  const named = ids.filter((id) => typeof id === 'string');
  if (named.length < items.length || named.length === 0) return null;
  const rows = await tx.discrepancy.findMany({
    where: { operatorId: asked.operatorId, id: { in: named } },
    select: { closedAt: true },
  });
  const days = rows.flatMap(({ closedAt }) => (closedAt ? [localDate(instant(closedAt), asked.zone)] : []));
  return days.length < named.length ? null : (days.sort().at(-1) ?? null);
}

/** Answers to what recurs that are no work and no inspection of their own here: carried over, or recorded by themselves. */
export async function complianceRecords(tx: Tx, asked: Asked, answers: Answers): Promise<RecordRow[]> {
  const { operatorId, aircraftId } = asked;
  const rows = await tx.compliance.findMany({
    where: {
      operatorId,
      requirement: { aircraftId },
      workId: null,
      inspectionId: null,
      signOffId: null,
      recordedAt: asked.signed,
    },
    include: { requirement: true, vouching: VOUCHED },
  });
  const corrected = await tx.compliance.findMany({
    where: { operatorId, supersedesId: { in: rows.map((row) => row.id) } },
    select: { supersedesId: true, recordedAt: true },
  });
  const names = await namesOf(
    tx,
    rows.map((row) => row.recordedById),
  );
  return rows.map(({ requirement, vouching, ...row }) => {
    const mark = markOf(vouching);
    const on = calendarDate(row.doneOn);
    const kind = requirement.kind as RequirementKind;
    const later = corrected.find((one) => one.supersedesId === row.id);
    return {
      id: row.id,
      kind: 'compliance',
      part: PARTS[kind] ?? 'aircraft',
      title: requirement.reference ? `${requirement.name} (${requirement.reference})` : requirement.name,
      words: `Approved by ${row.approvedBy}, as the record says. ${mark ? `${markInWords(mark)}.` : `Recorded by ${nameIn(names, row.recordedById)}.`}`,
      on,
      at: instant(row.recordedAt),
      ttisTenths: row.ttisTenths,
      by: row.approvedBy,
      certificate: null,
      hash: row.hash,
      changes: row.hash === null ? null : changesOf(asked, row.id),
      supersededWords: later
        ? `Corrected on ${dayInWords(localDate(instant(later.recordedAt), asked.zone))}`
        : null,
      correctsWords: row.supersedesId ? 'Corrects an earlier record' : null,
      retention: kept(asked, kindOfCompliance(kind), on, {
        supersededOn: nextAnswer(answers, on, (one) => one.requirementId === row.requirementId),
      }),
      about: null,
      paper: null,
    };
  });
}

const PARTS: Partial<Record<RequirementKind, PartOfRecord>> = {
  'static-and-altimeter': 'appliance',
  transponder: 'appliance',
  'elt-inspection': 'appliance',
  'elt-battery': 'appliance',
  'vor-check': 'appliance',
};

/** Extensions of a repair interval. */
export async function extensionRecords(tx: Tx, asked: Asked): Promise<RecordRow[]> {
  const { operatorId, aircraftId } = asked;
  const rows = await tx.melExtension.findMany({
    where: { operatorId, deferral: { discrepancy: { aircraftId } }, signedAt: asked.signed },
    include: { deferral: { include: { discrepancy: true } } },
  });
  return rows.map(({ deferral: { discrepancy }, ...row }) => ({
    id: row.id,
    kind: 'extension',
    part: 'aircraft',
    title: `Repair interval extended to ${dayInWords(calendarDate(row.untilOn))}: ${discrepancy.title}`,
    words: `${row.reason} On the authority of ${row.authority}.`,
    on: calendarDate(row.signedOn),
    at: instant(row.signedAt),
    ttisTenths: null,
    by: row.personName,
    certificate: null,
    hash: row.hash,
    changes: changesOf(asked, row.id),
    supersededWords: null,
    correctsWords: null,
    retention: kept(asked, 'judgement', calendarDate(row.signedOn)),
    about: { kind: 'write-up', id: discrepancy.id, label: discrepancy.number },
    paper: null,
  }));
}

/** Special flight permits and the inspections they asked for. */
export async function permitRecords(tx: Tx, asked: Asked): Promise<RecordRow[]> {
  const { operatorId, aircraftId } = asked;
  const permits = await tx.specialFlightPermit.findMany({
    where: { operatorId, aircraftId, signedAt: asked.signed },
  });
  const inspections = await tx.permitInspection.findMany({
    where: { operatorId, permit: { aircraftId }, signedAt: asked.signed },
    include: { permit: true },
  });
  const names = await namesOf(
    tx,
    permits.map((row) => row.recordedById),
  );
  const row = (of: {
    id: string;
    permitId: string;
    reference: string;
    signedAt: Date;
    signedOn: Date;
    hash: string;
  }) => ({
    id: of.id,
    part: 'aircraft' as const,
    on: calendarDate(of.signedOn),
    at: instant(of.signedAt),
    ttisTenths: null,
    hash: of.hash,
    changes: changesOf(asked, of.id),
    supersededWords: null,
    correctsWords: null,
    retention: kept(asked, 'judgement', calendarDate(of.signedOn)),
    about: { kind: 'permit' as const, id: of.permitId, label: of.reference },
    paper: null,
  });
  return [
    ...permits.map((permit): RecordRow => ({
      ...row({ ...permit, permitId: permit.id }),
      kind: 'permit',
      title: `Special flight permit ${permit.reference}`,
      words: `Issued by ${permit.issuedBy}. ${permit.crew}`,
      by: nameIn(names, permit.recordedById),
      certificate: null,
    })),
    ...inspections.map(({ permit, ...one }): RecordRow => ({
      ...row({ ...one, reference: permit.reference }),
      kind: 'permit-inspection',
      title: `Inspection for permit ${permit.reference}`,
      words: one.statement,
      by: one.personName,
      certificate: { kind: one.certificateKind, number: one.certificateNumber },
    })),
  ];
}
