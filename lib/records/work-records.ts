import type { Tx } from '../db/client';
import { calendarDate, instant } from '../db/dates';
import { known, type CalendarDate } from '../rules/facts';
import { dayInWords } from '../rules/in-words';
import type { RequirementKind } from '../rules/aircraft';
import { kindOfWorkRecord, retentionOf } from '../rules/part-91/91-417-records';
import { WORK_ROW } from '../work/entry';
import { partOfRecord, type RecordRow } from './record-row';
import { nextAnswer, type Answers } from './answers';
import { changesOf, type Asked } from './asked';

/** Signed entries of work and of inspections, and the check flights flown for them. */
export async function workRecords(tx: Tx, asked: Asked, answers: Answers): Promise<RecordRow[]> {
  const { operatorId, aircraftId, today } = asked;
  const rows = await tx.signOff.findMany({
    where: { operatorId, work: { aircraftId }, signedAt: asked.signed },
    include: { work: { include: WORK_ROW } },
  });
  return rows.map(({ work, ...row }): RecordRow => {
    const on = calendarDate(work.completedOn ?? row.signedOn);
    const answersKind = (work.requirement?.kind ?? null) as RequirementKind | null;
    const correction = work.corrections.find((one) => one.signOff)?.signOff;
    const inspection = work.inspectionId !== null;
    return {
      id: row.id,
      kind: inspection ? 'inspection' : 'work',
      part: partOfRecord(work.part),
      title: work.title,
      words: work.description,
      on,
      at: instant(row.signedAt),
      ttisTenths: work.ttisTenths,
      by: row.personName,
      certificate: { kind: row.certificateKind, number: row.certificateNumber },
      hash: row.hash,
      changes: changesOf(asked, row.id),
      supersededWords: correction
        ? `Corrected by an entry of ${dayInWords(calendarDate(correction.signedOn))}`
        : null,
      correctsWords: work.supersedes ? `Corrects an earlier entry: ${work.supersedeWhy}` : null,
      retention: retentionOf(
        {
          kind: kindOfWorkRecord(work.workKind, inspection ? null : answersKind),
          doneOn: known(on),
          supersededOn: repeatedOn(answers, work.requirementId, work.workKind, on),
          repairedOn: null,
        },
        today,
      ),
      about: inspection
        ? { kind: 'inspection', id: work.inspectionId ?? '', label: 'Inspection' }
        : work.discrepancy && { kind: 'write-up', id: work.discrepancy.id, label: work.discrepancy.number },
      paper: inspection
        ? { kind: 'inspection', id: work.inspectionId ?? '' }
        : { kind: 'entry', id: work.id },
    };
  });
}

/** Work on what recurs is repeated by the next answer to it; an inspection by the next that covers it. */
function repeatedOn(
  answers: Answers,
  requirementId: string | null,
  workKind: string,
  on: CalendarDate,
): CalendarDate | null {
  if (requirementId !== null) return nextAnswer(answers, on, (one) => one.requirementId === requirementId);
  if (workKind === 'annual') return nextAnswer(answers, on, (one) => one.kind === 'annual');
  // An annual inspection also satisfies the 100-hour inspection.
  if (workKind === 'hundred-hour') {
    return nextAnswer(answers, on, (one) => one.kind === 'annual' || one.kind === 'hundred-hour');
  }
  return null;
}

export async function checkFlightRecords(tx: Tx, asked: Asked): Promise<RecordRow[]> {
  const { operatorId, aircraftId, today } = asked;
  const rows = await tx.checkFlight.findMany({
    where: { operatorId, work: { aircraftId }, signedAt: asked.signed },
    include: { work: { include: { discrepancy: true } } },
  });
  return rows.map(({ work, ...row }) => ({
    id: row.id,
    kind: 'check-flight',
    part: partOfRecord(work.part),
    title: `Check flight after: ${work.title}`,
    words: row.words,
    on: calendarDate(row.flownOn),
    at: instant(row.signedAt),
    ttisTenths: null,
    by: row.personName,
    certificate: { kind: 'pilot', number: row.certificateNumber },
    hash: row.hash,
    changes: changesOf(asked, row.id),
    supersededWords: null,
    correctsWords: null,
    // 91.407(b) has it logged in the aircraft's records: kept as the work it belongs to.
    retention: retentionOf(
      { kind: 'work', doneOn: known(calendarDate(row.flownOn)), supersededOn: null, repairedOn: null },
      today,
    ),
    about: work.discrepancy && { kind: 'write-up', id: work.discrepancy.id, label: work.discrepancy.number },
    paper: { kind: 'entry', id: work.id },
  }));
}
