/** How a stored quantity is said in the units somebody has chosen. Wording only: nothing is judged by a converted value. */
import { sayBounds, sayMeasured, type MeasureUnit } from '../rules/findings/measurements';
import { inMetric, isConvertible, type StoredUnit } from './exact';

export const UNITS = ['us-customary', 'metric'] as const;
export type Units = (typeof UNITS)[number];

/** A person's choice, else the operator's, else US customary. */
export const unitsOf = (person: string | null | undefined, operator: string | null | undefined): Units =>
  (person ?? operator) === 'metric' ? 'metric' : 'us-customary';

/** "about 6.6 L" for a reader of metric units; null where the stored value is said as it is. */
export const aboutMetric = (value: number, unit: string, units: Units | undefined): string | null =>
  units === 'metric' && isConvertible(unit) ? `about ${inMetric(value, unit)}` : null;

/** "7.0 qt", or for a reader of metric units "about 6.6 L (7.0 qt)": the stored value always stands beside. */
export function sayInUnits(value: number, unit: MeasureUnit, units: Units | undefined): string {
  const stored = sayMeasured(value, unit);
  const about = aboutMetric(value, unit, units);
  return about === null ? stored : `${about} (${stored})`;
}

/** "least 5.0 qt, most 7.0 qt", with what that is about in metric behind it. The limit itself stays in its own unit. */
export function sayBoundsInUnits(
  limit: { readonly min: number | null; readonly max: number | null },
  unit: MeasureUnit,
  units: Units | undefined,
): string {
  const stored = sayBounds(limit, unit);
  const about = [limit.min, limit.max].flatMap((border) =>
    border === null ? [] : (aboutMetric(border, unit, units) ?? []),
  );
  return about.length === 0 ? stored : `${stored} (${about.join(' to ')})`;
}

/** "2450 lb", or "about 1111 kg (2450 lb)". */
export function sayWeight(pounds: number, units: Units | undefined): string {
  const about = aboutMetric(pounds, 'pound' satisfies StoredUnit, units);
  return about === null ? `${pounds} lb` : `${about} (${pounds} lb)`;
}
