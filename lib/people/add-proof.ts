import { z } from 'zod';
import type { ActorRef } from '../access/actor';
import { requestId } from '../access/request-id';
import { command, query, type CallOptions } from '../access/service';
import type { Tx } from '../db/client';
import { log } from '../log';
import { photoStore } from '../photos/chosen-store';
import { sha256Of } from '../photos/picture';
import { storedAs } from '../photos/store';
import { PROBLEMS, Refusal, type Problem, type Result } from '../problems';
import { proofFile, proofKey, PROOF_MAX_BYTES, type ProofFile } from './proof-file';
import { filled, said } from '../words/said';

/** Most proofs of one certificate or letter. */
const PROOFS_EACH = 8;

export interface ProofUpload {
  /** Number of the request, and of the proof: sent again, it is kept once. */
  readonly requestId: unknown;
  /** What it proves: a certificate, or the letter of authorization of a minimum equipment list. */
  readonly about: unknown;
  readonly aboutId: unknown;
  readonly bytes: Uint8Array;
}

const upload = z.object({
  requestId,
  about: z.enum(['certificate', 'mel']),
  aboutId: z.uuid(),
  uploadSha256: z.string().length(64),
});

/** Asked before the file is read: the work is only done for one that may be added. */
const mayBeAdded = query({
  verb: 'proof.add',
  input: upload,
  async run({ tx, operatorId }, input): Promise<{ operatorId: string; answeredBefore: boolean }> {
    const earlier = await tx.request.findUnique({ where: { id: input.requestId }, select: { id: true } });
    if (!earlier) await requireRoom(tx, operatorId, input);
    return { operatorId, answeredBefore: earlier !== null };
  },
});

const addRow = command({
  verb: 'proof.add',
  input: upload.extend({
    /** Null only for a request that was answered before. */
    kept: z
      .object({
        storedAs: z.string(),
        mime: z.string(),
        bytes: z.int().positive(),
        sha256: z.string().length(64),
      })
      .nullable(),
  }),
  counts: ({ kept: _made, ...sent }) => sent,
  async run({ tx, operatorId, actor, now, requestId: id }, { about, aboutId, uploadSha256, kept, ...rest }) {
    if (!kept) throw new Refusal('try_again');
    const fileName = await requireRoom(tx, operatorId, { about, aboutId, uploadSha256, ...rest });
    await tx.proof.create({
      data: {
        ...kept,
        id,
        operatorId,
        certificateId: about === 'certificate' ? aboutId : null,
        melId: about === 'mel' ? aboutId : null,
        fileName: `${fileName}.${kept.mime === 'application/pdf' ? 'pdf' : 'jpg'}`,
        addedById: actor.personId,
        addedAt: now,
      },
    });
    const detail = { proofId: id, sha256: kept.sha256, uploadSha256 };
    return { value: { proofId: id }, audit: { subjectKind: about, subjectId: aboutId, detail } };
  },
});

/**
 * Takes a proof. The bytes are in the store before the row is, as with photos: bytes without a row do no harm, a row
 * without its bytes would. The file's own name is not kept: it may hold a person's, and the row is never erased. Refuses
 * what is too large, and what is no PDF, JPEG or PNG by its bytes.
 */
export async function addProof(
  ref: ActorRef | null,
  { requestId: id, about, aboutId, bytes }: ProofUpload,
  options: CallOptions = {},
): Promise<Result<{ proofId: string }>> {
  if (bytes.byteLength > PROOF_MAX_BYTES) return refused('too_large', TOO_LARGE);
  const message = { requestId: id, about, aboutId, uploadSha256: sha256Of(bytes) };
  const allowed = await mayBeAdded(ref, message, options);
  if (!allowed.ok) return allowed;
  if (allowed.value.answeredBefore) return addRow(ref, { ...message, kept: null }, options);
  const file = await proofFile(bytes);
  if (typeof file === 'string') return refused('invalid', file);
  const stored = storedAs(allowed.value.operatorId, String(id), file.sha256);
  if (!(await isKept(stored, file)))
    return { ok: false, problem: { code: 'try_again', say: PROBLEMS.try_again.say } };
  const kept = { storedAs: stored, mime: file.mime, bytes: file.bytes.byteLength, sha256: file.sha256 };
  return addRow(ref, { ...message, kept }, options);
}

const TOO_LARGE = `A proof can have ${PROOF_MAX_BYTES / 1_000_000} MB at most.`;

function refused(code: Problem['code'], say: string): Result<never> {
  return { ok: false, problem: { code, say: said('The file cannot be used.'), fields: { file: [say] } } };
}

/** Room for one more proof of something that is here; gives a name for the file, of our own words. */
async function requireRoom(
  tx: Tx,
  operatorId: string,
  { about, aboutId }: z.output<typeof upload>,
): Promise<string> {
  const where = { operatorId_id: { operatorId, id: aboutId } };
  const include = { _count: { select: { proofs: true } } };
  const certificate = about === 'certificate' ? await tx.certificate.findUnique({ where, include }) : null;
  const mel = about === 'mel' ? await tx.mel.findUnique({ where, include }) : null;
  const subject = certificate ?? mel;
  if (!subject) throw new Refusal('not_found', { say: said('There is no such certificate or letter here.') });
  if (subject._count.proofs >= PROOFS_EACH) {
    throw new Refusal('conflict', {
      say: filled(said('{proofs_each} proofs are kept of one certificate or letter.'), {
        proofs_each: PROOFS_EACH,
      }),
    });
  }
  return certificate ? `${certificate.kind}-certificate` : 'letter-of-authorization';
}

/** Brings it to the store. False when it would not take it; why is in the log. */
async function isKept(stored: string, file: ProofFile): Promise<boolean> {
  try {
    await photoStore().put(proofKey(stored, file.mime), file.bytes, file.mime);
    return true;
  } catch (error) {
    log.error('photo not stored', error, { key: stored });
    return false;
  }
}
