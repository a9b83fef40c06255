import { said } from '../said';

/**
 * What can be measured on a walkaround and in what unit. A measured value is a whole number of the smallest unit, never a
 * fraction: 0.031 in is 31 thousandths. Limits are NOT here: they differ by maker and belong to one aircraft, with
 * their source (see `StoredLimit` in `triage.ts`).
 */

interface UnitWords {
  /** What the screen prints after the number. */
  readonly label: string;
  /** Decimal places of the printed number; the stored integer is the number without its point. */
  readonly decimals: number;
}

export const MEASURE_UNITS = {
  'thousandth-inch': { label: 'in', decimals: 3 },
  'tenth-inch': { label: 'in', decimals: 1 },
  'thirty-second-inch': { label: '/32 in', decimals: 0 },
  'tenth-psi': { label: 'psi', decimals: 1 },
  'tenth-quart': { label: 'qt', decimals: 1 },
  'tenth-gallon': { label: 'US gal', decimals: 1 },
  degree: { label: 'degrees', decimals: 0 },
  'tenth-volt': { label: 'V', decimals: 1 },
  count: { label: 'times', decimals: 0 },
} as const satisfies Record<string, UnitWords>;
export type MeasureUnit = keyof typeof MEASURE_UNITS;

export interface Measurement {
  readonly key: string;
  readonly label: string;
  readonly unit: MeasureUnit;
  /** Step of the input, in the smallest unit; 1 when left out. */
  readonly step?: number;
}

/** All measurements by key. A stored limit of an aircraft names one of these keys. */
export const MEASUREMENTS = {
  'propeller-nick-depth': { label: said('Depth of the nick'), unit: 'thousandth-inch' },
  'propeller-nick-width': { label: said('Width of the nick'), unit: 'thousandth-inch' },
  'propeller-nick-length': { label: said('Length of the nick'), unit: 'thousandth-inch' },
  'propeller-nick-from-tip': { label: said('Distance from the blade tip'), unit: 'tenth-inch', step: 5 },
  'main-tyre-tread': { label: said('Least tread, main tyre'), unit: 'thirty-second-inch' },
  'nose-tyre-tread': { label: said('Least tread, nose tyre'), unit: 'thirty-second-inch' },
  'main-tyre-pressure': { label: said('Pressure, main tyre'), unit: 'tenth-psi', step: 5 },
  'nose-tyre-pressure': { label: said('Pressure, nose tyre'), unit: 'tenth-psi', step: 5 },
  'tyre-cut-length': { label: said('Length of the cut'), unit: 'thousandth-inch', step: 5 },
  'tyre-cut-depth': {
    label: said('Depth of the cut (never probe it inflated)'),
    unit: 'thousandth-inch',
    step: 5,
  },
  'tyre-slip': { label: said('Slip between tyre and wheel mark'), unit: 'thousandth-inch', step: 5 },
  'nose-strut-extension': { label: said('Nose strut piston showing'), unit: 'tenth-inch' },
  'brake-pad-thickness': { label: said('Pad thickness'), unit: 'thousandth-inch', step: 5 },
  'oil-quantity': { label: said('Oil on the dipstick'), unit: 'tenth-quart', step: 5 },
  'fuel-in-left-tank': { label: said('Fuel in the left tank'), unit: 'tenth-gallon', step: 5 },
  'fuel-in-right-tank': { label: said('Fuel in the right tank'), unit: 'tenth-gallon', step: 5 },
  'flap-angle': { label: said('Flaps, full down'), unit: 'degree' },
  'battery-voltage': { label: said('Battery, no load'), unit: 'tenth-volt' },
  'trim-tab-play': { label: said('Play at the tab trailing edge'), unit: 'thousandth-inch', step: 5 },
  'skin-dent-depth': { label: said('Depth of the dent'), unit: 'thousandth-inch', step: 5 },
  'skin-dent-width': { label: said('Width of the dent'), unit: 'thousandth-inch', step: 10 },
  'fuel-sample-repeats': { label: said('Samples taken at this drain'), unit: 'count' },
} as const satisfies Record<string, Omit<Measurement, 'key'>>;
export type MeasurementKey = keyof typeof MEASUREMENTS;

/** The measurement of a key; null for a key that is not in the table. */
export function measurementOf(key: string): Measurement | null {
  if (!Object.hasOwn(MEASUREMENTS, key)) return null;
  return { key, ...MEASUREMENTS[key as MeasurementKey] };
}

/** The digits of a stored integer, as somebody would type them, without the unit: 31 thousandths is "0.031". */
export function digitsOf(value: number, unit: MeasureUnit): string {
  const { decimals } = MEASURE_UNITS[unit];
  const sign = value < 0 ? '-' : '';
  const digits = String(Math.abs(value)).padStart(decimals + 1, '0');
  return decimals === 0
    ? `${sign}${digits}`
    : `${sign}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

/** Prints a stored integer: 31 thousandths is "0.031 in", 3 thirty-seconds is "3/32 in". Whole numbers only. */
export function sayMeasured(value: number, unit: MeasureUnit): string {
  const { label } = MEASURE_UNITS[unit];
  return `${digitsOf(value, unit)}${label.startsWith('/') ? '' : ' '}${label}`;
}

/** Prints the bounds of a limit: "least 5.0 qt, most 7.0 qt", or the one there is. */
export const sayBounds = (
  { min, max }: { readonly min: number | null; readonly max: number | null },
  unit: MeasureUnit,
): string =>
  [
    min === null ? null : `least ${sayMeasured(min, unit)}`,
    max === null ? null : `most ${sayMeasured(max, unit)}`,
  ]
    .filter((part) => part !== null)
    .join(', ');
