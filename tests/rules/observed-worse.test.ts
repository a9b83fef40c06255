/**
 * When an observation may not rest on the write-up it is about. Source: our design (issue 3, "adds an observation to it
 * instead of a twin"; an observation must not hide that something got worse). That undecided grounds: 14 CFR 91.7(a).
 * Limits are invented for one aircraft.
 */
import { describe, expect, test } from 'vitest';
import { whyAnew, type StandingWriteUp } from '@/lib/rules/findings/observed-worse';
import type { StoredLimit } from '@/lib/rules/findings/measured-against-limits';

const limit = (facts: Partial<StoredLimit>): StoredLimit => ({
  measurement: 'propeller-nick-depth',
  unit: 'thousandth-inch',
  min: null,
  max: 31,
  source: 'Invented propeller manual, chapter 5',
  sourceDate: '2020-05-01',
  ...facts,
});
const LIMITS = [limit({}), limit({ measurement: 'brake-pad-thickness', min: 100, max: null })];
const nick = (facts: Partial<StandingWriteUp> = {}): StandingWriteUp => ({
  number: 'W-0007',
  state: 'open',
  severity: 'watch',
  findingKey: 'propeller-nick',
  ...facts,
});
const depth = (thousandths: number) => ({ 'propeller-nick-depth': thousandths });

test('a closed write-up takes no observation, measured or not', () => {
  for (const measured of [{}, depth(10)])
    expect(whyAnew(nick({ state: 'closed' }), measured, LIMITS)).toBe(
      'W-0007 is closed. The same trouble again is a new write-up.',
    );
});

test('without a measurement it rests on whatever is open', () => {
  for (const severity of ['note', 'watch', 'limiting', 'grounding', null] as const)
    for (const state of ['open', 'deferred'] as const)
      expect(whyAnew(nick({ severity, state }), {}, LIMITS)).toBeNull();
});

describe('measured against the stored limit: at most 0.031 in, at least 0.100 in', () => {
  test.each([
    [30, null],
    [31, null],
    [32, 'More than W-0007 stands for. Depth of the nick: 0.032 in is over the most allowed, 0.031 in'],
  ])('a watch, nick of %s thousandths', (thousandths, why) => {
    const said = whyAnew(nick(), depth(thousandths), LIMITS);
    if (why === null) expect(said).toBeNull();
    else expect(said).toContain(why);
  });

  test.each([
    [99, true],
    [100, false],
    [101, false],
  ])('deferred, pad of %s thousandths', (thousandths, anew) => {
    const pads = nick({ findingKey: 'brake-pads-worn', state: 'deferred', severity: 'limiting' });
    expect(whyAnew(pads, { 'brake-pad-thickness': thousandths }, LIMITS) !== null).toBe(anew);
  });

  test.each([
    [31, false],
    [32, true],
  ])('outside the catalogue a stored limit judges too: %s thousandths', (thousandths, anew) => {
    expect(whyAnew(nick({ findingKey: null, severity: 'note' }), depth(thousandths), LIMITS) !== null).toBe(
      anew,
    );
  });
});

test('what grounds already cannot be outdone; undecided grounds', () => {
  for (const severity of ['grounding', null] as const)
    expect(whyAnew(nick({ severity }), depth(500), LIMITS)).toBeNull();
});

test('a deferral that would let it fly is outdone, whatever the severity under it', () => {
  for (const severity of ['grounding', 'limiting', null] as const)
    expect(whyAnew(nick({ state: 'deferred', severity }), depth(500), LIMITS)).not.toBeNull();
});

test('a value without a limit, or with one that has no source, is undecided and opens a new one', () => {
  expect(whyAnew(nick(), depth(1), [])).toContain('Not known: a limit with its source for depth of the nick');
  expect(whyAnew(nick(), depth(1), [limit({ source: ' ' })])).toContain('Not known');
});

test('a value not taken this time is nothing worse', () => {
  // The finding needs the width too.
  expect(whyAnew(nick(), depth(10), LIMITS)).toBeNull();
});

test('what is only described, or not of this finding, judges nothing without a limit', () => {
  expect(whyAnew(nick(), { 'tyre-slip': 900 }, LIMITS)).toBeNull();
});

test('measured within a limit is a watch, and a watch is more than a note', () => {
  expect(whyAnew(nick({ severity: 'note' }), depth(10), LIMITS)).toContain('A mechanic has to find it');
  expect(whyAnew(nick({ severity: 'limiting' }), depth(10), LIMITS)).toBeNull();
});
