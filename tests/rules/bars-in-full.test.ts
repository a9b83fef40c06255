/**
 * What a bar says, and of what: recalls, requirements by date and hours, equipment that nobody confirmed or nobody listed, who inspects for
 * a permit. Sources beside the rows: 91.7, 91.405, 91.205(a), 91.413(a), 21.199(b) as lib/rules/law cites them; words are our own.
 */
import { describe, expect, it, test } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForUse } from '@/lib/rules/answer';
import { dueOf } from '@/lib/rules/due';
import { checkEquipmentConfirmed } from '@/lib/rules/equipment-confirmed';
import { known, unknown } from '@/lib/rules/facts';
import { mayInspectForPermit } from '@/lib/rules/inspect-for-permit';
import { isOutOfUse } from '@/lib/rules/out-of-use';
import type { SignerFacts } from '@/lib/rules/people';
import { recallInWords, recallOf, writeUpBehind } from '@/lib/rules/recall';
import { isCommitted, withSpent } from '@/lib/rules/spent-hours';
import { signersFor, whoCanSentence } from '@/lib/rules/signers-for';
import { calendarLine, hoursLine, unlessInDoubt } from '@/lib/rules/requirement-lines';
import { joinLines, type Line } from '@/lib/rules/verdict';
import type { WorkToSign } from '@/lib/rules/work-to-sign';
import {
  deferralOf,
  discrepancyOf,
  requirementRow,
  trainer,
  useOf,
  withBroken,
  withRow,
  withoutEquipment,
} from '../fixtures/aircraft';
import { person } from '../fixtures/signers';

describe('a recall', () => {
  const line = (about?: Line['about']): Line => ({
    effect: 'limits',
    cite: '14cfr91.7(b)',
    because: 'Not at night.',
    about,
  });
  const told = (before: Line, now: Line) => recallOf('released', [before], joinLines([now])) !== null;

  test('the same words about another thing are told, about the same thing or about nothing not again', () => {
    const one = { kind: 'discrepancy', id: 'a', label: 'A' } as const;
    expect(told(line(one), line({ ...one, label: 'Another label' }))).toBe(false);
    expect(told(line(one), line({ ...one, id: 'b' }))).toBe(true);
    expect(told(line(one), line({ ...one, kind: 'work' }))).toBe(true);
    expect(told(line(), line())).toBe(false);
    expect(told(line(), line(one))).toBe(true);
  });

  test('what cannot be judged is said with its own line', () => {
    expect(recallOf('released', [], null)).toMatchObject({
      what: 'void',
      lines: [{ effect: 'bars', cite: 'house-caution', because: expect.stringContaining('no go') }],
    });
  });

  const about = (id: string): Line => line({ kind: 'discrepancy', id, label: id });
  const write = (id: string, deferralId?: string) =>
    discrepancyOf({ id, deferral: deferralId === undefined ? null : deferralOf({ id: deferralId }) });
  test('the write-up behind it: a new one before an old one, by itself or by its deferral', () => {
    const now = { discrepancies: [write('old'), write('new'), write('deferred', 'deferral-9')] };
    const then = { discrepancies: [write('old'), write('deferred')] };
    expect(writeUpBehind([about('old'), about('new')], now, then)).toBe('new');
    expect(writeUpBehind([about('old')], now, then)).toBe('old');
    expect(writeUpBehind([about('deferral-9')], now, then)).toBe('deferred');
    expect(writeUpBehind([about('gone'), line()], now, then)).toBeNull();
    expect(writeUpBehind([about('deferral-9'), about('old')], now, { discrepancies: [] })).toBe('deferred');
  });

  test('in words: the first reason, and how many more', () => {
    const recall = (count: number) =>
      ({ what: 'void', lines: Array.from({ length: count }, () => line()) }) as const;
    expect(recallInWords(recall(0), false)).toBe('The answer is no go now. Nobody departs on this release.');
    expect(recallInWords(recall(1), false)).toBe(
      'The answer is no go now: Not at night. Nobody departs on this release.',
    );
    expect(recallInWords(recall(2), false)).toBe(
      'The answer is no go now: Not at night. And 1 more. Nobody departs on this release.',
    );
    expect(recallInWords({ ...recall(1), what: 'warned' }, false)).toBe(
      'Facts changed after the release: Not at night. Read it before you depart.',
    );
    expect(recallInWords(recall(1), true)).toMatch(
      /^Facts changed while the flight is in the air: Not at night\. Its pilot/,
    );
  });
});

describe('a requirement by its date and its hours', () => {
  const row = requirementRow('annual', 'Annual inspection', '2026-03-10', 43_820);
  const about = { kind: 'requirement', id: 'annual', label: 'Annual inspection' };

  it.each([
    ['2026-11-24', 'bars', 'Annual inspection ran out 24 Nov 2026.'],
    ['2026-11-25', 'supports', 'Annual inspection good through 25 Nov 2026.'],
    ['2026-11-26', 'supports', 'Annual inspection good through 26 Nov 2026.'],
  ])('through %s on a flight of 25 November: %s', (through, effect, because) => {
    expect(calendarLine(row, through, useOf(), '14cfr91.409(a)')).toEqual({
      effect,
      cite: '14cfr91.409(a)',
      because,
      about,
    });
  });

  // The flight takes 1.3 h from 4512.3 h.
  it.each([
    [45_137, 'supports', 'Annual inspection due at 4513.7 h. This flight ends at 4513.6 h.'],
    [45_136, 'supports', 'Annual inspection due at 4513.6 h. This flight ends at 4513.6 h.'],
    [45_135, 'bars', 'Annual inspection has 1.2 h left. This flight takes 1.3 h.'],
    [45_124, 'bars', 'Annual inspection has 0.1 h left. This flight takes 1.3 h.'],
    [45_123, 'bars', 'Annual inspection has 0.0 h left. This flight takes 1.3 h.'],
    [45_122, 'bars', 'Annual inspection overdue by 0.1 h. It was due at 4512.2 h.'],
  ])('due at %i tenths: %s', (due, effect, because) => {
    expect(hoursLine(row, due, 45_123, useOf(), '14cfr91.409(b)')).toEqual({
      effect,
      cite: '14cfr91.409(b)',
      because,
      about,
    });
  });

  test('a limit met is left out while the record is in doubt; one not met is said with it', () => {
    const doubt: Line = { effect: 'bars', cite: '14cfr91.417(a)(1)', because: 'Doubt.' };
    const met: Line = { effect: 'supports', cite: '14cfr91.409(a)', because: 'Met.' };
    const notMet: Line = { ...met, effect: 'bars' };
    expect(unlessInDoubt([], met)).toEqual([met]);
    expect(unlessInDoubt([doubt], met)).toEqual([doubt]);
    expect(unlessInDoubt([doubt], notMet)).toEqual([doubt, notMet]);
  });

  test('days left to its date, and a marked date needs no record only where nothing else is measured', () => {
    const due = (change: Partial<typeof row>) => dueOf({ ...row, ...change }, known(45_123), []);
    expect(due({ intervalMonths: 12 }).remainingDays('2026-11-25')).toBe(126);
    expect(due({ kind: 'life-limit', intervalMonths: null }).remainingDays('2026-11-25')).toBeNull();
    const noRecord = { lastDone: unknown('when it was done'), fixedExpiry: '2027-01-31' } as const;
    const marked = { kind: 'life-limit', ...noRecord } as const;
    expect(due(marked).missing).toBeNull();
    expect(due({ ...marked, fixedExpiry: null }).missing).toBe('when it was done');
    for (const interval of [{ intervalMonths: 12 }, { intervalDays: 30 }, { intervalTenths: 1000 }])
      expect(due({ ...marked, ...interval }).missing).toBe('when it was done');
    expect(due({ ...noRecord, kind: 'elt-battery', intervalMonths: 12 }).missing).toBeNull();
  });

  test('of several dates the earliest counts', () => {
    const due = (fixedExpiry: string | null) =>
      dueOf(
        requirementRow('maker-interval', 'Hose', '2026-03-10', 1, {
          intervalMonths: 12,
          intervalDays: 200,
          fixedExpiry,
        }),
        known(1),
        [],
      ).on;
    // Twelve calendar months: 31 March 2027; 200 days: 26 September 2026.
    expect(due(null)).toBe('2026-09-26');
    expect(due('2026-09-25')).toBe('2026-09-25');
    expect(due('2027-09-25')).toBe('2026-09-26');
  });
});

describe('equipment that nobody confirmed, and that is not there', () => {
  const barsOf = (aircraft: AircraftFacts, cite: string) =>
    answerForUse(aircraft, useOf()).lines.find((line) => line.cite === cite && line.effect === 'bars');

  test('not confirmed: said of the row, with the missing fact begun as a sentence', () => {
    const plane = withRow(trainer(), 'clock', { confirmed: unknown('whether anybody confirmed the clock') });
    expect(checkEquipmentConfirmed(plane)).toEqual([
      {
        effect: 'bars',
        cite: 'house-caution',
        because:
          'Whether anybody confirmed the clock. Until then neither 91.205(a) nor 91.213(d)(2) can be judged by it.',
        missing: 'whether anybody confirmed the clock',
        about: { kind: 'equipment', id: 'clock', label: 'Panel clock' },
        strictReading: expect.stringContaining('no line that nobody has signed for'),
      },
    ]);
  });

  // 91.205(b)(1): an airspeed indicator.
  test('a demand on a row that nobody confirmed is not known, of that row', () => {
    const plane = withRow(trainer(), 'airspeed-indicator', { confirmed: unknown('who confirmed it') });
    expect(barsOf(plane, '14cfr91.205(b)(1)') ?? barsOf(plane, 'house-caution')).toMatchObject({
      missing: 'who confirmed it',
      about: { kind: 'equipment', id: 'airspeed-indicator', label: 'Airspeed indicator' },
    });
  });

  test('not on the list, none installed, and too few working are three different things', () => {
    const gone = withoutEquipment(trainer(), 'airspeed-indicator');
    expect(barsOf(gone, '14cfr91.205(b)(1)')).toMatchObject({
      missing: 'the airspeed indicator on the equipment list',
    });
    expect(barsOf(gone, '14cfr91.205(b)(1)')?.because).toMatch(
      /The equipment list names no airspeed indicator\.$/,
    );
    const none = withRow(trainer(), 'airspeed-indicator', { installed: 0 });
    expect(barsOf(none, '14cfr91.205(b)(1)')).toMatchObject({ about: { id: 'airspeed-indicator' } });
    expect(barsOf(none, '14cfr91.205(b)(1)')).not.toHaveProperty('missing', expect.anything());
    expect(barsOf(none, '14cfr91.205(b)(1)')?.because).toMatch(
      /says that no airspeed indicator is installed\.$/,
    );
    const out = withBroken(trainer(), 'airspeed-indicator');
    expect(barsOf(out, '14cfr91.205(b)(1)')?.because).toMatch(
      /Working: 0 of 1 installed; needed: 1\.$|cannot be deferred/,
    );
  });
});

describe('out of use under a deferral', () => {
  const out = (change: Parameters<typeof withBroken>[2], installed = 1) =>
    isOutOfUse(withBroken(withRow(trainer(), 'intercom', { installed }), 'intercom', change), 'intercom');

  it.each([
    [{ deferral: deferralOf() }, 1, true],
    [{ deferral: null }, 1, false],
    [{ deferral: deferralOf(), kind: 'damage' }, 1, false],
    [{ deferral: deferralOf(), equipmentId: 'clock' }, 1, false],
    [{ deferral: deferralOf(), inoperativeCount: unknown('how many') }, 1, false],
    [{ deferral: deferralOf() }, 2, false],
    [{ deferral: deferralOf(), inoperativeCount: known(2) }, 2, true],
    [{ deferral: deferralOf(), inoperativeCount: known(3) }, 2, true],
    [{ deferral: deferralOf() }, 0, false],
  ] as const)('%j with %i installed: %s', (change, installed, is) => {
    expect(out(change, installed)).toBe(is);
  });

  test('an unconfirmed row is never out of use, and every row has to be', () => {
    const broken = withBroken(trainer(), 'intercom', { deferral: deferralOf() });
    expect(isOutOfUse(withRow(broken, 'intercom', { confirmed: unknown('who') }), 'intercom')).toBe(false);
    const second = { ...broken.equipment.find(({ id }) => id === 'intercom')!, id: 'intercom-2' };
    expect(isOutOfUse({ ...broken, equipment: [...broken.equipment, second] }, 'intercom')).toBe(false);
    expect(
      isOutOfUse({ ...broken, equipment: [...broken.equipment, { ...second, installed: 0 }] }, 'intercom'),
    ).toBe(true);
  });
});

// 21.199(b) names nobody: our strict reading, in the head of lib/rules/inspect-for-permit.ts.
describe('who inspects for a permit: what is said against it', () => {
  const ON = '2026-11-25';
  const mechanic = {
    number: 'M-1',
    ratings: ['airframe'] as const,
    recentExperienceThrough: known('2027-06-30'),
  };
  const station = (ratings: readonly 'airframe'[], authorised = true) =>
    ({ number: 'RS-1', ratings, authorisedToSign: known(authorised) }) as NonNullable<
      SignerFacts['repairStation']
    >;
  const wing = [known('airframe' as const)];
  const said = (signer: Partial<SignerFacts>, parts: Parameters<typeof mayInspectForPermit>[1] = wing) => {
    const { allowed, under, lines } = mayInspectForPermit(person(signer), parts, ON);
    return { allowed, under, lines: lines.map(({ effect, cite }) => `${effect} ${cite}`) };
  };

  test('nobody with a certificate: one line, and only then', () => {
    expect(said({})).toEqual({ allowed: false, under: null, lines: ['bars 14cfr21.199(b)'] });
  });

  test('a repair station: its rating and its authorization, each said', () => {
    expect(said({ repairStation: station(['airframe']) })).toMatchObject({
      allowed: true,
      under: 'repair-station',
    });
    expect(said({ repairStation: station(['airframe']) }).lines[0]).toBe('supports 14cfr43.7(c)');
    expect(said({ repairStation: station([]) })).toMatchObject({
      allowed: false,
      lines: ['bars 14cfr43.7(c)'],
    });
    expect(said({ repairStation: station(['airframe'], false) })).toMatchObject({
      allowed: false,
      under: null,
    });
  });

  test('refused on both certificates: all that bars on either, and nothing that supports', () => {
    const { lines } = said({ mechanic: { ...mechanic, ratings: [] }, repairStation: station([]) });
    expect(lines).toContain('bars 14cfr43.7(c)');
    expect(lines.filter((line) => line.startsWith('bars'))).toEqual(lines);
    expect(lines.length).toBeGreaterThan(1);
  });

  test('a mechanic is asked first; the strict reading is said of each rating', () => {
    expect(said({ mechanic, repairStation: station([]) })).toMatchObject({
      allowed: true,
      under: 'mechanic',
    });
    const { lines } = mayInspectForPermit(person({ mechanic }), wing, ON);
    expect(lines[0]?.strictReading).toMatch(/No paragraph says who inspects/);
    expect(said({ mechanic }, []).allowed).toBe(false);
    expect(
      said({ mechanic: { ...mechanic, ratings: ['airframe', 'powerplant'] } }, [unknown('which part')])
        .allowed,
    ).toBe(true);
  });
});

// 43.7, 65.81 to 65.95, appendix A to part 43: the refusal screen names those who could (tests/outside/who-may-sign-table.test.ts).
describe('who could sign, in words', () => {
  const WORK: WorkToSign = {
    part: 'airframe',
    kind: 'minor',
    preventiveItem: null,
    swapOnly: false,
    aircraftCategory: 'airplane',
    performedBySigner: true,
  };
  const who = (work: Partial<WorkToSign>) => signersFor({ ...WORK, ...work });

  it.each([
    [{ kind: 'minor' }, ['a mechanic with airframe rating', 'a repair station rated for airframes']],
    [
      { kind: 'minor', part: 'propeller' },
      ['a mechanic with powerplant rating', 'a repair station rated for propellers'],
    ],
    [
      { kind: 'minor', part: 'avionics' },
      ['a mechanic with airframe rating', 'a repair station rated for radios'],
    ],
    [
      { kind: 'minor', part: 'instrument' },
      ['a repair station rated for instruments', 'the maker of the instrument'],
    ],
    [
      { kind: 'minor', part: 'instrument', swapOnly: true },
      ['a mechanic with airframe rating', 'a repair station rated for instruments'],
    ],
    [
      { kind: 'minor', part: 'airframe', swapOnly: true },
      ['a mechanic with airframe rating', 'a repair station rated for airframes'],
    ],
    [{ kind: 'major', part: 'propeller' }, ['a repair station rated for propellers']],
    [{ kind: 'major', part: 'instrument' }, ['a repair station rated for instruments']],
    [
      { kind: 'major', part: 'powerplant' },
      [
        'a mechanic with an inspection authorization in effect, on approved data',
        'a repair station rated for powerplants',
      ],
    ],
    [
      { kind: 'altimeter-transponder-test', part: 'instrument' },
      ['a repair station rated for instruments or airframes', 'the maker of the aircraft'],
    ],
    [
      { kind: 'altimeter-transponder-test', part: 'avionics' },
      ['a repair station rated for radios', 'the maker of the aircraft that fitted the transponder'],
    ],
    [{ kind: 'altimeter-transponder-test', part: 'airframe' }, []],
    [{ kind: 'preventive', preventiveItem: null }, []],
  ] as const)('%j', (work, signers) => {
    expect(who(work)).toEqual(signers);
  });

  test('nobody is said as well', () => {
    expect(whoCanSentence({ ...WORK, kind: 'preventive', preventiveItem: null })).toMatch(
      /^Nobody can sign .+ entered this way\.$/,
    );
    expect(whoCanSentence({ ...WORK, kind: 'minor' })).toBe(
      'Who can: a mechanic with airframe rating; a repair station rated for airframes.',
    );
  });
});

// 91.409(b) and the like: a record of more hours than the aircraft has is in doubt. Common practice of a desk, no source.
describe('hours that booked flights will have spent', () => {
  const withRecordAt = (ttisTenths: number) =>
    trainer({
      requirements: [
        requirementRow('hundred-hour', '100-hour inspection', '2026-11-20', ttisTenths, {
          intervalTenths: 1000,
        }),
      ],
    });
  const lastDone = (ttisTenths: number, spent: number) =>
    withSpent(withRecordAt(ttisTenths), spent).facts.requirements[0]?.lastDone.known;

  it.each([
    // The aircraft has 4512.3 h; 2.0 h more are booked.
    [45_122, true],
    [45_123, true],
    [45_124, false],
    [45_142, false],
    [45_143, false],
    // Even then it says more than the aircraft will have: in doubt by itself, and left as it is.
    [45_144, true],
  ])('a record of %i tenths stays known: %s', (ttisTenths, is) => {
    expect(lastDone(ttisTenths, 20)).toBe(is);
  });

  test('nothing spent changes nothing, and what is not known stays so', () => {
    const plane = withRecordAt(45_124);
    expect(withSpent(plane, 0).facts).toBe(plane);
    const unread = { ...plane, ttisTenths: unknown('the time in service') };
    expect(withSpent(unread, 20)).toEqual({ facts: unread, spentTenths: 20 });
    expect(withSpent(plane, 20).facts.ttisTenths).toEqual(known(45_143));
  });

  it.each([
    ['planned', false],
    ['released', true],
    ['out', true],
  ] as const)('a flight that is %s binds: %s', (state, binds) => {
    expect(
      isCommitted({
        id: 'f',
        label: 'Lesson',
        departAt: '2026-11-25T15:00:00Z',
        arriveAt: '2026-11-25T16:00:00Z',
        plannedTenths: 10,
        state,
      }),
    ).toBe(binds);
  });
});
