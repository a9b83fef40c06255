import { z } from 'zod';
import type { ActorRef } from '../access/actor';
import { requestId } from '../access/request-id';
import { command, query, type CallOptions } from '../access/service';
import type { Tx } from '../db/client';
import { log } from '../log';
import { PROBLEMS, Refusal, type Problem, type Result } from '../problems';
import { photoStore } from './chosen-store';
import { photoMarks } from './marks';
import { kindRefusal, MIME_KEPT, remade, sha256Of, type Picture } from './picture';
import { keyOf, storedAs } from './store';
import { filled, said } from '../words/said';

/** Largest upload taken, bytes. A phone's photo is 3 to 6 MB. */
export const PHOTO_MAX_BYTES = 12_000_000;
const PHOTOS_PER_FINDING = 8;

/** A photo as it comes. */
export interface PhotoUpload {
  /** Number of the request, and of the photo: sent again, it is kept once. */
  readonly requestId: string;
  readonly findingId: string;
  readonly bytes: Uint8Array;
  /** What was drawn on it, see marks.ts; none when left out. */
  readonly marks?: unknown;
  /** The sender's own sum of the bytes, hex, where it made one. */
  readonly sha256?: unknown;
}

const upload = z.object({
  requestId,
  findingId: z.uuid(),
  uploadSha256: z.string().length(64),
  marks: photoMarks,
});

/** Asked before the picture is decoded: the work is only done for a photo that may be added. */
const mayBeAdded = query({
  verb: 'photo.add',
  input: upload,
  async run({ tx, operatorId, actor }, input): Promise<{ operatorId: string; answeredBefore: boolean }> {
    const earlier = await tx.request.findUnique({ where: { id: input.requestId }, select: { id: true } });
    if (!earlier) await requireRoom(tx, operatorId, actor.personId, input.findingId);
    return { operatorId, answeredBefore: earlier !== null };
  },
});

const sha256 = z.string().length(64);

const addRow = command({
  verb: 'photo.add',
  input: upload.extend({
    /** Null only for a request that was answered before. */
    kept: z
      .object({
        storedAs: z.string(),
        width: z.int().positive(),
        height: z.int().positive(),
        sha256,
        smallSha256: sha256,
      })
      .nullable(),
  }),
  counts: ({ kept: _made, ...sent }) => sent,
  async run({ tx, operatorId, actor, now, requestId: id }, { findingId, uploadSha256, marks, kept }) {
    if (!kept) throw new Refusal('try_again');
    await requireRoom(tx, operatorId, actor.personId, findingId);
    await tx.photo.create({
      data: {
        ...kept,
        id,
        operatorId,
        findingId,
        mime: MIME_KEPT,
        marks: marks.map(({ kind, points }) => ({ kind, points })),
        takenById: actor.personId,
        receivedAt: now,
      },
    });
    const detail = { photoId: id, sha256: kept.sha256, uploadSha256, marks: marks.length };
    return { value: { photoId: id }, audit: { subjectKind: 'finding', subjectId: findingId, detail } };
  },
});

/**
 * Takes a photo for one's own finding or observation. The picture is made anew from its pixels (see picture.ts) and
 * both sizes are in the store before the row is: bytes without a row do no harm, a row without its bytes would.
 *
 * Asks for it again (try_again) when it arrived other than it was sent. Refuses what is too large or no picture; a finding of somebody else's (not_found); a ninth photo;
 * another picture, or other marks, under the number of an earlier one (conflict).
 */
export async function addPhoto(
  ref: ActorRef | null,
  { requestId: id, findingId, bytes, marks = [], sha256: sent }: PhotoUpload,
  options: CallOptions = {},
): Promise<Result<{ photoId: string }>> {
  if (bytes.byteLength > PHOTO_MAX_BYTES) return refused('too_large', TOO_LARGE);
  const uploadSha256 = sha256Of(bytes);
  if (sent !== undefined && sent !== null && sent !== uploadSha256) {
    // The phone sends again by itself what it is asked for again; a refusal would wait for a person.
    return isSum(sent) ? refused('try_again', CUT_OFF) : refused('invalid', NO_SUM);
  }
  const wrongKind = await kindRefusal(bytes);
  if (wrongKind) return refused('invalid', wrongKind);

  const message = { requestId: id, findingId, uploadSha256, marks };
  const allowed = await mayBeAdded(ref, message, options);
  if (!allowed.ok) return allowed;
  if (allowed.value.answeredBefore) return addRow(ref, { ...message, kept: null }, options);

  const picture = await remade(bytes);
  if (typeof picture === 'string') return refused('invalid', picture);
  const stored = storedAs(allowed.value.operatorId, id, picture.sha256);
  if (!(await isKept(stored, picture))) return refused('try_again', PROBLEMS.try_again.say);
  const { width, height, sha256, smallSha256 } = picture;
  return addRow(ref, { ...message, kept: { storedAs: stored, width, height, sha256, smallSha256 } }, options);
}

/** What the limit of a route that takes photos says as well. */
const TOO_LARGE = `A photo can have ${PHOTO_MAX_BYTES / 1_000_000} MB at most. Take it at a lower resolution.`;
const CUT_OFF = said('The photo arrived cut off or changed on the way. Send it again.');
const NO_SUM = said('The sum sent with the photo is none: 64 small hex digits are needed.');

const isSum = (sent: unknown): boolean => typeof sent === 'string' && /^[0-9a-f]{64}$/.test(sent);

function refused(code: Problem['code'], say: string): Result<never> {
  if (code === 'try_again') return { ok: false, problem: { code, say } };
  const problem: Problem = { code, say: said('The photo cannot be used.'), fields: { photo: [say] } };
  return { ok: false, problem };
}

/** One's own finding, with room for one more photo. */
async function requireRoom(tx: Tx, operatorId: string, personId: string, findingId: string): Promise<void> {
  const finding = await tx.finding.findUnique({
    where: { operatorId_id: { operatorId, id: findingId } },
    include: { _count: { select: { photos: true } } },
  });
  if (!finding || finding.personId !== personId) {
    throw new Refusal('not_found', { say: said('There is no such finding of yours.') });
  }
  if (finding._count.photos >= PHOTOS_PER_FINDING) {
    throw new Refusal('conflict', {
      say: filled(said('One finding takes {photos_per_finding} photos.'), {
        photos_per_finding: PHOTOS_PER_FINDING,
      }),
    });
  }
}

/** Brings both sizes to the store. False when it would not take them; why is in the log. */
async function isKept(stored: string, picture: Picture): Promise<boolean> {
  try {
    const store = photoStore();
    await Promise.all([
      store.put(keyOf(stored, 'full'), picture.full, MIME_KEPT),
      store.put(keyOf(stored, 'small'), picture.small, MIME_KEPT),
    ]);
    return true;
  } catch (error) {
    log.error('photo not stored', error, { key: stored });
    return false;
  }
}
