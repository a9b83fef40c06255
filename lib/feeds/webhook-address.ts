import { lookup } from 'node:dns/promises';
import ipaddr from 'ipaddr.js';

/** An address that nothing is sent to, with the reason in plain words. */
export class BadAddress extends Error {}

/** For tests and development: plain http and addresses inside the own network are taken. */
export const insideAllowed = (): boolean => process.env.WHEELCHOCK_WEBHOOK_HTTP === 'yes';

/** Ports of https that a public receiver has; others would let somebody knock at doors of other services. */
const PORTS = new Set(['', '443', '8443']);

const LONGEST_NAME = 253;

/**
 * The address of a webhook as typed, judged by its text alone: https, no name or password in it, a usual port, no host
 * that is an address inside a network. The name is resolved, and judged again, at every sending.
 */
export function webhookUrl(text: string): URL {
  if (!URL.canParse(text)) throw new BadAddress('This is no address. It begins with https://');
  const url = new URL(text);
  const inside = insideAllowed();
  if (url.protocol !== 'https:' && !(inside && url.protocol === 'http:')) {
    throw new BadAddress('The address must begin with https://');
  }
  if (url.username !== '' || url.password !== '') {
    throw new BadAddress('Leave name and password out of the address; the signature tells who sends.');
  }
  if (!inside && !PORTS.has(url.port)) throw new BadAddress('Only the ports 443 and 8443 are used.');
  const host = hostOf(url);
  if (host.length > LONGEST_NAME) throw new BadAddress('The name in the address is too long.');
  if (ipaddr.isValid(host) && !inside && !isPublic(host)) throw notPublic(host);
  return url;
}

/** Where to connect: resolved once, every address judged, and the first one used, so that no second answer is asked for. */
export async function publicAddressOf(url: URL): Promise<{ address: string; family: 4 | 6 }> {
  const host = hostOf(url);
  const found = await lookup(host, { all: true, verbatim: true }).catch(() => {
    // No bad address: the name may be known again in an hour.
    throw new Error(`The name ${host} is not known.`);
  });
  const [first] = found;
  if (!first) throw new Error(`The name ${host} is not known.`);
  if (!insideAllowed()) {
    const bad = found.find(({ address }) => !isPublic(address));
    if (bad) throw notPublic(host);
  }
  return { address: first.address, family: first.family === 6 ? 6 : 4 };
}

/** The host without the brackets of an IPv6 address. The URL parser has already turned decimal and hex forms into dots. */
const hostOf = (url: URL): string => url.hostname.replace(/^\[|\]$/g, '');

/** All of IPv6 that is given out for use on the internet (RFC 4291, section 2.4; IANA's registry). */
const GLOBAL_V6 = ipaddr.parseCIDR('2000::/3');

/** Whether an address belongs to the public internet: one machine, and none of the ranges set aside. */
export function isPublic(address: string): boolean {
  if (!ipaddr.isValid(address)) return false;
  // An IPv4 address dressed as IPv6 is judged as what it is.
  const parsed = ipaddr.process(address);
  if (parsed.range() !== 'unicast') return false;
  return parsed.kind() === 'ipv4' || parsed.match(GLOBAL_V6);
}

const notPublic = (host: string): BadAddress =>
  new BadAddress(`${host} is inside a network, and not on the public internet. Nothing is sent there.`);
