import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** The canonical text of a JSON value (RFC 8785), so that the same content always has the same bytes. */
export function canonicalText(value: unknown): string {
  const text = canonicalize(toPlain(value));
  if (text === undefined) throw new RangeError('This value has no JSON form and cannot be signed.');
  return text;
}

/** SHA-256 over the canonical text, in lower-case hex. */
export function contentHash(value: unknown): string {
  return createHash('sha256').update(canonicalText(value), 'utf8').digest('hex');
}

/** Dates become ISO text and undefined members vanish, as they do when PostgreSQL hands the JSON back. */
export function toPlain<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T;
}
