import type { Tx } from '../db/client';
import { calendarDate } from '../db/dates';
import type { RequirementKind } from '../rules/aircraft';
import { known, type CalendarDate } from '../rules/facts';
import { kindOfWorkRecord, type RecordToKeep } from '../rules/part-91/91-417-records';
import { namesKept, type NamesKept } from '../rules/part-91/91-417-retention';

/**
 * How long the law asks for what somebody signed: their sign-offs and their lists of 43.11. What took the place of a record
 * is not looked up here, so the answer is never too short.
 */
export async function namesKeptOf(
  tx: Tx,
  operatorId: string,
  personId: string,
  on: CalendarDate,
): Promise<NamesKept> {
  const signOffs = await tx.signOff.findMany({
    where: { operatorId, personId },
    include: { work: { include: { requirement: { select: { kind: true } } } } },
  });
  const lists = await tx.discrepancyList.findMany({ where: { operatorId, personId } });
  const records: RecordToKeep[] = [
    ...signOffs.map(({ work, signedOn }): RecordToKeep => ({
      kind: kindOfWorkRecord(
        work.workKind,
        work.inspectionId ? null : ((work.requirement?.kind ?? null) as RequirementKind | null),
      ),
      doneOn: known(calendarDate(work.completedOn ?? signedOn)),
      supersededOn: null,
      repairedOn: null,
    })),
    ...lists.map(({ dated }): RecordToKeep => ({
      kind: 'list',
      doneOn: known(calendarDate(dated)),
      supersededOn: null,
      repairedOn: null,
    })),
  ];
  return namesKept(records, on);
}
