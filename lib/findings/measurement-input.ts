/**
 * Reads a measurement as somebody types it on the ramp and gives the whole number of the smallest unit that is stored
 * ("0.031" in thousandths of an inch is 31). The digits are moved, never calculated: no floating point is involved.
 * The way back is `digitsOf`, and for showing with its unit `sayMeasured`, in lib/rules/findings/measurements.ts.
 */
import { MEASURE_UNITS, type MeasureUnit } from '../rules/findings/measurements';

export type MeasurementRead =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly say: string };

/** The largest stored value; more is a slip of the finger. The service refuses it too. */
const MOST = 1_000_000;

/** Digits with at most one point or comma: ".5", "5", "5.", "0,031". No sign: nothing measured here can be negative. */
const TYPED = /^(?:(\d+)[.,]?(\d*)|[.,](\d+))$/;

/** "1,200" is twelve hundred to one reader and one and a fifth to another. */
const THOUSANDS_OR_DECIMALS = /^0*[1-9]\d*,\d{3}$/;

/**
 * Reads `text` in the unit as the screen prints it. Refuses words, signs, a value finer than the unit (which way to round
 * is for the person with the gauge in hand), and a value no aircraft has. "3/32" is taken for thirty-seconds.
 */
export function readMeasurement(text: string, unit: MeasureUnit): MeasurementRead {
  const { label, decimals } = MEASURE_UNITS[unit];
  const typed = withoutUnit(text.trim(), label);
  if (THOUSANDS_OR_DECIMALS.test(typed)) return refuse(`Write ${typed} with a point, or without the comma.`);
  const match = TYPED.exec(typed);
  if (!match) return refuse(`Enter a number in ${inWords(label)}, like ${example(decimals)}.`);
  const whole = match[1] ?? '0';
  const fraction = (match[2] ?? match[3] ?? '').replace(/0+$/, '');
  if (fraction.length > decimals) {
    return refuse(
      decimals === 0
        ? `A whole number in ${inWords(label)}, please.`
        : `No finer than ${example(decimals, '1')} ${label}, please.`,
    );
  }
  const value = Number.parseInt(`${whole}${fraction.padEnd(decimals, '0')}`, 10);
  if (!Number.isSafeInteger(value) || value > MOST) return refuse('This number is too large to be right.');
  return { ok: true, value };
}

const refuse = (say: string): MeasurementRead => ({ ok: false, say });

/** People type the unit along with the number; it is printed behind the box anyway. */
const withoutUnit = (typed: string, label: string): string =>
  typed.endsWith(label) ? typed.slice(0, -label.length).trim() : typed;

const inWords = (label: string): string => (label === '/32 in' ? 'thirty-seconds of an inch' : label);

/** A number with so many decimals: "0.031" for three. */
function example(decimals: number, last = '4'): string {
  return decimals === 0 ? last : `0.${last.padStart(decimals, '0')}`;
}
