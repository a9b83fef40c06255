/**
 * What changed facts do to a release. Sources: 91.7(a) (nobody operates an aircraft that is not airworthy), 91.7(b) (in the
 * air the pilot in command decides); that the same is told once, and that what cannot be judged is no go, is house caution.
 */
import { describe, expect, test } from 'vitest';
import { recallInWords, recallOf, writeUpBehind } from '@/lib/rules/recall';
import type { ReleaseStateName } from '@/lib/rules/release-state';
import { joinLines, type Line } from '@/lib/rules/verdict';
import { trainer, withBroken } from '../fixtures/aircraft';

const line = (effect: Line['effect'], because: string, id = 'd1'): Line => ({
  effect,
  cite: '14cfr91.7(b)',
  because,
  about: { kind: 'discrepancy', id, label: id },
});
const GOOD = line('supports', 'In order.');
const LIMIT = line('limits', 'Not at night.');
const BAR = line('bars', 'Propeller nick.');
const NOTE = line('notes', 'Scratch.');

describe('on the ground', () => {
  test.each([
    ['nothing new', [GOOD], [GOOD], null, []],
    ['a note', [GOOD], [GOOD, NOTE], null, []],
    ['a limit that was known', [GOOD, LIMIT], [LIMIT], null, []],
    ['a limit fewer', [GOOD, LIMIT], [GOOD], null, []],
    ['a new limit', [GOOD], [GOOD, LIMIT], 'warned', [LIMIT]],
    [
      'the same limit about something else',
      [LIMIT],
      [line('limits', 'Not at night.', 'd2')],
      'warned',
      ['d2'],
    ],
    ['no go', [GOOD], [BAR, LIMIT], 'void', [BAR]],
    ['no go, which was told before', [GOOD, BAR], [BAR], 'void', [BAR]],
  ] as const)('%s', (_, known, now, what, lines) => {
    for (const state of ['released', 'accepted'] as const) {
      const recall = recallOf(state, known, joinLines(now));
      expect(recall?.what ?? null).toBe(what);
      expect(recall?.lines.length ?? 0).toBe(lines.length);
      if (what === 'void') expect(recall?.lines).toEqual([BAR]);
    }
  });

  test('what cannot be judged, and what nobody looked at, is void', () => {
    expect(recallOf('released', [GOOD], null)).toMatchObject({ what: 'void', lines: [{ effect: 'bars' }] });
    expect(recallOf('accepted', [GOOD], joinLines([]))).toEqual({ what: 'void', lines: [] });
  });
});

describe('in the air', () => {
  test.each([
    ['nothing new', [GOOD], [GOOD], null],
    ['a new limit', [GOOD], [LIMIT], 'warned'],
    ['no go', [GOOD], [BAR], 'warned'],
    ['no go, which was told before', [GOOD, BAR], [BAR], null],
  ] as const)('%s: never void', (_, known, now, what) => {
    expect(recallOf('airborne', known, joinLines(now))?.what ?? null).toBe(what);
  });

  test('what cannot be judged warns', () => {
    expect(recallOf('airborne', [GOOD], null)?.what).toBe('warned');
  });
});

test.each<ReleaseStateName>(['landed', 'closed', 'void', 'withdrawn'])(
  '%s: nothing more comes of it',
  (state) => {
    expect(recallOf(state, [], joinLines([BAR]))).toBeNull();
    expect(recallOf(state, [], null)).toBeNull();
  },
);

describe('the write-up behind it', () => {
  const before = trainer();
  const now = withBroken(trainer(), 'landing-light');
  const broken = now.discrepancies[0];

  test('is one that was not there at release', () => {
    const id = broken?.id ?? '';
    expect(id).not.toBe('');
    expect(writeUpBehind([line('bars', 'x', id)], now, before)).toBe(id);
    expect(writeUpBehind([line('bars', 'x', id)], now, now)).toBe(id);
  });

  test('is none where the lines are about something else', () => {
    expect(writeUpBehind([line('bars', 'x', 'elsewhere')], now, before)).toBeNull();
    expect(writeUpBehind([], now, before)).toBeNull();
  });
});

test('a void release with nothing to say still says not to depart', () => {
  expect(recallInWords({ what: 'void', lines: [] }, false)).toBe(
    'The answer is no go now. Nobody departs on this release.',
  );
});

test('the words say what to do: on the ground nobody departs, in the air the pilot decides', () => {
  expect(recallInWords({ what: 'void', lines: [BAR, LIMIT] }, false)).toBe(
    'The answer is no go now: Propeller nick. And 1 more. Nobody departs on this release.',
  );
  expect(recallInWords({ what: 'warned', lines: [BAR] }, true)).toContain('14 CFR 91.7(b)');
  expect(recallInWords({ what: 'warned', lines: [LIMIT] }, false)).toContain('before you depart');
});
