/**
 * 14 CFR 91.171(b) and (c): the bearing errors that a VOR check allows. Whole tenths of a degree.
 *
 * - (b)(1): a test signal at the airport of departure: 4 degrees either way. (b)(2): a designated point on the surface
 *   there: 4. (b)(3): else a designated airborne point: 6. (b)(4): else on an airway over a prominent ground point: 6.
 * - (c): two systems, independent but for the antenna, against each other: 4 degrees between the two bearings.
 * - (d): the error is recorded, with date, place and signature; so a check without one does not count.
 */
import type { CiteId } from '../law';
import { barsForMissing, type Line } from '../verdict';

/** The ways of (b) and (c), in the order of preference of the text. */
export const VOR_METHODS = ['test-signal', 'surface-point', 'airborne-point', 'airway', 'dual'] as const;
export type VorMethod = (typeof VOR_METHODS)[number];

/** What each way allows, in tenths of a degree, and its paragraph. */
export const VOR_LIMITS: Readonly<
  Record<VorMethod, { readonly name: string; readonly tenths: number; readonly cite: CiteId }>
> = {
  'test-signal': { name: 'Test signal at the airport', tenths: 40, cite: '14cfr91.171(b)(1)' },
  'surface-point': { name: 'Designated point on the surface', tenths: 40, cite: '14cfr91.171(b)(2)' },
  'airborne-point': { name: 'Designated airborne point', tenths: 60, cite: '14cfr91.171(b)(3)' },
  airway: { name: 'On an airway over a ground point', tenths: 60, cite: '14cfr91.171(b)(4)' },
  dual: { name: 'Two receivers against each other', tenths: 40, cite: '14cfr91.171(c)' },
};

const DEGREES_TEXT = /^([-+\u2212]?)([0-9]{1,3})(?:\.([05]))?$/;

/** Reads "2", "-1.5", "+0.5" as tenths of a degree; half degrees at the finest, as a needle is read. Null for all else. */
export function parseDegrees(text: string): number | null {
  const match = DEGREES_TEXT.exec(text.trim());
  if (match === null) return null;
  const tenths = Number.parseInt(`${match[2] ?? ''}${match[3] ?? '0'}`, 10);
  return match[1] === '' || match[1] === '+' || tenths === 0 ? tenths : -tenths;
}

/** How far two bearings lie apart the short way round, tenths of a degree: 3590 and 20 are 30 apart. */
export function bearingsApart(one: number, other: number): number {
  const around = Math.abs(one - other) % 3600;
  return Math.min(around, 3600 - around);
}

/**
 * (b), (c): each error held against what the way allows; the limit itself is good. For `dual` the one error is how far the
 * two bearings lie apart. No error at all bars: (d) wants it recorded.
 */
export function checkBearingErrors(method: VorMethod, errorTenths: readonly number[]): readonly Line[] {
  const { name, tenths, cite } = VOR_LIMITS[method];
  if (errorTenths.length === 0) return [barsForMissing('14cfr91.171(d)', 'the bearing error')];
  return errorTenths.map((error) => {
    const degrees = (value: number) => `${value / 10} degrees`;
    const over = Math.abs(error) > tenths;
    const because = over
      ? `${name}: ${degrees(Math.abs(error))} off, and not more than ${degrees(tenths)} are allowed. Write it up.`
      : `${name}: ${degrees(Math.abs(error))} off, within ${degrees(tenths)}.`;
    return { effect: over ? 'bars' : 'supports', cite, because };
  });
}
