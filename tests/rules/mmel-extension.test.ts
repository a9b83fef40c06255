/**
 * Extension of a repair interval. Source: the head of `lib/rules/advisory/mmel-extension.ts`, which is from memory of the
 * FAA's guidance and says so; the days of the categories are Policy Letter 25's, the cap is 14 CFR 91.405(c).
 */
import { describe, expect, it } from 'vitest';
import { mayExtendThrough, standingDeadline } from '@/lib/rules/advisory/mmel-extension';
import type { AircraftFacts, DeferralFacts, MelFacts, MelItemFacts } from '@/lib/rules/aircraft';
import { answerForUse } from '@/lib/rules/answer';
import { known, unknown } from '@/lib/rules/facts';
import { LAW } from '@/lib/rules/law';
import { deferralEligibility } from '@/lib/rules/part-91/91-213-deferral-eligibility';
import { extensionOf } from '@/lib/rules/part-91/91-213-list-entry';
import { BASE, deferralOf, trainer, useOf, withBroken, melItemOf } from '../fixtures/aircraft';

const LETTER = { categories: ['C'], reference: 'Letter 0611' } as const;
const entryOf = (change: Partial<MelItemFacts> = {}) =>
  melItemOf({
    id: 'entry',
    categoryADays: unknown('the days of the entry'),
    proviso: 'No icing on the route.',
    maintenanceProcedure: 'Close the valve.',
    ...change,
  });
const melOf = (entry: MelItemFacts, change: Partial<MelFacts> = {}): MelFacts => ({
  reference: 'MEL-1',
  letterAboard: known(true),
  enforceCategories: true,
  extension: LETTER,
  items: [entry],
  ...change,
});

/** Written up on 10 November: category B through 13 November, C through 20 November 2026. */
const RECORDED = '2026-11-10';
interface Given {
  readonly entry?: Partial<MelItemFacts>;
  readonly mel?: Partial<MelFacts>;
  readonly deferral?: Partial<DeferralFacts>;
  readonly annualDoneOn?: string;
}
function out({ entry, mel, deferral, annualDoneOn }: Given = {}): AircraftFacts {
  const plane = withBroken(trainer(), 'cabin-heat', {
    reportedAt: '2026-11-10T16:00:00Z',
    deferral: deferralOf({
      basis: 'mel',
      melItemId: 'entry',
      melProceduresDone: true,
      recordedOn: RECORDED,
      ...deferral,
    }),
  });
  return {
    ...plane,
    mel: known(melOf(entryOf(entry), mel)),
    requirements: plane.requirements.map((row) =>
      row.kind === 'annual' && annualDoneOn && row.lastDone.known
        ? { ...row, lastDone: known({ ...row.lastDone.value, on: annualDoneOn }) }
        : row,
    ),
  };
}
const asked = (given: Given, on: string) => {
  const aircraft = out(given);
  const ruling = extensionOf(aircraft, aircraft.discrepancies[0]!, on);
  if (!ruling) throw new Error('the question did not arise');
  return ruling;
};
const barOf = (given: Given, on = '2026-11-18') =>
  asked(given, on).lines.find((line) => line.effect === 'bars');
const ABOUT = { kind: 'discrepancy', id: 'd', label: 'W-1' } as const;

describe('who has the authority', () => {
  it('is from memory, and the register says so', () => {
    expect(LAW['mmel-extension'].status).toBe('memory');
  });

  it('the letter names the category: allowed, at most the same ten days again', () => {
    expect(asked({}, '2026-11-18')).toMatchObject({
      allowed: true,
      endsOn: '2026-11-20',
      latest: '2026-11-30',
    });
  });

  it.each([
    ['no authority in the letter', { mel: { extension: null } }, /gives no authority/],
    ['the letter names another category', { entry: { category: 'B' } }, /names category C/],
    [
      'category D, even where a letter names it',
      { entry: { category: 'D' }, mel: { extension: { ...LETTER, categories: ['D'] } } },
      /never extended/,
    ],
    [
      'category A, even where a letter names it',
      {
        entry: { category: 'A', categoryADays: known(20) },
        mel: { extension: { ...LETTER, categories: ['A'] } },
      },
      /never extended/,
    ],
    ['extended once already', { deferral: { extendedThrough: '2026-11-25' } }, /no second time/],
    ['an operator not held to intervals', { mel: { enforceCategories: false } }, /nothing to extend/],
  ] as const)('%s: refused', (_words, given, because) => {
    expect(barOf(given as Given)?.because).toMatch(because);
  });

  it('the days of a category A entry not known: refused, and the missing fact named', () => {
    expect(barOf({ entry: { category: 'A' } })).toBeDefined();
    expect(asked({ entry: { category: 'A' } }, '2026-11-11').lines).toContainEqual(
      expect.objectContaining({ effect: 'bars', missing: 'the days of the entry' }),
    );
  });

  it('does not arise under paragraph (d)', () => {
    const aircraft = withBroken(trainer(), 'cabin-heat', { deferral: deferralOf() });
    expect(extensionOf(aircraft, aircraft.discrepancies[0]!, '2026-11-18')).toBeNull();
  });
});

describe('the borders', () => {
  it.each([
    ['the day before the last', '2026-11-19', true],
    ['on the last day', '2026-11-20', true],
    ['the day after', '2026-11-21', false],
  ])('asked for %s', (_words, on, allowed) => {
    expect(asked({}, on).allowed).toBe(allowed);
  });

  it.each([
    ['one day short of the same interval again', '2026-11-29', true],
    ['exactly the same interval again', '2026-11-30', true],
    ['one day more', '2026-12-01', false],
    ['no longer than the interval is anyway', '2026-11-20', false],
  ])('through %s', (_words, until, allowed) => {
    expect(mayExtendThrough(asked({}, '2026-11-18'), until, ABOUT).allowed).toBe(allowed);
  });

  it('category B: three days again', () => {
    const given = {
      entry: { category: 'B' },
      mel: { extension: { ...LETTER, categories: ['B', 'C'] } },
    } as Given;
    expect(asked(given, '2026-11-13').latest).toBe('2026-11-16');
  });

  // 91.405(c). An annual of November 2025 is good through 30 November 2026.
  it.each([
    ['the day before it', '2026-11-29', true],
    ['its last day', '2026-11-30', true],
    ['the day after', '2026-12-01', false],
  ])('never past the next annual: through %s', (_words, until, allowed) => {
    // Written up 15 November: through the 25th, by itself extended at most through 5 December.
    const given = { deferral: { recordedOn: '2026-11-15' }, annualDoneOn: '2025-11-03' };
    const ruling = asked(given, '2026-11-20');
    expect(ruling.latest).toBe('2026-11-30');
    expect(mayExtendThrough(ruling, until, ABOUT).allowed).toBe(allowed);
  });

  it.each([
    ['after the interval', '2026-11-19', true],
    ['on its last day', '2026-11-20', false],
    ['before its end', '2026-11-21', false],
  ])('the annual due %s leaves something to give or not', (_words, recordedOn, allowed) => {
    // The annual ends with 30 November; the interval on the 29th, the 30th, 1 December.
    expect(asked({ deferral: { recordedOn }, annualDoneOn: '2025-11-03' }, '2026-11-21').allowed).toBe(
      allowed,
    );
  });

  it('refused while nobody knows when the annual was', () => {
    const aircraft = { ...out(), requirements: [] };
    expect(extensionOf(aircraft, aircraft.discrepancies[0]!, '2026-11-18')?.allowed).toBe(false);
  });
});

describe('what an extension does to the answer', () => {
  const flown = (aircraft: AircraftFacts, on: string) =>
    answerForUse(aircraft, useOf({ departOn: on, arriveOn: on })).lines.filter(
      (line) => line.cite === 'mmel-category-c',
    );

  it.each([
    ['2026-11-24', 'limits'],
    ['2026-11-25', 'limits'],
    ['2026-11-26', 'bars'],
  ])('extended through 25 November: on %s it %s', (on, effect) => {
    const [line] = flown(out({ deferral: { extendedThrough: '2026-11-25' } }), on);
    expect(line).toMatchObject({ effect });
    expect(line?.because).toContain('extended once');
  });

  it('counts no longer once the letter does not give it', () => {
    const given = { mel: { extension: null }, deferral: { extendedThrough: '2026-11-25' } };
    expect(flown(out(given), '2026-11-24')).toMatchObject([{ effect: 'bars' }]);
  });

  it('a day written further than the rule carries is cut back to it', () => {
    expect(
      standingDeadline(melOf(entryOf()), entryOf(), { recordedOn: RECORDED, extendedThrough: '2027-01-31' }),
    ).toEqual({ lastDay: known('2026-11-30'), extended: true });
  });

  it('the report shows the entry with the extended clock', () => {
    const aircraft = out({ deferral: { extendedThrough: '2026-11-27' } });
    const reference = {
      ...BASE,
      transponderAirspace: known(false),
      adsbAirspace: known(false),
      controlledAirspace: known(true),
    };
    const report = deferralEligibility(
      aircraft,
      aircraft.discrepancies[0]!,
      reference,
      '2026-11-25',
      '2026-11-25T15:00:00Z',
    );
    expect(report.listEntry).toMatchObject({
      title: 'Cabin heat',
      installed: 1,
      requiredForDispatch: 0,
      working: known(0),
      maintenanceProcedure: 'Close the valve.',
      clock: { recordedOn: RECORDED, lastDay: known('2026-11-27'), daysLeft: 2, extended: true },
    });
    expect(report.ends.find(({ cite }) => cite === 'mmel-category-c')?.on).toBe('2026-11-27');
  });
});

describe('the ruling in full', () => {
  const effects = (lines: readonly { effect: string; cite: string; about?: unknown }[]) =>
    lines.map(({ effect, cite }) => `${effect} ${cite}`);

  it('says the authority, the interval, and what ends the deferral, each with what it is about', () => {
    const { lines } = asked({}, '2026-11-18');
    expect(effects(lines)).toEqual([
      'supports mmel-extension',
      'supports mmel-extension',
      'notes 14cfr91.405(c)',
    ]);
    expect(new Set(lines.map(({ about }) => about?.id))).toEqual(new Set(['discrepancy-cabin-heat']));
    // The annual of 10 March 2026 is good through 31 March 2027; nobody flies for hire under it at 100 hours here.
    expect(lines[2]?.because).toMatch(/^The .+ by .+ ends the deferral, extended or not\.$/);
  });

  it('through a day: the lines of the ruling, and one more that decides', () => {
    const ruling = asked({}, '2026-11-18');
    const through = (until: string) => mayExtendThrough(ruling, until, ABOUT);
    for (const [until, effect] of [
      ['2026-11-20', 'bars'],
      ['2026-11-21', 'supports'],
      ['2026-11-30', 'supports'],
      ['2026-12-01', 'bars'],
    ] as const) {
      expect(through(until).lines.slice(0, -1)).toEqual(ruling.lines);
      expect(through(until).lines.at(-1)).toMatchObject({ effect, cite: 'mmel-extension', about: ABOUT });
    }
  });

  it('a ruling that refuses stays refused through any day, with its own lines', () => {
    for (const given of [{ mel: { extension: null } }, { entry: { category: 'A' } }] as Given[]) {
      const ruling = asked(given, '2026-11-18');
      expect(ruling).toMatchObject({ allowed: false, latest: null });
      expect(mayExtendThrough(ruling, '2026-11-25', ABOUT)).toEqual({ allowed: false, lines: ruling.lines });
    }
  });

  it('nothing but the three conditions opens it: without a last day, or a latest one, it is refused', () => {
    const ruling = asked({}, '2026-11-18');
    for (const change of [{ allowed: false }, { endsOn: null }, { latest: null }])
      expect(mayExtendThrough({ ...ruling, ...change }, '2026-11-25', ABOUT)).toEqual({
        allowed: false,
        lines: ruling.lines,
      });
  });
});

describe('the last day that stands', () => {
  const standing = (
    extendedThrough: string | null,
    entry: Partial<MelItemFacts> = {},
    mel: Partial<MelFacts> = {},
  ) =>
    standingDeadline(melOf(entryOf(entry), mel), entryOf(entry), { recordedOn: RECORDED, extendedThrough });

  // Category C: ten days, through 20 November; the same again, through the 30th.
  it.each([
    [null, '2026-11-20', false],
    ['2026-11-19', '2026-11-20', false],
    ['2026-11-20', '2026-11-20', false],
    ['2026-11-21', '2026-11-21', true],
    ['2026-11-29', '2026-11-29', true],
    ['2026-11-30', '2026-11-30', true],
    ['2026-12-01', '2026-11-30', true],
  ])('written as extended through %s: %s', (extendedThrough, lastDay, extended) => {
    expect(standing(extendedThrough)).toEqual({ lastDay: known(lastDay), extended });
  });

  it('an unknown interval stays unknown, and categories that are never extended keep theirs', () => {
    expect(standing('2026-11-25', { category: 'A' })).toEqual({
      lastDay: unknown('the days of the entry'),
      extended: false,
    });
    const named = { extension: { ...LETTER, categories: ['A', 'D'] as const } };
    expect(standing('2027-12-31', { category: 'D' }, named).extended).toBe(false);
    expect(standing('2026-12-31', { category: 'A', categoryADays: known(20) }, named)).toEqual({
      lastDay: known('2026-11-30'),
      extended: false,
    });
  });
});
