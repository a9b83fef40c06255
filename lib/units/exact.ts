/**
 * US customary to metric, by exact factors and whole numbers only: integers in, plain text out, no floating point. Small enough
 * to travel to the phone; `tests/rules/units.test.ts` holds it against the library `convert` and the published factors.
 *
 * A converted value is only for reading and is always called "about": what is stored, and what limits and rules judge, is the
 * whole number in its own unit. Distances in nautical miles, altitudes in feet and hours stay as aviation has them.
 *
 * Factors (NIST SP 811 appendix B.8, those marked exact; from memory, no copy read): 1 in = 25.4 mm, 1 lb = 0.45359237 kg,
 * 1 US gal = 231 cubic inches = 3.785411784 L, 1 qt = a quarter of it. 1 psi = 1 lbf/in2 with standard gravity 9.80665 m/s2,
 * which is 6894.757 Pa. Fahrenheit: (F - 32) x 5/9.
 */

/** The unit a whole number is stored in. */
export type StoredUnit =
  | 'thousandth-inch'
  | 'tenth-inch'
  | 'thirty-second-inch'
  | 'tenth-psi'
  | 'tenth-quart'
  | 'tenth-gallon'
  | 'pound'
  | 'degree-fahrenheit';

interface Factor {
  /** One stored unit is `over` / `under` of the metric one, before `shift`. */
  readonly over: bigint;
  readonly under: bigint;
  /** Taken off the stored number first. */
  readonly shift?: bigint;
  readonly label: string;
  /** Decimals that are shown: about as fine as what is stored, never finer. */
  readonly decimals: number;
}

const FACTORS: Readonly<Record<StoredUnit, Factor>> = {
  'thousandth-inch': { over: 254n, under: 10_000n, label: 'mm', decimals: 2 },
  'tenth-inch': { over: 254n, under: 100n, label: 'mm', decimals: 0 },
  'thirty-second-inch': { over: 254n, under: 320n, label: 'mm', decimals: 1 },
  'tenth-psi': { over: 44_482_216_152_605n, under: 64_516_000_000_000n, label: 'kPa', decimals: 0 },
  'tenth-quart': { over: 946_352_946n, under: 10_000_000_000n, label: 'L', decimals: 1 },
  'tenth-gallon': { over: 3_785_411_784n, under: 10_000_000_000n, label: 'L', decimals: 1 },
  pound: { over: 45_359_237n, under: 100_000_000n, label: 'kg', decimals: 0 },
  'degree-fahrenheit': { over: 5n, under: 9n, shift: 32n, label: '°C', decimals: 0 },
};

/** Whether a stored unit has a metric counterpart; degrees of angle, volts and counts have none. */
export const isConvertible = (unit: string): unit is StoredUnit => Object.hasOwn(FACTORS, unit);

/**
 * A stored whole number in metric, without "about": 70 tenths of a quart is "6.6 L". Rounded to the nearest digit shown, half
 * away from zero. Refuses (RangeError) what is not a whole number.
 */
export function inMetric(value: number, unit: StoredUnit): string {
  if (!Number.isSafeInteger(value)) throw new RangeError(`Not a whole number: ${value}`);
  const { over, under, shift = 0n, label, decimals } = FACTORS[unit];
  const tens = 10n ** BigInt(decimals);
  const exact = (BigInt(value) - shift) * over * tens;
  const size = exact < 0n ? -exact : exact;
  const rounded = (2n * size + under) / (2n * under);
  const digits = String(rounded).padStart(decimals + 1, '0');
  const text = decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
  return `${exact < 0n && rounded > 0n ? '-' : ''}${text} ${label}`;
}
