/**
 * Where the course of a finding comes from, and who settles it, of the catalogue and outside it. Source: the head of each file; design,
 * as the project's trade notes say beside every row.
 */
import { describe, expect, test } from 'vitest';
import { known, unknown } from '@/lib/rules/facts';
import { findingOf } from '@/lib/rules/findings/catalogue';
import { courseOfCatalogue } from '@/lib/rules/findings/course-of-catalogue';
import { courseOfSomethingElse } from '@/lib/rules/findings/course-of-something-else';
import { type CatalogueFinding } from '@/lib/rules/findings/finding';
import { type StoredLimit } from '@/lib/rules/findings/measured-against-limits';

function named(key: string): CatalogueFinding {
  const finding = findingOf(key);
  if (!finding) throw new Error(`no finding ${key}`);
  return finding;
}

test.each([
  ['control-stiff', 'ac43.13-1b', 'a paragraph of its own'],
  ['fuel-stain', 'house-caution', 'our design'],
  ['spinner-cracked', 'trade-practice', 'the trade, from memory'],
  ['tyre-slipped', 'trade-practice', 'the trade, checked'],
])('%s says that it comes from %s: %s', (key, cite) => {
  const finding = named(key);
  expect(courseOfCatalogue(finding, { measurements: {}, limits: [] }).reasons.at(-1)).toEqual({
    effect: 'notes',
    cite,
    because: `Where this comes from: ${finding.source}.`,
  });
});

describe('what anyone may settle is a mechanic’s once it was measured, whatever came of it', () => {
  const strut = named('nose-strut-low');
  const limit: StoredLimit = {
    measurement: 'nose-strut-extension',
    unit: 'tenth-inch',
    min: 30,
    max: 60,
    source: 'maker’s manual',
    sourceDate: '2026-01-01',
  };
  const measured = (settledBy: CatalogueFinding['settledBy'], value: number, limits = [limit]) =>
    courseOfCatalogue({ ...strut, settledBy }, { measurements: { 'nose-strut-extension': value }, limits });

  // Just under, on, over the lower bound; and with no limit stored.
  test.each([
    [29, [limit], 'grounding'],
    [30, [limit], 'watch'],
    [31, [limit], 'watch'],
    [31, [], null],
  ] as const)('%s tenths of an inch', (value, limits, severity) => {
    const course = measured('anyone', value, [...limits]);
    expect(course.severity.known ? course.severity.value : null).toBe(severity);
    expect(course.settledBy).toBe('mechanic');
    expect(measured('pilot-servicing', value, [...limits]).settledBy).toBe('pilot-servicing');
  });

  test('not measured it stays with anyone', () => {
    expect(courseOfCatalogue(named('tyre-flat-spot'), { measurements: {}, limits: [] }).settledBy).toBe(
      'anyone',
    );
  });
});

describe('outside the catalogue', () => {
  test('what does not work is asked of 91.213, and its item has to be named', () => {
    const course = courseOfSomethingElse(known('inoperative'), known('3340'));
    expect(course).toMatchObject({ severity: known('limiting'), settledBy: 'deferral-or-repair' });
    expect(course.reasons).toHaveLength(1);
    expect(course.reasons[0]?.because).toContain('Name it on the equipment list.');
  });

  test.each([
    ['damage', 'what a mechanic finds on looking (damage)'],
    ['document', 'what a mechanic finds on looking (document or marking)'],
    ['servicing', 'what needs servicing, and whether a pilot may do it'],
  ] as const)('%s: %s', (kind, missing) => {
    const { severity } = courseOfSomethingElse(known(kind), unknown('system code'));
    expect(severity.known ? null : severity.missing).toBe(missing);
  });
});
