import { createHash } from 'node:crypto';
import { fileTypeFromBuffer } from 'file-type';
import sharp from 'sharp';
import { said } from '../words/said';

/** Longest edge kept, pixels: enough to see a nick, small enough for a ramp's signal. */
export const LONGEST_EDGE = 1600;
/** Longest edge of the small one, pixels: a list's picture on a screen of double density. */
export const SMALL_EDGE = 320;
/** Most pixels decoded: a small file must not unpack into gigabytes. */
export const MAX_PIXELS = 80_000_000;
/** Longest one picture may take to decode, seconds. */
const DECODING_LIMIT_S = 20;

/** The kinds taken, by what the first bytes say, as the decoder calls them. The file's name says nothing. */
const TAKEN: ReadonlyMap<string, string> = new Map([
  ['image/jpeg', 'jpeg'],
  ['image/png', 'png'],
  ['image/webp', 'webp'],
]);

export const MIME_KEPT = 'image/jpeg';

/** A picture made anew from its pixels, in both sizes. */
export interface Picture {
  readonly full: Uint8Array;
  readonly small: Uint8Array;
  /** Pixels of `full`. */
  readonly width: number;
  readonly height: number;
  readonly sha256: string;
  readonly smallSha256: string;
}

/** Why these bytes are no picture this server takes, with what to do; null when they begin as one does. */
export async function kindRefusal(bytes: Uint8Array): Promise<string | null> {
  const mime = (await fileTypeFromBuffer(bytes))?.mime;
  if (mime !== undefined && TAKEN.has(mime)) return null;
  if (mime !== undefined && /^image\/(hei[cf]|avif)/.test(mime)) {
    return 'This kind of picture (HEIC or AVIF) cannot be read here. Take it with the camera button, or save it as JPEG first.';
  }
  if (mime === 'image/gif' || mime === 'image/apng') {
    return 'Moving pictures cannot be used. Save one picture of it as JPEG or PNG.';
  }
  return 'This file is not a picture we can read. A JPEG, PNG or WebP works.';
}

/**
 * Decodes a picture and encodes it anew as JPEG, upright, so that only pixels remain: no place, no camera, nothing
 * hidden beside or behind them. Gives words instead where that cannot be: too many pixels, damaged, cut off.
 */
export async function remade(bytes: Uint8Array): Promise<Picture | string> {
  try {
    // Reads the head only; the limit is asked here, so that its refusal can say what it is.
    const head = await sharp(bytes, { limitInputPixels: false, failOn: 'error' }).metadata();
    if (![...TAKEN.values()].includes(head.format)) return DAMAGED;
    if (head.width * head.height > MAX_PIXELS) {
      return `The picture has more than ${MAX_PIXELS / 1_000_000} million pixels. Take it at a lower resolution.`;
    }
    const full = await sharp(bytes, { limitInputPixels: MAX_PIXELS, failOn: 'error' })
      .timeout({ seconds: DECODING_LIMIT_S })
      .autoOrient()
      .resize({ width: LONGEST_EDGE, height: LONGEST_EDGE, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .jpeg({ quality: 80 })
      .toBuffer({ resolveWithObject: true });
    const small = await sharp(full.data)
      .resize({ width: SMALL_EDGE, height: SMALL_EDGE, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 72 })
      .toBuffer();
    return {
      full: full.data,
      small,
      width: full.info.width,
      height: full.info.height,
      sha256: sha256Of(full.data),
      smallSha256: sha256Of(small),
    };
  } catch {
    return DAMAGED;
  }
}

const DAMAGED = said('This picture is damaged or cut off. Take it again, or choose another.');

/** SHA-256 in lower-case hex. */
export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
