/**
 * Headers that next.config.ts sets over what a route says itself: of several entries of one header, the last whose path
 * matches counts (Next.js, `headers`, "Header Overriding Behavior"). Paths are matched by Next's own matcher.
 */
import { getPathMatch } from 'next/dist/shared/lib/router/utils/path-match';
import { expect, test } from 'vitest';
import config from '../../next.config';

async function headerAt(path: string, name: string): Promise<string | undefined> {
  const rules = (await config.headers?.()) ?? [];
  return rules
    .filter(({ source }) => getPathMatch(source, { strict: true })(path) !== false)
    .flatMap(({ headers }) => headers)
    .findLast(({ key }) => key === name)?.value;
}

// W3C Referrer Policy, section 3.1 and 3.3: "no-referrer" sends none, "same-origin" none to other sites.
test.each([
  ['/api/calendar/wck_some-key/maintenance-due.ics', 'no-referrer'],
  ['/desk', 'same-origin'],
  ['/api/v1/fleet', 'same-origin'],
])('the address %s is told on as %s', async (path, policy) => {
  expect(await headerAt(path, 'Referrer-Policy')).toBe(policy);
});

test('a calendar keeps every other header of the house', async () => {
  expect(await headerAt('/api/calendar/k/maintenance-due.ics', 'X-Content-Type-Options')).toBe('nosniff');
});
