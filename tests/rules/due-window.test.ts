import { describe, expect, test } from 'vitest';
import { dueRows, type DueRow } from '@/lib/due/due-rows';
import type { AircraftFacts, RequirementFacts } from '@/lib/rules/aircraft';
import { dueGroupOf } from '@/lib/rules/due-window';
import { barsToEnding } from '@/lib/rules/end-of-requirement';
import { known, unknown } from '@/lib/rules/facts';
import type { Pace } from '@/lib/rules/forecast';
import { deferralOf, discrepancyOf, trainer } from '../fixtures/aircraft';

const TODAY = '2026-11-25';
const steady = known<Pace>({ tenthsAWeek: 50, spreadTenths: 0, weeks: 12, spans: 12 });

const row = (overrides: Partial<RequirementFacts>): RequirementFacts => ({
  id: 'oil',
  kind: 'maker-interval',
  name: 'Oil change',
  binding: false,
  intervalMonths: null,
  intervalDays: null,
  intervalTenths: 500,
  lastDone: known({
    on: '2026-11-01',
    ttisTenths: 1000,
    wasDueTenths: null,
    approvedByAuthorised: known(true),
  }),
  fixedExpiry: null,
  testedToFt: null,
  ...overrides,
});

/** The trainer at a total time, with these requirements and its annual. */
function at(ttisTenths: number, ...requirements: RequirementFacts[]): AircraftFacts {
  const base = trainer();
  const annual = base.requirements.filter(({ kind }) => kind === 'annual');
  return { ...base, ttisTenths: known(ttisTenths), requirements: [...annual, ...requirements] };
}

function rowOf(aircraft: AircraftFacts, id: string): DueRow {
  const found = dueRows(aircraft, steady, TODAY).find((one) => one.id === id);
  if (!found) throw new Error(`no row ${id}`);
  return found;
}

describe('the group of a row', () => {
  // Source: issue 4, "what is due in the next 30 days / 25 hours"; both borders inclusive.
  test.each([
    { remainingDays: 29, group: 'soon' },
    { remainingDays: 30, group: 'soon' },
    { remainingDays: 31, group: 'later' },
    // A limit allows its last day (91.409(a): through the last day of the month).
    { remainingDays: 1, group: 'soon' },
    { remainingDays: 0, group: 'soon' },
    { remainingDays: -1, group: 'overdue' },
  ])('$remainingDays days: $group', ({ remainingDays, group }) => {
    expect(dueGroupOf({ remainingDays, remainingTenths: null, missing: null })).toBe(group);
  });

  test.each([
    { remainingTenths: 249, group: 'soon' },
    { remainingTenths: 250, group: 'soon' },
    { remainingTenths: 251, group: 'later' },
    { remainingTenths: 1, group: 'soon' },
    { remainingTenths: 0, group: 'soon' },
    { remainingTenths: -1, group: 'overdue' },
  ])('$remainingTenths tenths: $group', ({ remainingTenths, group }) => {
    expect(dueGroupOf({ remainingDays: null, remainingTenths, missing: null })).toBe(group);
  });

  test('the nearer limit decides; over by one is over; not known is not later', () => {
    expect(dueGroupOf({ remainingDays: 400, remainingTenths: 10, missing: null })).toBe('soon');
    expect(dueGroupOf({ remainingDays: -1, remainingTenths: 900, missing: null })).toBe('overdue');
    expect(dueGroupOf({ remainingDays: null, remainingTenths: null, missing: 'when' })).toBe('unknown');
    expect(dueGroupOf({ remainingDays: -1, remainingTenths: null, missing: 'hours' })).toBe('overdue');
  });
});

describe('the rows of one aircraft', () => {
  test('hours left become a date at the pace; a recommendation is marked', () => {
    // 25.0 h at 5.0 h a week: five weeks.
    const oil = rowOf(at(1250, row({})), 'oil');
    expect(oil).toMatchObject({
      binding: false,
      group: 'soon',
      tenths: 1500,
      remainingTenths: 250,
      first: { by: 'hours', on: '2026-12-30' },
    });
  });

  test('whichever comes first: four calendar months from 1 November run out after the hours', () => {
    expect(rowOf(at(1250, row({ intervalMonths: 4 })), 'oil')).toMatchObject({
      on: '2027-03-31',
      first: { by: 'hours', on: '2026-12-30' },
    });
    expect(rowOf(at(1250, row({ intervalDays: 30 })), 'oil')).toMatchObject({
      on: '2026-12-01',
      first: { by: 'calendar', on: '2026-12-01' },
    });
  });

  test('91.409(b): the ten hours, and what an excess costs', () => {
    const inspection = row({ id: 'h', kind: 'hundred-hour', intervalTenths: 1000, binding: true });
    const hundred = (ttis: number) => rowOf({ ...at(ttis), requirements: [inspection] }, 'h').overfly;
    // Done at 100.0 h, so due at 200.0 h.
    expect(hundred(1990)).toEqual({
      lastTenths: 2100,
      excessTenths: 0,
      thenLeftTenths: 1000,
      thenLeftAtLastTenths: 900,
    });
    expect(hundred(2000)).toMatchObject({ excessTenths: 0, thenLeftTenths: 1000 });
    expect(hundred(2032)).toMatchObject({ excessTenths: 32, thenLeftTenths: 968 });
  });

  test('91.405(c): the annual names the live deferrals, an oil change none', () => {
    const light = discrepancyOf({ id: 'd1', number: 'Q-9', deferral: deferralOf() });
    const aircraft = {
      ...at(1250, row({})),
      discrepancies: [light, discrepancyOf({ id: 'd2', deferral: null })],
    };
    const annual = dueRows(aircraft, steady, TODAY).find(
      ({ requirementKind }) => requirementKind === 'annual',
    );
    expect(annual?.endsDeferrals.map(({ discrepancyId }) => discrepancyId)).toEqual(['d1']);
    expect(rowOf(aircraft, 'oil').endsDeferrals).toEqual([]);
  });

  test('what is not known gets no date: no record, no approval that counts, no time in service, no interval', () => {
    const cases: [AircraftFacts, RegExp][] = [
      [at(1250, row({ lastDone: unknown('when it was done') })), /when it was done/],
      [{ ...at(1250, row({})), ttisTenths: unknown('the total time') }, /the total time/],
      [at(1250, row({ kind: 'life-limit', intervalTenths: null })), /the interval/],
      [
        at(
          1250,
          row({
            kind: 'directive',
            lastDone: known({
              on: '2026-11-01',
              ttisTenths: 1000,
              wasDueTenths: null,
              approvedByAuthorised: known(false),
            }),
          }),
        ),
        /approval/,
      ],
    ];
    for (const [aircraft, missing] of cases) {
      const found = rowOf(aircraft, 'oil');
      expect(found.group).toBe('unknown');
      expect(found.missing).toMatch(missing);
      expect(found.first).toBeNull();
    }
  });

  test('91.409(a) asks for an annual that nobody has entered', () => {
    const none = { ...trainer(), requirements: [] };
    expect(dueRows(none, steady, TODAY).filter(({ kind }) => kind === 'requirement')).toMatchObject([
      { requirementKind: 'annual', group: 'unknown', cite: '14cfr91.409(a)' },
    ]);
  });

  test('47.40: a registration is listed by its last day, and as not known where nobody entered one', () => {
    const paper = (validThrough: AircraftFacts['papers'][number]['validThrough']) =>
      dueRows(
        { ...trainer(), papers: [{ id: 'r', kind: 'registration', aboard: known(true), validThrough }] },
        steady,
        TODAY,
      ).filter(({ kind }) => kind === 'paper');
    expect(paper(known('2026-12-25'))).toMatchObject([
      { group: 'soon', remainingDays: 30, cite: '14cfr47.40(a)' },
    ]);
    expect(paper(known('2026-12-26'))).toMatchObject([{ group: 'later', remainingDays: 31 }]);
    expect(paper(unknown('how long'))).toMatchObject([{ group: 'unknown' }]);
    expect(paper(known(null))).toEqual([]);
  });
});

describe('ending what recurs', () => {
  // Source: the strict reading the file under test states; 91.409, 91.411, 91.413, 91.207, 91.171.
  const installed = (what: 'transponder' | 'elt', count: number) => [
    { function: what, name: 'The box', installed: count, confirmed: known(true as const) },
  ];

  test.each([
    { kind: 'annual', equipment: [], may: false },
    { kind: 'hundred-hour', equipment: [], may: false },
    { kind: 'transponder', equipment: installed('transponder', 1), may: false },
    { kind: 'transponder', equipment: installed('transponder', 0), may: true },
    { kind: 'transponder', equipment: [], may: false },
    { kind: 'elt-battery', equipment: installed('elt', 1), may: false },
    { kind: 'elt-battery', equipment: installed('elt', 0), may: true },
    { kind: 'directive', equipment: [], may: true },
    { kind: 'life-limit', equipment: [], may: true },
    { kind: 'maker-interval', equipment: [], may: true },
  ] as const)('$kind with $equipment.length lines: may be ended $may', ({ kind, equipment, may }) => {
    expect(barsToEnding(kind, equipment).length === 0).toBe(may);
  });
});
