import { z } from 'zod';
import { query } from '../access/service';
import type { Tx } from '../db/client';
import { calendarDate, instant } from '../db/dates';
import { Refusal } from '../problems';
import { changesIn, type SignedRow } from '../records/signed-row';
import { signedSignOff } from '../records/signed-tables';
import { entryContent, requireWork, type WorkRow } from '../work/entry';
import type { EntryPaper } from './logbook-entry';
import { fileName, type PaperAircraft, type PaperSignature } from './paper';

/** What the papers need to know of the aircraft; the operator's name is read beside it. */
export async function paperAircraft(
  tx: Tx,
  operatorId: string,
  aircraft: { registration: string; serial: string; type: { name: string }; base: { zone: string } },
): Promise<PaperAircraft> {
  const { name } = await tx.operator.findUniqueOrThrow({ where: { id: operatorId }, select: { name: true } });
  return {
    registration: aircraft.registration,
    serial: aircraft.serial,
    typeName: aircraft.type.name,
    operatorName: name,
    zone: aircraft.base.zone,
  };
}

/** A row with a signature by a certificate, as it goes on paper. */
export function paperSignature(
  row: {
    personName: string;
    certificateKind: string;
    certificateNumber: string;
    signedAt: Date;
    signedOn: Date;
    hash: string;
  },
  statement: string,
  signed: SignedRow,
): PaperSignature {
  return {
    name: row.personName,
    certificateKind: row.certificateKind,
    certificateNumber: row.certificateNumber,
    signedOn: calendarDate(row.signedOn),
    signedAt: instant(row.signedAt),
    statement,
    hash: row.hash,
    changes: changesIn(signed),
  };
}

/** The entry of signed work, to print. Refuses `conflict` for work that nobody has signed. */
export const readEntryPaper = query({
  verb: 'paper.read',
  input: z.object({ workId: z.uuid() }),
  async run({ tx, operatorId, now }, { workId }): Promise<EntryPaper> {
    const work = await requireWork(tx, operatorId, workId);
    const { signOff, checkFlight } = work;
    if (!signOff) {
      throw new Refusal('conflict', { say: 'This work is not signed yet: there is no entry to print.' });
    }
    return {
      fileName: fileName(work.aircraft.registration, 'entry', work.id),
      aircraft: await paperAircraft(tx, operatorId, work.aircraft),
      madeAt: now.toISOString(),
      workId: work.id,
      entry: entryContent(work),
      signature: paperSignature(signOff, signOff.statement, signedSignOff({ ...signOff, work })),
      supersedes: supersedes(work),
      supersededBy: supersededBy(work),
      checkFlight: checkFlight && {
        by: checkFlight.personName,
        certificateNumber: checkFlight.certificateNumber,
        flownOn: calendarDate(checkFlight.flownOn),
        words: checkFlight.words,
        hash: checkFlight.hash,
      },
    };
  },
});

const supersedes = ({ supersedes: earlier, supersedeWhy }: WorkRow): EntryPaper['supersedes'] =>
  earlier && {
    hash: earlier.signOff?.hash ?? null,
    signedOn: earlier.signOff ? calendarDate(earlier.signOff.signedOn) : null,
    why: supersedeWhy ?? '',
  };

function supersededBy({ corrections }: WorkRow): EntryPaper['supersededBy'] {
  const signed = corrections.find((correction) => correction.signOff)?.signOff;
  return signed ? { hash: signed.hash, signedOn: calendarDate(signed.signedOn) } : null;
}
