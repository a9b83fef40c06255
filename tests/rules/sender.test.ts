/**
 * Who is asking, from X-Forwarded-For. Sources: MDN, "X-Forwarded-For", "Trusted proxy count" (each proxy appends what it was asked
 * from; the address to rely on is that many from the right, and everything left of it may be made up); RFC 6177 (a site gets a /64 at
 * the least); addresses of examples by RFC 5737 and RFC 3849.
 */
import { describe, expect, test } from 'vitest';
import { proxiesBefore, senderOf } from '@/lib/access/sender';

describe('with proxies of ours before the server', () => {
  test.each([
    ['203.0.113.7', 1, '203.0.113.7'],
    ['198.51.100.1, 203.0.113.7', 1, '203.0.113.7'],
    ['198.51.100.1,203.0.113.7,192.0.2.9', 2, '203.0.113.7'],
    ['203.0.113.7, 192.0.2.9, 192.0.2.10', 3, '203.0.113.7'],
    // Dressed as IPv6 it is the same sender.
    ['::ffff:203.0.113.7', 1, '203.0.113.7'],
    ['2001:db8:1:2:3:4:5:6', 1, '2001:db8:1:2'],
    ['2001:DB8:1:2::ffff', 1, '2001:db8:1:2'],
    ['2001:db8:1:3::ffff', 1, '2001:db8:1:3'],
  ])('%s behind %i is %s', (header, proxies, sender) => expect(senderOf(header, proxies)).toBe(sender));

  test.each([
    ['203.0.113.7', 2],
    [null, 1],
    ['', 1],
    ['unknown', 1],
    ['203.0.113.7, ', 1],
    ['203.0.113.7:4711', 1],
  ])('%s behind %i cannot be told', (header, proxies) => expect(senderOf(header, proxies)).toBeNull());
});

test('without a proxy the header is anybody’s, and says nothing', () =>
  expect(senderOf('203.0.113.7', 0)).toBeNull());

describe('WHEELCHOCK_PROXIES', () => {
  test.each([
    [undefined, 0],
    ['', 0],
    ['0', 0],
    [' 1 ', 1],
    ['10', 10],
  ])('%j is %i', (given, proxies) => expect(proxiesBefore(given)).toBe(proxies));

  test.each(['-1', '11', '1.5', 'yes', 'Infinity'])('%s is refused in plain words', (given) =>
    expect(() => proxiesBefore(given)).toThrow('0 to 10'),
  );
});
