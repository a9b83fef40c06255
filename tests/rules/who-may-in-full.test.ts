/**
 * Who may decide, find, place and sign: the lines of the ruling, certificate by certificate. Sources: 14 CFR 43.3(d), 43.7(c), 65.81 to
 * 65.95, 91.213(d)(4), 91.407(b), 91.411(b) as lib/rules/law cites them; what names nobody is our strict reading, and says so.
 */
import { describe, expect, it, test } from 'vitest';
import type { SignerFacts } from '@/lib/rules/people';
import {
  mayDetermineNoHazard,
  mayFindWithinLimits,
  mayFlyCheckFlight,
  mayPlacePlacard,
  mayRecordServicing,
  toDeterminer,
} from '@/lib/rules/who-may-determine';
import { mayApproveReturnToService, rulingsByCapacity } from '@/lib/rules/who-may-sign';
import type { Line } from '@/lib/rules/verdict';
import { inspector, mechanic, ON, person, pilot, RATING, station, work } from '../fixtures/signers';

const short = (lines: readonly Line[]) =>
  lines.map(({ effect, cite }) => `${effect} ${cite.replace('14cfr', '')}`);
const LEFT = { leftOn: '2026-10-31' } as const;

describe('no hazard, 91.213(d)(4)', () => {
  const rule = (signer: SignerFacts) => {
    const { allowed, under, lines } = mayDetermineNoHazard(signer, RATING, ON);
    return [allowed, under, short(lines)];
  };

  it('mechanic, station and pilot, each under its own certificate', () => {
    expect(rule(mechanic(['airframe']))).toEqual([
      true,
      'mechanic',
      ['supports 91.213(d)(4)', 'supports 65.83'],
    ]);
    expect(rule(mechanic([]))).toEqual([false, null, ['bars 91.213(d)(4)']]);
    expect(rule(station(['airframe']))[1]).toBe('repair-station');
    expect(rule(station([]))).toEqual([false, null, ['bars 91.213(d)(4)']]);
    expect(rule(pilot('private'))).toEqual([true, 'pilot', ['supports 91.213(d)(4)']]);
    expect(rule(pilot('student'))).toEqual([false, null, ['bars 91.213(d)(4)']]);
    const other = person({ pilot: { number: 'X', grade: 'private', ratings: ['glider'] } });
    expect(rule(other)).toEqual([false, null, ['bars 91.213(d)(4)']]);
  });

  it('nobody certificated: one line; nobody who has left', () => {
    expect(rule(person())).toEqual([false, null, ['bars 91.213(d)(4)']]);
    expect(rule({ ...mechanic(['airframe']), ...LEFT })).toEqual([false, null, ['bars ac120-78b']]);
  });

  test('as the deferral rules want the person', () => {
    expect(toDeterminer(person(), RATING)).toEqual({
      name: 'Test Person',
      pilotGrade: null,
      pilotRatedForAircraft: false,
      mechanicRatings: [],
      repairStation: false,
    });
    expect(toDeterminer(pilot('private'), RATING)).toMatchObject({
      pilotGrade: 'private',
      pilotRatedForAircraft: true,
    });
    expect(toDeterminer(pilot('private'), 'glider').pilotRatedForAircraft).toBe(false);
    expect(toDeterminer(mechanic(['powerplant']), RATING).mechanicRatings).toEqual(['powerplant']);
    expect(
      [true, false, null].map(
        (authorised) => toDeterminer(station(['airframe'], authorised), RATING).repairStation,
      ),
    ).toEqual([true, false, false]);
  });
});

describe('within limits: who may approve the repair', () => {
  const rule = (signer: SignerFacts, part: Parameters<typeof mayFindWithinLimits>[1] = 'airframe') =>
    mayFindWithinLimits(signer, part, ON);

  it('a mechanic with the rating, a station with the rating, never a pilot', () => {
    expect(rule(mechanic(['airframe']))).toMatchObject({ allowed: true, under: 'mechanic' });
    expect(short(rule(mechanic(['airframe'])).lines)).toHaveLength(2);
    expect(rule(mechanic(['airframe'])).lines[0]?.strictReading).toMatch(
      /who may find a condition within limits/,
    );
    expect(rule(mechanic(['airframe']), 'powerplant').allowed).toBe(false);
    expect(rule(mechanic(['airframe', 'powerplant']), 'instrument')).toMatchObject({
      allowed: false,
      lines: [{ cite: '14cfr65.81(a)', strictReading: expect.stringContaining('within limits') }],
    });
    expect(rule(station(['instrument']), 'instrument')).toMatchObject({
      allowed: true,
      under: 'repair-station',
    });
    expect(rule(station(['airframe']), 'instrument').allowed).toBe(false);
    for (const signer of [person(), pilot('commercial')])
      expect(rule(signer)).toMatchObject({
        allowed: false,
        lines: [
          { effect: 'bars', cite: '14cfr43.7', strictReading: expect.stringContaining('within limits') },
        ],
      });
    expect(short(rule({ ...mechanic(['airframe']), ...LEFT }).lines)).toEqual(['bars ac120-78b']);
  });
});

describe('the check flight, 91.407(b)', () => {
  const rule = (signer: SignerFacts, rating = RATING) => {
    const { allowed, lines } = mayFlyCheckFlight(signer, rating, ON);
    return [allowed, short(lines)];
  };
  it.each([
    ['private', true],
    ['commercial', true],
    ['airline-transport', true],
    ['student', false],
    ['sport', false],
    ['recreational', false],
  ] as const)('a %s pilot: %s', (grade, allowed) => {
    expect(rule(pilot(grade))).toEqual([
      allowed,
      [`${allowed ? 'supports' : 'bars'} 91.407(b)`, 'supports 91.407(b)'],
    ]);
  });
  it('rated, a pilot at all, and still here', () => {
    expect(rule(pilot('private'), 'glider')).toEqual([false, ['supports 91.407(b)', 'bars 91.407(b)']]);
    expect(rule(mechanic(['airframe']))).toEqual([false, ['bars 91.407(b)']]);
    expect(rule({ ...pilot('private'), ...LEFT })).toEqual([false, ['bars ac120-78b']]);
  });
});

describe('servicing and placards: no paragraph names anybody', () => {
  it.each([
    [mayRecordServicing, 'trade-practice', /record servicing/],
    [mayPlacePlacard, '14cfr91.213(d)(3)(ii)', /place a placard/],
  ] as const)('%o', (ask, cite, act) => {
    const first = (signer: SignerFacts) => ask(signer, ON).lines[0];
    for (const [signer, under] of [
      [mechanic([]), 'mechanic'],
      [station([]), 'repair-station'],
      [pilot('private'), 'pilot'],
    ] as const) {
      expect(ask(signer, ON)).toMatchObject({ allowed: true, under });
      expect(first(signer)).toMatchObject({
        effect: 'supports',
        cite,
        strictReading: expect.stringMatching(act),
      });
    }
    for (const signer of [person(), pilot('student')]) {
      expect(ask(signer, ON)).toMatchObject({ allowed: false, under: null });
      expect(first(signer)).toMatchObject({
        effect: 'bars',
        cite,
        strictReading: expect.stringMatching(act),
      });
    }
    expect(ask(station([], false), ON).allowed).toBe(false);
    expect(short(ask({ ...mechanic(['airframe']), ...LEFT }, ON).lines)).toEqual(['bars ac120-78b']);
  });
});

describe('return to service', () => {
  const lines = (signer: SignerFacts, of: Parameters<typeof work>[0]) =>
    rulingsByCapacity(signer, work(of), ON).map((one) => short(one.lines));
  const both = mechanic(['airframe', 'powerplant']);

  it('who has left: of whom it is said', () => {
    const { lines: said } = mayApproveReturnToService({ ...both, ...LEFT }, work({}), ON);
    expect(said).toEqual([
      {
        effect: 'bars',
        cite: 'ac120-78b',
        because: 'Test Person left on 31 Oct 2026 and can sign nothing here since that day.',
        about: { kind: 'person', id: 'p1', label: 'Test Person' },
      },
    ]);
  });

  it.each([
    ['2026-11-24', false],
    ['2026-11-25', false],
    ['2026-11-26', true],
  ])('left on %s, signing on the 25th: %s', (leftOn, allowed) => {
    expect(mayApproveReturnToService({ ...both, leftOn }, work({}), ON).allowed).toBe(allowed);
  });

  it('no certificate, and only pilots where a pilot may not: what 43.7 names', () => {
    expect(mayApproveReturnToService(person(), work({}), ON)).toMatchObject({
      allowed: false,
      under: null,
      lines: [{ effect: 'bars', cite: '14cfr43.7' }],
    });
  });

  it('work of a helper is noted, own work is not', () => {
    const noted = (performedBySigner: boolean) =>
      lines(both, { kind: 'minor', performedBySigner })[0]?.includes('notes 43.3(d)');
    expect(noted(false)).toBe(true);
    expect(noted(true)).toBe(false);
  });

  it('a mechanic alone: never an annual; a static test with the airframe rating, under 91.411(b)', () => {
    expect(lines(both, { kind: 'annual' })[0]).toContain('bars 65.95(a)(2)');
    expect(lines(both, { kind: 'annual' })[0]).toContain('supports 65.83');
    expect(lines(both, { kind: 'static-test' })[0]).toContain('supports 91.411(b)');
    expect(lines(mechanic(['powerplant']), { kind: 'static-test' })[0]).toContain('bars 91.411(b)');
  });

  it('an inspector adds a major repair and an annual, and nothing else', () => {
    const capacities = (kind: Parameters<typeof work>[0]['kind']) =>
      rulingsByCapacity(inspector(), work({ kind }), ON).map(({ capacity }) => capacity);
    expect(capacities('minor')).toEqual(['mechanic']);
    expect(capacities('annual').length).toBe(2);
    expect(capacities('major').length).toBe(2);
    const alone = { ...inspector(), mechanic: null };
    expect(lines(alone, { kind: 'annual' }).flat()).toContain('bars 65.83');
  });

  it('a station: a major repair is limited to approved data, a minor one is not', () => {
    expect(lines(station(), { kind: 'major' })[0]).toContain('limits 43appB(b)');
    expect(lines(station(), { kind: 'minor' })[0]?.some((line) => line.startsWith('limits'))).toBe(false);
  });

  it('preventive work without its item is not known', () => {
    const { lines: said } = mayApproveReturnToService(
      both,
      work({ kind: 'preventive', preventiveItem: null }),
      ON,
    );
    expect(said.some(({ cite, missing }) => cite === '14cfr43appA(c)' && missing !== undefined)).toBe(true);
  });
});
