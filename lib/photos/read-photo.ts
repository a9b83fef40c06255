import { z } from 'zod';
import type { ActorRef } from '../access/actor';
import { query, type CallOptions } from '../access/service';
import { log } from '../log';
import { PROBLEMS, Refusal, type Result } from '../problems';
import { photoStore } from './chosen-store';
import { sha256Of } from './picture';
import { keyOf } from './store';
import { PHOTO_VIEW, photoView, type PhotoView } from './view';
import { said } from '../words/said';

const NONE_HERE = said('There is no such photo here.');

const wanted = z.object({ photoId: z.uuid(), size: z.enum(['full', 'small']).default('full') });

const readRow = query({
  verb: 'photo.read',
  input: wanted,
  async run({ tx, operatorId }, { photoId, size }) {
    const row = await tx.photo.findUnique({ where: { operatorId_id: { operatorId, id: photoId } } });
    if (!row) throw new Refusal('not_found', { say: NONE_HERE });
    const { mime, bytes, storedAs: stored } = row;
    // Photos older than the store have one size only.
    const sha256 = size === 'small' && row.smallSha256 ? row.smallSha256 : row.sha256;
    return { mime, sha256, bytes, key: stored === null ? null : keyOf(stored, size) };
  },
});

/** A photo's bytes, or null for them when the reader holds them already. */
export interface PhotoBytes {
  readonly mime: string;
  /** Sum of the size asked for, hex. */
  readonly sha256: string;
  readonly bytes: Uint8Array | null;
}

/**
 * A stored photo of this operator's. `holds` is asked, once it is known that the reader may see the photo, whether the
 * reader has these bytes already. Bytes that are gone from the store, or are not what was stored, are not_found with a
 * line in the log; a store that does not answer is try_again.
 */
export async function readPhoto(
  ref: ActorRef | null,
  raw: z.input<typeof wanted> | unknown,
  options: CallOptions & { readonly holds?: (sha256: string) => boolean } = {},
): Promise<Result<PhotoBytes>> {
  const row = await readRow(ref, raw, options);
  if (!row.ok) return row;
  const { mime, sha256, bytes, key } = row.value;
  if (options.holds?.(sha256)) return { ok: true, value: { mime, sha256, bytes: null } };
  if (key === null) return bytes ? { ok: true, value: { mime, sha256, bytes } } : lost(sha256, 'no-place');
  try {
    const stored = await photoStore().get(key);
    if (!stored) return lost(key, 'not-in-the-store');
    if (sha256Of(stored) !== sha256) return lost(key, 'not-the-bytes-that-were-stored');
    return { ok: true, value: { mime, sha256, bytes: stored } };
  } catch (error) {
    log.error('photo store does not answer', error, { key });
    return { ok: false, problem: { code: 'try_again', say: PROBLEMS.try_again.say } };
  }
}

function lost(key: string, why: string): Result<never> {
  log.warn('photo lost', { key, why });
  return { ok: false, problem: { code: 'not_found', say: NONE_HERE } };
}

/** A photo with what it was taken for, for the page that shows it large. */
export interface PhotoPage {
  readonly photo: PhotoView;
  /** The write-up it belongs to. */
  readonly writeUp: { readonly id: string; readonly number: string; readonly title: string } | null;
}

/** What stands beside a photo of this operator's. */
export const readPhotoPage = query({
  verb: 'photo.read',
  input: z.object({ photoId: z.uuid() }),
  async run({ tx, operatorId }, { photoId }): Promise<PhotoPage> {
    const writeUp = { select: { id: true, number: true, title: true } };
    const row = await tx.photo.findUnique({
      where: { operatorId_id: { operatorId, id: photoId } },
      select: { ...PHOTO_VIEW, finding: { select: { discrepancy: writeUp, related: writeUp } } },
    });
    if (!row) throw new Refusal('not_found', { say: NONE_HERE });
    return { photo: photoView(row), writeUp: row.finding.discrepancy ?? row.finding.related };
  },
});
