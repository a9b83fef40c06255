import { z } from 'zod';
import type { ActorRef } from '../access/actor';
import { query, type CallOptions } from '../access/service';
import { log } from '../log';
import { photoStore } from '../photos/chosen-store';
import { sha256Of } from '../photos/picture';
import { PROBLEMS, Refusal, type Result } from '../problems';
import { proofKey } from './proof-file';
import { said } from '../words/said';

const NONE_HERE = said('There is no such proof here.');

const readRow = query({
  verb: 'proof.read',
  input: z.object({ proofId: z.uuid() }),
  async run({ tx, operatorId, actor }, { proofId }) {
    const row = await tx.proof.findUnique({
      where: { operatorId_id: { operatorId, id: proofId } },
      include: { certificate: { select: { personId: true, person: { select: { erasedAt: true } } } } },
    });
    if (!row) throw new Refusal('not_found', { say: NONE_HERE });
    // A letter of authorization is the aircraft's and has to be aboard: everybody may see it.
    const isOwn = row.certificate === null || row.certificate.personId === actor.personId;
    if (!isOwn && !actor.roles.includes('manager')) {
      throw new Refusal('not_allowed', { say: said('Only managers and the person themselves see this.') });
    }
    if (row.certificate?.person.erasedAt)
      throw new Refusal('not_found', { say: said('This proof was erased.') });
    const { fileName, mime, sha256, storedAs } = row;
    return { fileName, mime, sha256, key: proofKey(storedAs, mime) };
  },
});

export interface ProofBytes {
  readonly fileName: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

/** A proof's bytes, for managers and whoever it is about. What is not as it was stored is `not_found`, and in the log. */
export async function readProof(
  ref: ActorRef | null,
  raw: unknown,
  options: CallOptions = {},
): Promise<Result<ProofBytes>> {
  const row = await readRow(ref, raw, options);
  if (!row.ok) return row;
  const { fileName, mime, sha256, key } = row.value;
  try {
    const bytes = await photoStore().get(key);
    if (bytes && sha256Of(bytes) === sha256) return { ok: true, value: { fileName, mime, bytes } };
    log.error('photo lost', new Error('A proof is not as it was stored.'), {
      key: key.replace(/\.\w+$/, ''),
    });
    return { ok: false, problem: { code: 'not_found', say: NONE_HERE } };
  } catch (error) {
    log.error('photo store does not answer', error, {});
    return { ok: false, problem: { code: 'try_again', say: PROBLEMS.try_again.say } };
  }
}
