import { randomBytes } from 'node:crypto';
import type { ActorRef } from '../access/actor';
import { hashPassword } from '../access/passwords';
import { command, type CallOptions } from '../access/service';
import type { Tx } from '../db/client';
import { dateColumn } from '../db/dates';
import { readInOperator } from '../db/scope';
import { log } from '../log';
import { photoStore } from '../photos/chosen-store';
import { fieldRefusal, Refusal, type Result } from '../problems';
import { toPlain } from '../records/canonical';
import { endWaysIn } from './leave-and-return';
import { writePersonEvent } from './person-events';
import { proofKey } from './proof-file';
import { requirePerson } from './require-person';
import { countRows } from './rows-of-person';
import { erasePersonInput } from './schema';
import { TABLES_OF_PERSON, type Keeping } from './tables-of-person';
import { todayOfPerson } from './today';
import { said } from '../words/said';

export const ERASED_NAME = 'Erased person';

/** What stays of somebody, table by table, with the paragraph that keeps it. */
export interface KeptRows extends Keeping {
  readonly table: string;
  readonly says: string;
  readonly rows: number;
}

/** What would stay if this person's data were erased now. */
export async function rowsKept(tx: Tx, operatorId: string, personId: string): Promise<readonly KeptRows[]> {
  const kept: KeptRows[] = [];
  for (const table of TABLES_OF_PERSON) {
    if (table.erased === 'gone') continue;
    const rows = await countRows(tx, operatorId, personId, table);
    if (rows > 0) kept.push({ table: table.model, says: table.says, rows, ...table.erased });
  }
  return kept;
}

const written = command({
  verb: 'personal-data.erase',
  signing: true,
  input: erasePersonInput,
  async run({ tx, operatorId, actor, now, requestId }, { personId, askedOn, words }) {
    const person = await requirePerson(tx, operatorId, personId);
    if (!person.leftOn) {
      throw new Refusal('conflict', {
        say: said('This person works here. Their data is needed until they have left.'),
      });
    }
    const today = await todayOfPerson(tx, operatorId, person, now);
    if (askedOn > today) throw fieldRefusal('askedOn', said('This day is still to come.'));
    const erased = {
      ...(await emptyLetters(tx, operatorId, personId)),
      ...(await deleteSecrets(tx, operatorId, personId)),
      ...(await endWaysIn(tx, { operatorId, personId, byId: actor.personId, now })),
      certificateNumbers: await forgetNumbers(tx, operatorId, personId),
    };
    const proofs = await tx.proof.findMany({
      where: { operatorId, certificate: { personId } },
      select: { storedAs: true, mime: true },
    });
    await tx.person.update({
      where: { operatorId_id: { operatorId, id: personId } },
      data: {
        name: ERASED_NAME,
        // Signing in asks for an address, unique over all; .invalid is nobody's (RFC 2606).
        email: `erased-${personId}@erased.invalid`,
        passwordHash: await hashPassword(randomBytes(32).toString('base64url')),
        passwordSetAt: null,
        sessionVersion: { increment: 1 },
        roles: [],
        homeBaseId: null,
        units: null,
        language: null,
        failedSignIns: 0,
        lockedUntil: null,
        erasedAt: now,
      },
    });
    await writePersonEvent(tx, {
      operatorId,
      personId,
      what: 'erased',
      onDate: today,
      words: 'What the law lets be erased was erased.',
      byId: actor.personId,
      at: now,
    });
    const kept = await rowsKept(tx, operatorId, personId);
    const counts = { ...erased, name: 1, address: 1, password: 1, proofFiles: proofs.length };
    await tx.personalErasure.create({
      data: {
        id: requestId,
        operatorId,
        personId,
        askedOn: dateColumn(askedOn),
        words,
        kept: toPlain(kept) as object,
        erased: counts,
        byId: actor.personId,
        at: now,
      },
    });
    return {
      value: { personId, erased: counts, kept: kept.length },
      audit: { subjectKind: 'person', subjectId: personId, detail: { erased: counts, kept: kept.length } },
    };
  },
});

/**
 * Erases what the law lets be erased of somebody who has left: name, address, password, second factors, sessions, letters,
 * files of proofs, numbers of certificates nothing was signed under. What was signed stays as it was signed, with the name
 * in it, and keeps verifying. It cannot be undone.
 */
export async function erasePerson(
  ref: ActorRef | null,
  raw: unknown,
  options?: CallOptions,
): Promise<Result<{ personId: string; erased: Readonly<Record<string, number>>; kept: number }>> {
  const result = await written(ref, raw, options);
  if (result.ok && ref) await removeProofFiles(ref, result.value.personId);
  return result;
}

/** After the rows: a store that does not answer must not keep the name. What is left the sweep takes (sweep-traces.ts). */
async function removeProofFiles(ref: ActorRef, personId: string): Promise<void> {
  try {
    const proofs = await readInOperator(ref.operatorId, (tx) =>
      tx.proof.findMany({
        where: { operatorId: ref.operatorId, certificate: { personId } },
        select: { storedAs: true, mime: true },
      }),
    );
    for (const { storedAs, mime } of proofs) await photoStore().remove(proofKey(storedAs, mime));
  } catch (error) {
    log.error('photo store does not answer', error, { about: 'erasure' });
  }
}

async function emptyLetters(tx: Tx, operatorId: string, personId: string) {
  const theirs = { operatorId, OR: [{ notice: { personId } }, { link: { personId } }] };
  await tx.letter.updateMany({ where: { ...theirs, state: 'waiting' }, data: { state: 'given-up' } });
  const letters = await tx.letter.updateMany({
    where: { ...theirs, toAddress: { not: '' } },
    data: { toAddress: '', body: '', trouble: null },
  });
  return { letters: letters.count };
}

async function deleteSecrets(tx: Tx, operatorId: string, personId: string) {
  const where = { operatorId, personId };
  const [factors, codes, challenges, signIns] = [
    await tx.secondFactor.deleteMany({ where }),
    await tx.recoveryCode.deleteMany({ where }),
    await tx.challenge.deleteMany({ where }),
    await tx.session.deleteMany({ where }),
  ];
  return {
    secondFactors: factors.count,
    recoveryCodes: codes.count,
    challenges: challenges.count,
    signIns: signIns.count,
  };
}

/** Numbers of certificates under which nothing was signed here. The others stand in signed records and stay (43.9(a)(4)). */
async function forgetNumbers(tx: Tx, operatorId: string, personId: string): Promise<number> {
  const held = await tx.certificate.findMany({ where: { operatorId, personId } });
  let forgotten = 0;
  for (const { id, number } of held) {
    if (await wasSignedUnder(tx, operatorId, personId, number)) continue;
    await tx.certificate.update({
      where: { operatorId_id: { operatorId, id } },
      data: { number: 'erased' },
    });
    forgotten += 1;
  }
  return forgotten;
}

async function wasSignedUnder(
  tx: Tx,
  operatorId: string,
  personId: string,
  certificateNumber: string,
): Promise<boolean> {
  const where = { operatorId, personId, certificateNumber };
  const signed = [
    await tx.signOff.count({ where }),
    await tx.checkFlight.count({ where }),
    await tx.determination.count({ where }),
    await tx.discrepancyList.count({ where }),
    await tx.permitInspection.count({ where }),
    await tx.flightAcceptance.count({ where }),
  ];
  return signed.some((count) => count > 0);
}
