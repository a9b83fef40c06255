/** Where the bytes of photos and proofs lie. Nothing in it is ever changed: each has its own key for good. */
export interface PhotoStore {
  /** Keeps the bytes; when it returns they are safe. Throws when they are not. */
  put(key: string, bytes: Uint8Array, mime: string): Promise<void>;
  /** The bytes, or null when nothing lies under this key. Throws when that cannot be told. */
  get(key: string): Promise<Uint8Array | null>;
  /** Takes the bytes away for good; what is not there is no trouble. For proofs of erased persons only: photos stay. */
  remove(key: string): Promise<void>;
}

/** Both sizes of a photo are kept: the whole one and the small one of lists. */
export type PhotoSize = 'full' | 'small';

/**
 * What a photo is stored as. The picture's own sum is part of it, so that two uploads under one number, at the same
 * moment or one after a crash, can never write over each other's bytes.
 */
export const storedAs = (operatorId: string, photoId: string, sha256: string): string =>
  `${operatorId}/${photoId}/${sha256.slice(0, 16)}`;

/** The key of one size of it. */
export const keyOf = (stored: string, size: PhotoSize): string => `${stored}/${size}.jpg`;

const KEY = /^(?:[0-9a-z-]{1,64}\/){1,4}[0-9a-z-]{1,64}\.(?:jpg|pdf)$/;

/** Throws unless the key is one of ours: small letters, digits and dashes between slashes, so no way out of a folder. */
export function requireKey(key: string): void {
  if (!KEY.test(key)) throw new RangeError('This is no key of a photo.');
}
