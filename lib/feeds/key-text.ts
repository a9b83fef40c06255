import { createHash, randomBytes } from 'node:crypto';

const MARK = 'wck_';
const RANDOM_BYTES = 32;
/** Of the key itself that is kept, to tell one from another: 48 of its 256 bits. */
const PREFIX_LENGTH = MARK.length + 8;

/** A key as its holder has it: `wck_` and 32 random bytes in base64url. */
const KEY = /^wck_[A-Za-z0-9_-]{43}$/;

export const newKeyText = (): string => MARK + randomBytes(RANDOM_BYTES).toString('base64url');

export const looksLikeKey = (text: string): boolean => KEY.test(text);

export const keyPrefix = (key: string): string => key.slice(0, PREFIX_LENGTH);

/** All that is kept of a key. It has 256 random bits, so that no salt and no slow hash is needed. */
export const keySha256 = (key: string): string => createHash('sha256').update(key).digest('hex');
