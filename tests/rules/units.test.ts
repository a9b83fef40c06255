import { convert } from 'convert';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MEASURE_UNITS, type MeasureUnit } from '@/lib/rules/findings/measurements';
import { inMetric, isConvertible, type StoredUnit } from '@/lib/units/exact';
import { aboutMetric, sayBoundsInUnits, sayInUnits, sayWeight, unitsOf } from '@/lib/units/say';

/**
 * Units. Outside references: the library `convert` (its own factors, floating point), and the exact definitions of NIST SP 811
 * appendix B (from memory, no copy read): 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 US gal = 3.785411784 L.
 */

/** The same by the library: the stored number in the unit it counts, converted. */
const BY_LIBRARY: Readonly<Record<StoredUnit, { to: (value: number) => number; decimals: number }>> = {
  'thousandth-inch': { to: (value) => convert(value / 1000, 'inches').to('mm'), decimals: 2 },
  'tenth-inch': { to: (value) => convert(value / 10, 'inches').to('mm'), decimals: 0 },
  'thirty-second-inch': { to: (value) => convert(value / 32, 'inches').to('mm'), decimals: 1 },
  'tenth-psi': { to: (value) => convert(value / 10, 'psi').to('kPa'), decimals: 0 },
  'tenth-quart': { to: (value) => convert(value / 10, 'US liquid quarts').to('liters'), decimals: 1 },
  'tenth-gallon': { to: (value) => convert(value / 10, 'US liquid gallons').to('liters'), decimals: 1 },
  pound: { to: (value) => convert(value, 'pounds').to('kg'), decimals: 0 },
  'degree-fahrenheit': { to: (value) => convert(value, 'fahrenheit').to('celsius'), decimals: 0 },
};
const UNITS = Object.keys(BY_LIBRARY) as StoredUnit[];

describe('against the library', () => {
  it.each(UNITS)('%s: the nearest digit shown, for whatever is stored', (unit) => {
    const { to, decimals } = BY_LIBRARY[unit];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (value) => {
        const [digits = ''] = inMetric(value, unit).split(' ');
        expect(digits.split('.')[1]?.length ?? 0).toBe(decimals);
        // Half a digit; and the library's psi has seven digits only.
        const slack = 0.5 * 10 ** -decimals + Math.abs(to(value)) * 1e-7 + 1e-9;
        expect(Math.abs(Number(digits) - to(value))).toBeLessThanOrEqual(slack);
      }),
    );
  });
});

describe('published factors', () => {
  it.each<[number, StoredUnit, string]>([
    [1000, 'thousandth-inch', '25.40 mm'],
    [100_000_000, 'pound', '45359237 kg'],
    [10_000_000_000, 'tenth-gallon', '3785411784.0 L'],
    [40, 'tenth-quart', '3.8 L'],
    // Freezing and boiling of water, and where the two scales meet.
    [32, 'degree-fahrenheit', '0 °C'],
    [212, 'degree-fahrenheit', '100 °C'],
    [-40, 'degree-fahrenheit', '-40 °C'],
    // 14.7 psi is the usual word for one atmosphere, 101.325 kPa.
    [147, 'tenth-psi', '101 kPa'],
  ])('%i of %s is %s', (value, unit, said) => {
    expect(inMetric(value, unit)).toBe(said);
  });

  // 0.025 in is 0.635 mm exactly: half of the last digit goes up.
  it.each<[number, StoredUnit, string]>([
    [1, 'thousandth-inch', '0.03 mm'],
    [0, 'thousandth-inch', '0.00 mm'],
    [24, 'thousandth-inch', '0.61 mm'],
    [25, 'thousandth-inch', '0.64 mm'],
    [26, 'thousandth-inch', '0.66 mm'],
    [3, 'thirty-second-inch', '2.4 mm'],
    [5, 'thirty-second-inch', '4.0 mm'],
    [70, 'tenth-quart', '6.6 L'],
    [2450, 'pound', '1111 kg'],
    [12_500, 'pound', '5670 kg'],
    [290, 'tenth-psi', '200 kPa'],
  ])('%i of %s is said as %s', (value, unit, said) => {
    expect(inMetric(value, unit)).toBe(said);
  });

  // 31 F is -0.56, 33 F is 0.56.
  it.each([
    [31, '-1 °C'],
    [32, '0 °C'],
    [33, '1 °C'],
  ])('around freezing: %i F is %s', (value, said) => {
    expect(inMetric(value, 'degree-fahrenheit')).toBe(said);
  });

  it('refuses what is not a whole number', () => {
    for (const value of [0.5, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => inMetric(value, 'pound')).toThrow(RangeError);
    }
  });
});

describe('what is said', () => {
  it('is the stored value for US customary units, also where nobody has chosen', () => {
    expect(sayInUnits(70, 'tenth-quart', 'us-customary')).toBe('7.0 qt');
    expect(sayInUnits(70, 'tenth-quart', undefined)).toBe('7.0 qt');
    expect(sayWeight(2450, undefined)).toBe('2450 lb');
  });

  it('is "about" in metric, with the stored value beside it, and a limit keeps its own unit first', () => {
    expect(sayInUnits(70, 'tenth-quart', 'metric')).toBe('about 6.6 L (7.0 qt)');
    expect(sayWeight(2450, 'metric')).toBe('about 1111 kg (2450 lb)');
    expect(sayBoundsInUnits({ min: 50, max: 80 }, 'tenth-quart', 'metric')).toBe(
      'least 5.0 qt, most 8.0 qt (about 4.7 L to about 7.6 L)',
    );
    expect(sayBoundsInUnits({ min: null, max: 31 }, 'thousandth-inch', 'metric')).toBe(
      'most 0.031 in (about 0.79 mm)',
    );
  });

  it('leaves alone what has no other unit: angles, volts, counts', () => {
    const left = (Object.keys(MEASURE_UNITS) as MeasureUnit[]).filter((unit) => !isConvertible(unit));
    expect(left).toEqual(['degree', 'tenth-volt', 'count']);
    expect(sayInUnits(30, 'degree', 'metric')).toBe('30 degrees');
    expect(aboutMetric(30, 'degree', 'metric')).toBeNull();
  });

  it.each([
    ['metric', 'us-customary', 'metric'],
    ['us-customary', 'metric', 'us-customary'],
    [null, 'metric', 'metric'],
    [null, null, 'us-customary'],
    [undefined, undefined, 'us-customary'],
  ] as const)('person %s, operator %s: %s', (person, operator, units) => {
    expect(unitsOf(person, operator)).toBe(units);
  });
});
