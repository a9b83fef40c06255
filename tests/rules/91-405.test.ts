import { describe, expect, test } from 'vitest';
import { known, unknown } from '../../lib/rules/facts';
import {
  dispositionAtInspections,
  nextRequiredInspection,
  repairBetweenInspections,
} from '../../lib/rules/part-91/91-405-maintenance-required';
import { deferralOf, discrepancyOf, requirementRow, trainer, useOf } from '../fixtures/aircraft';

describe('91.405(a): repaired between inspections', () => {
  const nick = discrepancyOf({ kind: 'damage', title: 'Nick in propeller', equipmentId: null });
  const found = {
    by: 'T. Marrow',
    on: '2026-11-24',
    limit: 'depth 0.020 in, limit 0.031 in',
    source: 'propeller manual',
  };

  test('bars while nobody has found it within limits', () => {
    expect(repairBetweenInspections(nick)).toMatchObject([{ effect: 'bars', cite: '14cfr91.405(a)' }]);
  });

  test('a finding within a sourced limit is a note that says who, what and where', () => {
    const [line] = repairBetweenInspections({ ...nick, withinLimits: found });
    expect(line).toMatchObject({ effect: 'notes' });
    expect(line?.because).toContain('found within limits by T. Marrow');
    expect(line?.because).toContain('propeller manual');
  });

  test.each(['by', 'limit', 'source'] as const)('bars when the finding leaves out: %s', (field) => {
    const withinLimits = { ...found, [field]: ' ' };
    expect(repairBetweenInspections({ ...nick, withinLimits })).toMatchObject([{ effect: 'bars' }]);
  });
});

// 91.405(c), and the Chief Counsel letter of 13 June 2018 as told by AOPA (start of the page read).
describe('91.405(c): at the next required inspection', () => {
  const d = discrepancyOf();
  const inspection = { name: '100-hour inspection', on: '2026-11-24' } as const;

  test('no inspection since: nothing to say', () => {
    expect(dispositionAtInspections(d, deferralOf())).toEqual([]);
  });

  test('an inspection without a word on the item bars', () => {
    const deferral = deferralOf({ inspectionsSince: [{ ...inspection, disposition: null }] });
    expect(dispositionAtInspections(d, deferral)).toMatchObject([{ effect: 'bars', cite: '14cfr91.405(c)' }]);
  });

  test('inspected supports, under the letter of 2018, and says it is a reading', () => {
    const deferral = deferralOf({ inspectionsSince: [{ ...inspection, disposition: 'inspected' }] });
    const [line] = dispositionAtInspections(d, deferral);
    expect(line).toMatchObject({ effect: 'supports', cite: 'counsel-letter-2018' });
    expect(line?.strictReading).toContain('2018');
  });

  test('each inspection needs its own word', () => {
    const deferral = deferralOf({
      inspectionsSince: [
        { ...inspection, disposition: 'inspected' },
        { ...inspection, on: '2026-11-25', disposition: null },
      ],
    });
    expect(dispositionAtInspections(d, deferral).map((line) => line.effect)).toEqual(['supports', 'bars']);
  });
});

// 91.405(c) with 91.409(a), (b): annual of 10 March 2026 runs through 31 March 2027, 100-hour of 4460.0 h to 4560.0 h.
describe('the next required inspection', () => {
  test('annual or 100-hour, where the aircraft is kept on both', () => {
    expect(nextRequiredInspection(trainer(), 'any')).toEqual({
      name: 'annual or 100-hour inspection, whichever is first',
      dueOn: '2027-03-31',
      dueTenths: 45600,
      missing: null,
    });
  });

  test('annual alone for an aircraft without a 100-hour row', () => {
    const aircraft = trainer({
      requirements: [requirementRow('annual', 'Annual inspection', '2026-03-10', 43820)],
    });
    expect(nextRequiredInspection(aircraft, 'any')).toEqual({
      name: 'annual inspection',
      dueOn: '2027-03-31',
      dueTenths: null,
      missing: null,
    });
  });

  test('a private use needs the annual only, unless the aircraft may be a part 141 one', () => {
    expect(nextRequiredInspection(trainer(), useOf()).dueTenths).toBeNull();
    expect(nextRequiredInspection(trainer({ part141: known(true) }), useOf()).dueTenths).toBe(45600);
    expect(nextRequiredInspection(trainer({ part141: unknown('part 141') }), useOf()).dueTenths).toBe(45600);
    expect(nextRequiredInspection(trainer(), useOf({ purpose: 'instruction-for-hire' })).dueTenths).toBe(
      45600,
    );
  });

  test('names what is missing', () => {
    const requirements = [
      requirementRow('annual', 'Annual inspection', '2026-03-10', 43820, {
        lastDone: unknown('the last annual'),
      }),
    ];
    expect(nextRequiredInspection(trainer({ requirements }), 'any')).toMatchObject({
      dueOn: null,
      missing: 'the last annual',
    });
    expect(nextRequiredInspection(trainer({ requirements: [] }), 'any').missing).toContain('annual');
  });
});
