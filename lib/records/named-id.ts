import { createHash } from 'node:crypto';

/** A UUID made from a name (version 5 of RFC 9562, without its namespaces): the same name gives the same id. */
export function namedId(name: string): string {
  const hex = createHash('sha1').update(name).digest('hex');
  const variant = ((parseInt(hex.slice(16, 18), 16) & 0x3f) | 0x80).toString(16);
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `5${hex.slice(13, 16)}`,
    `${variant}${hex.slice(18, 20)}`,
    hex.slice(20, 32),
  ].join('-');
}
