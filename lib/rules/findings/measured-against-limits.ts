import type { CalendarDate } from '../facts';
import type { Line } from '../verdict';
import type { CatalogueFinding } from './finding';
import { measurementOf, sayBounds, sayMeasured, type Measurement } from './measurements';

/**
 * A limit somebody stored for one aircraft, from its maker's data. There is no limit for all aircraft: one maker's figure
 * is no FAA limit. Values are whole numbers of the smallest unit of the measurement; a border value is within.
 */
export interface StoredLimit {
  /** The finding beside which it was stored; for showing only. A measurement means one thing wherever it is taken. */
  readonly findingKey?: string | null;
  /** Key of `MEASUREMENTS`. */
  readonly measurement: string;
  /** Must be the unit of that measurement, or the limit judges nothing. */
  readonly unit: string;
  readonly min: number | null;
  readonly max: number | null;
  /** Manual and chapter. Blank: the limit judges nothing. */
  readonly source: string;
  readonly revision?: string | null;
  readonly sourceDate: CalendarDate | null;
}

/** Whole numbers of the smallest unit by measurement key. */
export type Measured = Readonly<Record<string, number>>;

export interface MeasuredVerdict {
  /** `none`: nothing was measured that could be judged. */
  readonly result: 'none' | 'within' | 'outside' | 'undecided';
  /** What is missing, when undecided. */
  readonly missing: string | null;
  readonly lines: readonly Line[];
}

/** Whether a limit can judge: in the measurement's own unit, with a bound in whole numbers, and with its source. */
export const isUsableLimit = (limit: StoredLimit, measurement: Measurement): boolean =>
  limit.unit === measurement.unit &&
  limit.source.trim() !== '' &&
  (limit.min !== null || limit.max !== null) &&
  [limit.min, limit.max].every((bound) => bound === null || Number.isInteger(bound));

const sourceOf = (limit: StoredLimit): string =>
  [limit.source.trim(), limit.revision ? `revision ${limit.revision}` : null, limit.sourceDate ?? 'undated']
    .filter((part) => part !== null)
    .join(', ');

/** One value against one usable limit. Exactly on the limit is within. */
export function judgeAgainstLimit(value: number, limit: StoredLimit, { label, unit }: Measurement): Line {
  const said = `${label}: ${sayMeasured(value, unit)}`;
  const source = sourceOf(limit);
  if (limit.min !== null && value < limit.min)
    return {
      effect: 'bars',
      cite: '14cfr91.405(a)',
      because: `${said} is under the least allowed, ${sayMeasured(limit.min, unit)} (${source}).`,
    };
  if (limit.max !== null && value > limit.max)
    return {
      effect: 'bars',
      cite: '14cfr91.405(a)',
      because: `${said} is over the most allowed, ${sayMeasured(limit.max, unit)} (${source}).`,
    };
  return {
    effect: 'supports',
    cite: '14cfr91.405(a)',
    because: `${said} is within the stored limit: ${sayBounds(limit, unit)} (${source}).`,
  };
}

/**
 * Judges what was measured for a finding. One value outside any limit decides. Else a value without a usable limit, a
 * value that is no whole number, or a needed measurement not taken leaves it undecided. Only then is it within.
 */
export function judgeMeasured(
  finding: CatalogueFinding,
  measured: Measured,
  limits: readonly StoredLimit[],
): MeasuredVerdict {
  const lines: Line[] = [];
  const open: string[] = [];
  const notTaken: string[] = [];
  let judged = 0;
  for (const { key, role } of finding.measurements) {
    const measurement = measurementOf(key);
    if (!measurement) continue;
    const value = Object.hasOwn(measured, key) ? measured[key] : undefined;
    if (value === undefined) {
      if (role === 'needed') notTaken.push(`${measurement.label.toLowerCase()} (not measured)`);
      continue;
    }
    if (!Number.isInteger(value) || value < 0) {
      open.push(`${measurement.label.toLowerCase()} as a whole number of the smallest unit`);
      continue;
    }
    if (role === 'described') {
      const because = `${measurement.label}: ${sayMeasured(value, measurement.unit)}. Recorded, not judged.`;
      lines.push({ effect: 'notes', cite: '14cfr91.405(a)', because });
      continue;
    }
    const stored = limits.filter((limit) => limit.measurement === key);
    if (stored.length === 0 || !stored.every((limit) => isUsableLimit(limit, measurement)))
      open.push(`a limit with its source for ${measurement.label.toLowerCase()} of this aircraft`);
    const usable = stored.filter((limit) => isUsableLimit(limit, measurement));
    if (usable.length > 0) judged += 1;
    lines.push(...usable.map((limit) => judgeAgainstLimit(value, limit, measurement)));
  }
  if (lines.some((line) => line.effect === 'bars')) return { result: 'outside', missing: null, lines };
  const missing = [...open, ...(judged > 0 ? notTaken : [])];
  if (missing.length > 0) return { result: 'undecided', missing: missing.join('; '), lines };
  return { result: judged > 0 ? 'within' : 'none', missing: null, lines };
}
