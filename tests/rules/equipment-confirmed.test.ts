/**
 * Equipment nobody has confirmed against the aircraft's own documents. Sources: issue 6 ("before the engine trusts them"); 91.205(a) and
 * 91.213(d)(2) for what is judged by the list; who confirms it is a house caution, no source.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AircraftFacts, EquipmentFunction } from '../../lib/rules/aircraft';
import { answerForUse } from '../../lib/rules/answer';
import { barsToEnding } from '../../lib/rules/end-of-requirement';
import { operativeCount } from '../../lib/rules/equipment-check';
import { checkEquipmentConfirmed } from '../../lib/rules/equipment-confirmed';
import { known, unknown } from '../../lib/rules/facts';
import { OPERATION_KINDS } from '../../lib/rules/operations';
import { isOutOfUse } from '../../lib/rules/out-of-use';
import { deferralEligibility } from '../../lib/rules/part-91/91-213-deferral-eligibility';
import { isRegistrationNumber } from '../../lib/rules/part-47/47-15-registration-number';
import { LAW } from '../../lib/rules/law';
import { jascCode } from '../../lib/rules/jasc';
import { demandsOn } from '../../lib/rules/equipment-check';
import { linesOfSets, typeForSet } from '../../lib/equipment/lines-of-set';
import { SET_NAMES, STARTING_SETS } from '../../lib/equipment/starting-sets';
import { referenceUse } from '../../lib/rules/use-of-flight';
import {
  deferralOf,
  equipmentRow,
  permitOf,
  TODAY,
  trainer,
  trainerType,
  useOf,
  withBroken,
  withEquipment,
  withRow,
  REFERENCE,
} from '../fixtures/aircraft';
import { aircraftArbitrary } from '../fixtures/arbitrary-aircraft';

const NOW = '2026-11-25T15:00:00Z';
const MISSING = 'nobody has confirmed it against its own documents';
const doubted = (aircraft: AircraftFacts, fn: EquipmentFunction): AircraftFacts =>
  withRow(aircraft, fn, { confirmed: unknown(MISSING) });
const outcome = (aircraft: AircraftFacts, kind = OPERATION_KINDS[0]!) =>
  answerForUse(aircraft, referenceUse(kind, REFERENCE, TODAY, NOW)).outcome;

describe('an unconfirmed item', () => {
  it.each([
    ['none', trainer(), 0],
    ['one', doubted(trainer(), 'taxi-light'), 1],
    ['two', doubted(doubted(trainer(), 'taxi-light'), 'clock'), 2],
  ])('%s of them: so many bars, each naming what is missing', (_words, aircraft, count) => {
    const lines = checkEquipmentConfirmed(aircraft);
    expect(lines).toHaveLength(count);
    for (const line of lines) {
      expect(line).toMatchObject({ effect: 'bars', missing: MISSING, about: { kind: 'equipment' } });
    }
  });

  it('bars every kind of operation, also where no paragraph asks for it', () => {
    for (const kind of OPERATION_KINDS) {
      expect(outcome(trainer(), kind)).not.toBe('no-go');
      expect(outcome(doubted(trainer(), 'taxi-light'), kind)).toBe('no-go');
    }
  });

  it('is said once, not once more by every paragraph that asks for it', () => {
    const { lines } = answerForUse(doubted(trainer(), 'altimeter'), useOf());
    expect(lines.filter(({ missing }) => missing === MISSING)).toHaveLength(1);
    expect(lines.some(({ effect, cite }) => effect === 'supports' && cite === '14cfr91.205(b)')).toBe(false);
  });

  it('never counts as present, and raises what must work as before', () => {
    const two = withEquipment(
      trainer(),
      equipmentRow('position-lights', 'Tail light', '3340', { id: 'tail', confirmed: unknown(MISSING) }),
    );
    expect(operativeCount(two, 'position-lights')).toMatchObject({ installed: 4, operative: known(3) });
  });

  it('is not lifted by a special flight permit that names it', () => {
    const aircraft = doubted(trainer(), 'taxi-light');
    const permit = permitOf({ covers: ['taxi-light'], limits: ['Direct.'] });
    const { outcome: answer } = answerForUse(aircraft, useOf({ specialFlightPermit: permit }));
    expect(answer).toBe('no-go');
  });

  it('cannot be deferred, and a deferral on it does not take it out of use', () => {
    const broken = withBroken(trainer(), 'taxi-light', { deferral: null });
    const eligible = (aircraft: AircraftFacts) =>
      deferralEligibility(aircraft, aircraft.discrepancies[0]!, REFERENCE, TODAY, NOW);
    expect(eligible(broken).deferrable).toBe(true);
    const report = eligible(doubted(broken, 'taxi-light'));
    expect(report).toMatchObject({ path: 'closed', deferrable: false, stepsOwed: [] });
    expect(report.gate.map(({ missing }) => missing)).toContain(MISSING);

    const deferred = withBroken(trainer(), 'transponder', { deferral: deferralOf() });
    expect(isOutOfUse(deferred, 'transponder')).toBe(true);
    expect(isOutOfUse(doubted(deferred, 'transponder'), 'transponder')).toBe(false);
  });

  it('with none installed does not end the test of what is gone', () => {
    const row = { name: 'Transponder', function: 'transponder', installed: 0 } as const;
    expect(barsToEnding('transponder', [{ ...row, confirmed: known(true) }])).toEqual([]);
    expect(barsToEnding('transponder', [{ ...row, confirmed: unknown(MISSING) }])).toMatchObject([
      { effect: 'bars', missing: MISSING },
    ]);
  });
});

describe('for every aircraft', () => {
  const doubts = fc.record({ aircraft: aircraftArbitrary, pick: fc.nat(), kind: fc.nat({ max: 7 }) });

  it('taking a confirmation away never turns no go into go, and always bars', () => {
    fc.assert(
      fc.property(doubts, ({ aircraft, pick, kind }) => {
        const row = aircraft.equipment[pick % aircraft.equipment.length]!;
        expect(outcome(doubted(aircraft, row.function), OPERATION_KINDS[kind])).toBe('no-go');
      }),
      { numRuns: 200 },
    );
  });

  it('no go stays no go whatever is confirmed, when it was no go with all of it confirmed', () => {
    fc.assert(
      fc.property(doubts, ({ aircraft, pick, kind }) => {
        const all = outcome(aircraft, OPERATION_KINDS[kind]);
        fc.pre(all === 'no-go');
        const some = doubted(aircraft, aircraft.equipment[pick % aircraft.equipment.length]!.function);
        expect(outcome(some, OPERATION_KINDS[kind])).toBe('no-go');
      }),
      { numRuns: 200 },
    );
  });

  it('taking a confirmation away opens no kind of operation to a deferral', () => {
    fc.assert(
      fc.property(doubts, ({ aircraft, pick }) => {
        const row = aircraft.equipment[pick % aircraft.equipment.length]!;
        const less = doubted(aircraft, row.function);
        for (const d of aircraft.discrepancies) {
          const before = deferralEligibility(aircraft, d, REFERENCE, TODAY, NOW).table;
          const after = deferralEligibility(less, d, REFERENCE, TODAY, NOW).table;
          after.forEach(({ allowed }, index) => expect(allowed && !before[index]!.allowed).toBe(false));
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe('the starting sets', () => {
  const items = SET_NAMES.flatMap((name) => STARTING_SETS[name]);

  it('name only paragraphs of the registry and codes of the table', () => {
    for (const { cites, jasc } of items) {
      for (const cite of cites) expect(LAW).toHaveProperty([cite]);
      expect({ jasc, known: jascCode(jasc).known }).toEqual({ jasc, known: true });
    }
  });

  it('leave nothing out that part 91 demands of a generic single, flotation for hire over water apart', () => {
    // Source: 91.205(b), (c), (d), 91.207, 91.209, 91.215, 91.225 as the engine itself reads them.
    const type = trainerType({ retractableGear: known(true), altitudeEngine: known(true) });
    const aircraft = trainer({ type });
    const uses = OPERATION_KINDS.flatMap((kind) =>
      [true, false].map((vor) => ({
        ...referenceUse(kind, REFERENCE, TODAY, NOW),
        usesVor: known(vor),
        transponderAirspace: known(true),
        adsbAirspace: known(true),
      })),
    );
    const demanded = new Set(
      uses.flatMap((use) => demandsOn(aircraft, use)).map((demand) => demand.function),
    );
    const lines = linesOfSets(SET_NAMES, typeForSet(type), []);
    const missing = [...demanded].filter((fn) => !lines.some((line) => line.function === fn));
    expect(missing.filter((fn) => fn !== 'flotation-and-signal')).toEqual([]);
  });

  it.each([
    [known(1), 1],
    [known(2), 2],
    [known(3), 3],
    [unknown('the number of fuel tanks'), 1],
  ])('count by the type: %o tanks, %i gauges', (fuelTanks, gauges) => {
    const lines = linesOfSets(['day-vfr'], typeForSet(trainerType({ fuelTanks })), []);
    expect(lines.find((line) => line.function === 'fuel-quantity-gauge')).toMatchObject({
      installed: gauges,
      requiredDayVfr: gauges,
    });
  });

  it('say of nothing that it is not type design: only the documents do', () => {
    expect(items.some(({ vfrDayTypeDesign }) => (vfrDayTypeDesign as boolean | null) === false)).toBe(false);
  });
});

/** 47.15 (from memory): up to five symbols after N; digits, then at most two letters; no I, no O. */
describe('the form of a registration', () => {
  it.each([
    ['N1', true],
    ['N12345', true],
    ['N123456', false],
    ['N1234A', true],
    ['N12345A', false],
    ['N123AB', true],
    ['N1234AB', false],
    ['N041QB', true],
    ['N', false],
    ['NA', false],
    ['N12I', false],
    ['N12O', false],
    ['N12ABC', false],
    ['n12', false],
    // Nothing before it and nothing after it.
    ['XN12', false],
    ['N12 ', false],
    ['N12-', false],
  ])('%s: %s', (mark, fits) => {
    expect(isRegistrationNumber(mark)).toBe(fits);
  });
});
