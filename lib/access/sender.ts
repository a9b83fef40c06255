import ipaddr from 'ipaddr.js';
import { z } from 'zod';

/** Parts of an IPv6 address that one line of one household or one server gets as a whole (RFC 6177: a /64 at the least). */
const OF_ONE_LINE = 4;

const setting = z.coerce.number().int().min(0).max(10);

/**
 * How many proxies of ours stand before the server (WHEELCHOCK_PROXIES). Not set or 0: who asks cannot be told, because what
 * X-Forwarded-For says is then anybody's. Throws, in plain words, at what is no number from 0 to 10.
 */
export function proxiesBefore(given: string | undefined = process.env.WHEELCHOCK_PROXIES): number {
  const read = setting.safeParse(given?.trim() || '0');
  if (!read.success)
    throw new Error('WHEELCHOCK_PROXIES is the number of proxies before the server: 0 to 10.');
  return read.data;
}

/**
 * Where a request comes from, as far as it can be relied on: each proxy adds the address it was asked from at the end of
 * X-Forwarded-For, so the one our outermost proxy saw is that many from the end. What stands before it the sender wrote.
 * Of IPv6 the network of one line, because its owner has all addresses in it. Null when nothing reliable is said.
 */
export function senderOf(forwardedFor: string | null, proxies: number): string | null {
  if (proxies < 1) return null;
  const seen = forwardedFor?.split(',').at(-proxies)?.trim() ?? '';
  if (!ipaddr.isValid(seen)) return null;
  const address = ipaddr.process(seen);
  return address instanceof ipaddr.IPv6
    ? address.parts
        .slice(0, OF_ONE_LINE)
        .map((part) => part.toString(16))
        .join(':')
    : address.toString();
}
