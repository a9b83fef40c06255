/**
 * Which certificates run out soon. 65.83, 65.92(a) and 65.93(c) read in the eCFR copies that lib/rules/law names; the
 * sixty days of warning are common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { standingOn, wantsALook, WARN_DAYS, type HeldCertificate } from '@/lib/rules/certificate-expiry';

const held = (over: Partial<HeldCertificate>): HeldCertificate => ({
  kind: 'pilot',
  expiresOn: null,
  recentExperienceThrough: null,
  firstYearActivityMet: null,
  ...over,
});
const state = (over: Partial<HeldCertificate>, on: string) => standingOn(held(over), on).state;

describe('a mechanic, 65.83: the last day vouched for', () => {
  const mechanic = { kind: 'mechanic', recentExperienceThrough: '2027-01-30' };
  test.each([
    ['2026-11-30', 'good'], // 61 days
    ['2026-12-01', 'soon'], // 60 days
    ['2026-12-02', 'soon'],
    ['2027-01-29', 'soon'],
    ['2027-01-30', 'soon'], // the day itself is good
    ['2027-01-31', 'over'],
  ])('on %s: %s', (on, expected) => expect(state(mechanic, on)).toBe(expected));

  test('not vouched for is not known, and cites 65.83', () => {
    expect(standingOn(held({ kind: 'mechanic' }), '2026-11-25')).toMatchObject({
      state: 'not-known',
      cite: '14cfr65.83',
    });
  });

  test('a day of expiry typed by mistake is not asked: the certificate has none', () => {
    expect(state({ ...mechanic, expiresOn: '2020-01-01' }, '2026-11-25')).toBe('good');
  });
});

describe('an inspection authorization, 65.92(a): 31 March of the odd year', () => {
  const met = { kind: 'inspection-authorization', expiresOn: '2027-03-31', firstYearActivityMet: true };
  test.each([
    ['2027-01-29', 'good'],
    ['2027-01-30', 'soon'],
    ['2027-03-31', 'soon'],
    ['2027-04-01', 'over'],
  ])('first year met, on %s: %s', (on, expected) => expect(state(met, on)).toBe(expected));

  // 65.93(c): without the activity the privileges stop after 31 March of the first (even) year.
  test.each([
    [null, '2026-01-29', 'good'],
    [null, '2026-01-30', 'soon'],
    [null, '2026-03-31', 'soon'],
    [null, '2026-04-01', 'not-known'],
    [false, '2026-03-31', 'soon'],
    [false, '2026-04-01', 'over'],
    [true, '2026-04-01', 'good'],
  ] as const)('first year %s, on %s: %s', (firstYearActivityMet, on, expected) => {
    expect(state({ ...met, firstYearActivityMet }, on)).toBe(expected);
  });

  test('past the whole of it, it is over whatever the first year was', () => {
    expect(standingOn(held({ ...met, firstYearActivityMet: null }), '2027-04-01')).toMatchObject({
      state: 'over',
      cite: '14cfr65.92(a)',
    });
  });
});

test('pilot and repair station end only where a day is entered', () => {
  expect(state({ kind: 'pilot' }, '2026-11-25')).toBe('no-end');
  expect(state({ kind: 'repair-station', expiresOn: '2026-11-24' }, '2026-11-25')).toBe('over');
});

test('what wants a look: soon, over, not known; nothing else', () => {
  const looks = (over: Partial<HeldCertificate>, on: string) => wantsALook(standingOn(held(over), on));
  expect(looks({ kind: 'mechanic' }, '2026-11-25')).toBe(true);
  expect(looks({ kind: 'pilot' }, '2026-11-25')).toBe(false);
  expect(looks({ expiresOn: '2027-06-01' }, '2026-11-25')).toBe(false);
  expect(looks({ expiresOn: '2026-11-25' }, '2026-11-25')).toBe(true);
  expect(WARN_DAYS).toBe(60);
});
