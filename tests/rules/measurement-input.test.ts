import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readMeasurement } from '../../lib/findings/measurement-input';
import { MEASURE_UNITS, sayMeasured, type MeasureUnit } from '../../lib/rules/findings/measurements';

/** Source of the whole file: arithmetic of decimal digits; the units are our design (lib/rules/findings/measurements.ts). */
const UNITS = Object.keys(MEASURE_UNITS) as MeasureUnit[];
const read = (text: string, unit: MeasureUnit) => {
  const result = readMeasurement(text, unit);
  return result.ok ? result.value : null;
};

describe('a measurement as typed', () => {
  it.each<[string, MeasureUnit, number]>([
    ['0.031', 'thousandth-inch', 31],
    ['.031', 'thousandth-inch', 31],
    ['0,031', 'thousandth-inch', 31],
    ['0.03', 'thousandth-inch', 30],
    ['31,5', 'tenth-psi', 315],
    ['1', 'thousandth-inch', 1000],
    ['1.', 'thousandth-inch', 1000],
    ['0.0310', 'thousandth-inch', 31],
    ['0', 'thousandth-inch', 0],
    [' 0.031 in ', 'thousandth-inch', 31],
    // 1.1 * 1000 is 1100.0000000000002 in floating point; 0.57 * 100 is 56.99999999999999.
    ['1.1', 'thousandth-inch', 1100],
    ['0.57', 'thousandth-inch', 570],
    ['5.7', 'tenth-quart', 57],
    ['31.5', 'tenth-psi', 315],
    ['28.7 psi', 'tenth-psi', 287],
    ['3', 'thirty-second-inch', 3],
    ['3/32 in', 'thirty-second-inch', 3],
    ['4', 'count', 4],
    ['00012', 'count', 12],
  ])('%j in %s is %d', (text, unit, value) => {
    expect(read(text, unit)).toBe(value);
  });

  it.each<[string, MeasureUnit]>([
    ['', 'tenth-quart'],
    ['.', 'tenth-quart'],
    ['-1', 'tenth-quart'],
    ['+1', 'tenth-quart'],
    ['1e3', 'tenth-quart'],
    ['1.2.3', 'tenth-quart'],
    ['1,200.5', 'tenth-psi'],
    // Thousands or decimals: nobody can tell.
    ['1,200', 'tenth-psi'],
    ['1,250', 'thousandth-inch'],
    ['about 5', 'tenth-quart'],
    ['0x10', 'count'],
    ['٣', 'count'],
    ['2.5', 'count'],
    ['2.5', 'thirty-second-inch'],
    ['5 psi', 'tenth-quart'],
  ])('%j in %s is refused', (text, unit) => {
    const result = readMeasurement(text, unit);
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.say).toMatch(/\w/);
  });

  it('takes a value as fine as the unit and refuses one finer: it does not round', () => {
    expect(read('0.12', 'thousandth-inch')).toBe(120);
    expect(read('0.123', 'thousandth-inch')).toBe(123);
    expect(read('0.1234', 'thousandth-inch')).toBeNull();
  });

  it('takes up to a million of the smallest unit', () => {
    expect(read('999999', 'count')).toBe(999_999);
    expect(read('1000000', 'count')).toBe(1_000_000);
    expect(read('1000001', 'count')).toBeNull();
    expect(read('99999999999999999999', 'count')).toBeNull();
  });

  it('reads back everything that is printed', () => {
    fc.assert(
      fc.property(fc.constantFrom(...UNITS), fc.integer({ min: 0, max: 1_000_000 }), (unit, value) => {
        expect(read(sayMeasured(value, unit), unit)).toBe(value);
      }),
    );
  });
});
