import type { Tx } from '../db/client';
import { calendarDate, instant } from '../db/dates';
import { known } from '../rules/facts';
import { retentionOf } from '../rules/part-91/91-417-records';
import { changesOf, type Asked } from './asked';
import type { RecordRow } from './record-row';
import { saidIn } from './signed-row';
import type { VouchedKind } from './vouch';

const TITLES: Record<VouchedKind, string> = {
  equipment: 'Equipment line held against the documents',
  'aircraft-type': 'Facts of the type held against the documents',
  aircraft: 'Facts of the aircraft held against the documents',
  mel: 'Minimum equipment list entered',
  discrepancy: 'Write-up carried over',
  deferral: 'Deferral carried over',
  compliance: 'Last done, carried over',
  paper: 'Paper entered',
  directives: 'Directives gone through',
};

/** What somebody vouched for about the aircraft. */
export async function vouchingRecords(tx: Tx, asked: Asked): Promise<RecordRow[]> {
  const { operatorId, aircraftId } = asked;
  const rows = await tx.vouching.findMany({ where: { operatorId, aircraftId, signedAt: asked.signed } });
  return rows.map((row) => {
    const on = calendarDate(row.signedOn);
    const name = saidIn(row.content, 'subject.name', 'subject.registration', 'subject.title');
    return {
      id: row.id,
      kind: 'vouching',
      part: 'aircraft',
      title: `${TITLES[row.subjectKind as VouchedKind]}${typeof name === 'string' ? `: ${name}` : ''}`,
      words: `${row.statement} Document: ${row.source}`,
      on,
      at: instant(row.signedAt),
      ttisTenths: null,
      by: row.personName,
      certificate: null,
      hash: row.hash,
      changes: changesOf(asked, row.id),
      supersededWords: null,
      correctsWords: null,
      retention: retentionOf(
        { kind: 'judgement', doneOn: known(on), supersededOn: null, repairedOn: null },
        asked.today,
      ),
      about: null,
      paper: null,
    };
  });
}
