import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { z } from 'zod';
import { command } from '../access/service';
import type { ActorRef } from '../access/actor';
import { requestId } from '../access/request-id';
import { Refusal, type Result } from '../problems';

/** Largest upload taken, bytes. A phone's photo is 3 to 6 MB. */
export const PHOTO_MAX_BYTES = 12_000_000;
/** Longest edge kept, pixels: enough to see a nick, small enough for a ramp's signal. */
const LONGEST_EDGE = 1600;
/** Most pixels decoded: a small file must not unpack into gigabytes. */
const MAX_PIXELS = 80_000_000;
const PHOTOS_PER_FINDING = 8;

const storedPhoto = z.object({
  requestId,
  findingId: z.uuid(),
  uploadSha256: z.string().length(64),
  width: z.int().positive(),
  height: z.int().positive(),
  jpegBase64: z.string(),
});

const storePhoto = command({
  verb: 'photo.add',
  input: storedPhoto,
  async run({ tx, operatorId, actor, now, requestId: id }, input) {
    const finding = await tx.finding.findUnique({
      where: { operatorId_id: { operatorId, id: input.findingId } },
      include: { _count: { select: { photos: true } } },
    });
    if (!finding || finding.personId !== actor.personId) {
      throw new Refusal('not_found', { say: 'There is no such finding of yours.' });
    }
    if (finding._count.photos >= PHOTOS_PER_FINDING) {
      throw new Refusal('conflict', { say: `One finding takes ${PHOTOS_PER_FINDING} photos.` });
    }
    const bytes = Uint8Array.from(Buffer.from(input.jpegBase64, 'base64'));
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    await tx.photo.create({
      data: {
        id,
        operatorId,
        findingId: finding.id,
        mime: 'image/jpeg',
        width: input.width,
        height: input.height,
        sha256,
        bytes,
        takenById: actor.personId,
        receivedAt: now,
      },
    });
    return {
      value: { photoId: id },
      audit: { subjectKind: 'finding', subjectId: finding.id, detail: { photoId: id, sha256 } },
    };
  },
});

/**
 * Takes a photo for one's own finding. It is decoded and encoded anew, so that only pixels remain: no place, no
 * camera, nothing hidden behind the picture. Refuses what is too large or is no picture.
 */
export async function addPhoto(
  ref: ActorRef | null,
  upload: { readonly requestId: string; readonly findingId: string; readonly bytes: Uint8Array },
): Promise<Result<{ photoId: string }>> {
  if (upload.bytes.byteLength > PHOTO_MAX_BYTES) {
    return { ok: false, problem: { code: 'too_large', say: 'A photo can have 12 MB at most.' } };
  }
  let jpeg: { data: Buffer; info: { width: number; height: number } };
  try {
    jpeg = await sharp(upload.bytes, { limitInputPixels: MAX_PIXELS, failOn: 'error' })
      .rotate()
      .resize({ width: LONGEST_EDGE, height: LONGEST_EDGE, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 80 })
      .toBuffer({ resolveWithObject: true });
  } catch {
    const fields = {
      photo: ['This file is not a picture we can read. A JPEG, PNG or WebP works.'],
    };
    return { ok: false, problem: { code: 'invalid', say: 'The photo cannot be used.', fields } };
  }
  return storePhoto(ref, {
    requestId: upload.requestId,
    findingId: upload.findingId,
    uploadSha256: createHash('sha256').update(upload.bytes).digest('hex'),
    width: jpeg.info.width,
    height: jpeg.info.height,
    jpegBase64: jpeg.data.toString('base64'),
  });
}
