import { localDate } from '../rules/months';
import type { CalendarDate } from '../rules/facts';
import { contentHash, toPlain } from './canonical';

/** What a signed row keeps: the content as signed, its hash, the instant, and the date at the base. */
export interface Signature {
  readonly content: object;
  readonly hash: string;
  readonly signedAt: Date;
  readonly signedOn: Date;
}

/**
 * Binds a signature to its content: whoever changes a word of it later breaks the hash. `zone` is the base's, because
 * dates in entries are dates at the base.
 */
export function signatureOver(content: object, now: Date, zone: string): Signature {
  const plain = toPlain(content);
  return {
    content: plain,
    hash: contentHash(plain),
    signedAt: now,
    signedOn: new Date(`${localDate(now.toISOString(), zone)}T00:00:00Z`),
  };
}

/** Today at the base. */
export const dayAtBase = (now: Date, zone: string): CalendarDate => localDate(now.toISOString(), zone);
