/** One open write-up, judged for one flight: what is said beside the bar. 14 CFR 91.7, 91.213(a), (d)(4); words are our own. */
import { describe, expect, it, test } from 'vitest';
import type { DeferralFacts, DiscrepancyFacts, Severity } from '@/lib/rules/aircraft';
import { known, unknown } from '@/lib/rules/facts';
import { judgeDiscrepancy } from '@/lib/rules/judge-discrepancy';
import type { UseOfAircraft } from '@/lib/rules/operations';
import {
  AWAY,
  BASE,
  deferralOf,
  discrepancyOf,
  melItemOf,
  permitOf,
  trainer,
  useOf,
  withBroken,
  withRow,
} from '../fixtures/aircraft';

const judged = (change: Partial<DiscrepancyFacts>, use: Partial<UseOfAircraft> = {}) => {
  const d = discrepancyOf(change);
  return judgeDiscrepancy(trainer({ discrepancies: [d] }), d, useOf(use)).map(
    ({ effect, cite }) => `${effect} ${cite.replace('14cfr', '')}`,
  );
};

describe('cosmetic', () => {
  it.each([
    [known<Severity>('note'), ['notes 91.7(a)']],
    [known<Severity>('watch'), ['notes 91.7(a)']],
    [known<Severity>('limiting'), ['limits 91.7(b)', 'notes 91.7(a)']],
    // Undecided grounds, and what grounds is no note (91.7(a)).
    [known<Severity>('grounding'), ['bars 91.7(a)']],
    [unknown('how bad it is'), ['bars 91.7(a)']],
  ])('%j', (severity, lines) => {
    expect(judged({ kind: 'cosmetic', severity })).toEqual(lines);
  });
});

describe('not deferred: whether a deferral would help', () => {
  const hope = (
    fn: 'intercom' | 'landing-light' | 'airspeed-indicator',
    use: Partial<UseOfAircraft> = {},
    plane = trainer(),
  ) => {
    const aircraft = withBroken(plane, fn);
    return judgeDiscrepancy(aircraft, aircraft.discrepancies[0]!, useOf(use))[0];
  };

  it('could, could not, or not known', () => {
    expect(hope('intercom')?.because).toMatch(/not deferred yet\. It could be deferred for this flight\.$/);
    expect(hope('airspeed-indicator')?.because).toMatch(/It could not be deferred for this flight\.$/);
    const doubtful = withRow(trainer(), 'intercom', { vfrDayTypeDesign: unknown('the type design') });
    expect(hope('intercom', {}, doubtful)?.because).toMatch(
      /Whether it could be deferred for this flight is not known\.$/,
    );
    // One reason is known, another is not: known to be barred.
    const both = withRow(trainer(), 'landing-light', { vfrDayTypeDesign: unknown('the type design') });
    expect(hope('landing-light', { light: 'night', purpose: 'carriage-for-hire' }, both)?.because).toMatch(
      /could not be/,
    );
    expect(hope('intercom')).toMatchObject({
      effect: 'bars',
      cite: '14cfr91.213(a)',
      about: { id: 'discrepancy-intercom' },
    });
  });
});

describe('deferred', () => {
  const lines = (
    deferral: Partial<DeferralFacts> = {},
    fn: 'landing-light' | 'intercom' = 'landing-light',
    use: Partial<UseOfAircraft> = {},
  ) => {
    const aircraft = withBroken(trainer(), fn, { deferral: deferralOf(deferral) });
    return judgeDiscrepancy(aircraft, aircraft.discrepancies[0]!, useOf(use));
  };
  const inWords = (of: ReturnType<typeof lines>) =>
    of.filter(({ because }) => because.startsWith('Deferred: '));

  test('in order: one limit as the pilot hears it, of the deferral', () => {
    expect(inWords(lines())).toEqual([
      {
        effect: 'limits',
        cite: '14cfr91.213(d)',
        because: 'Deferred: Landing light, deactivated, placarded. Not at night for hire.',
        about: { kind: 'deferral', id: 'deferral-1', label: 'W-0001 Landing light inoperative' },
      },
    ]);
    expect(inWords(lines({}, 'intercom'))[0]?.because).toBe('Deferred: Intercom, deactivated, placarded.');
    const removed = inWords(lines({ method: 'removed', maintenanceRecordSigned: true }, 'intercom'));
    expect(removed[0]?.because).toBe('Deferred: Intercom, removed, control placarded.');
  });

  // 91.213(a)(5): under a list the flight is made under its limits; 91.213(d): without one under that paragraph.
  test.each([
    ['91.213(d)', '14cfr91.213(d)'],
    ['mel', '14cfr91.213(a)(5)'],
  ] as const)('by %s it is told by %s', (basis, cite) => {
    const plane = withBroken(trainer(), 'intercom', { deferral: deferralOf({ basis }) });
    const entry = melItemOf({ equipmentId: plane.discrepancies[0]?.equipmentId ?? '', title: 'Intercom' });
    const items = [entry];
    const mel = {
      reference: 'MEL 1',
      letterAboard: known(true),
      enforceCategories: false,
      extension: null,
      items,
    };
    const aircraft = {
      ...plane,
      mel: known(basis === 'mel' ? mel : null),
    };
    const told = inWords(judgeDiscrepancy(aircraft, aircraft.discrepancies[0]!, useOf()));
    expect(told).toMatchObject([{ effect: 'limits', cite }]);
  });

  // 91.207(e)(2), (f)(3): a ferry is for nobody's hire, training nearby is no private flight; the other kinds are named as closed.
  test('the kinds it closes are judged as what they would be, and not as this flight', () => {
    const of = (use: Partial<UseOfAircraft>) => {
      const aircraft = withBroken(trainer(), 'elt', { deferral: deferralOf() });
      return inWords(judgeDiscrepancy(aircraft, aircraft.discrepancies[0]!, useOf(use)))[0]?.because;
    };
    const ferry = { from: AWAY, to: BASE, crewOnly: known(true) };
    expect(of(ferry)).toMatch(/Not for hire\.$/);
    expect(of({ purpose: 'instruction-for-hire', trainingWithin50Nm: known(true) })).toMatch(
      /Not privately\.$/,
    );
  });

  test('alone it names no others; barred it is not told as if it stood', () => {
    expect(lines().filter(({ effect }) => effect === 'notes')).toEqual([]);
    for (const owed of [{ placardPlaced: false }, { determination: unknown('who determined it') }])
      expect(inWords(lines(owed))).toEqual([]);
  });

  // 91.213(e) stands in for the section and not for the record of work that was done (91.407(a)(2), 43.9).
  test('under a permit the record of the work is asked for by its own paragraph', () => {
    const use = { specialFlightPermit: permitOf() };
    const cites = (deferral: Partial<DeferralFacts>, of: Partial<UseOfAircraft>) =>
      lines(deferral, 'intercom', of)
        .filter(({ effect }) => effect === 'bars')
        .map(({ cite }) => cite);
    expect(cites({ method: 'removed' }, use)).toContain('14cfr43.9(a)');
    expect(cites({ method: 'removed' }, {})).not.toContain('14cfr43.9(a)');
    expect(cites({ method: 'removed', maintenanceRecordSigned: true }, use)).toEqual([]);
  });
});
