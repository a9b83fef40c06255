/**
 * What other programs are told, against what is written for them. Source: issue 5 ("signed webhooks"); docs/api.md is the
 * promise, and says no more and no less than is sent.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { EVENT_NAMES, EVENTS, eventOf } from '@/lib/feeds/events';

test('docs/api.md lists every event, in words and order of the code, and no other', () => {
  const [, table = ''] = readFileSync('docs/api.md', 'utf8').split(/^\| event +\| when +\|$/m);
  const rows = [...table.matchAll(/^\| `([^`]+)` +\| (.+?) +\|$/gm)].map(([, name, says]) => ({
    name,
    says,
  }));
  expect(rows).toEqual(EVENTS.map(({ name, says }) => ({ name, says })));
});

test('no event has the name of another', () => expect(new Set(EVENT_NAMES).size).toBe(EVENT_NAMES.length));

test.each([
  ['flight.recall', { what: 'void' }, 'release.void'],
  ['flight.recall', { what: 'warned' }, 'release.warned'],
  ['flight.release', { what: 'warned' }, 'release.made'],
  ['walkaround.finish', {}, 'walkaround.finished'],
  ['finding.report', {}, 'write-up.opened'],
  ['board.read', {}, null],
  ['toString', {}, null],
])('%s with %j is told as %s', (verb, detail, event) => {
  expect(eventOf(verb, detail)).toBe(event);
  if (event !== null) expect(EVENT_NAMES).toContain(event);
});
