/**
 * A second, slow reading of the regulations, written from their text (../shared/regulations.md and the paragraphs that the
 * docstrings of lib/rules quote) and not from the code: it imports plain types and nothing else of lib. Where the text is
 * unsettled it follows the strict readings those docstrings name. See compare in tests/properties/reference.test.ts.
 *
 * This file: what the reading is written down on. Three-valued logic: `null` is not known.
 */
import type { Fact } from '@/lib/rules/facts';

export type Tri = boolean | null;

/** What a bar is about, as far as a special flight permit asks. */
export type About = {
  readonly kind: 'discrepancy' | 'requirement' | 'equipment' | 'none';
  readonly id: string;
};
export const nothing: About = { kind: 'none', id: '' };

export interface Bar {
  readonly cite: string;
  readonly about: About;
  /** It bars because a fact is not known: no permit stands in for that. */
  readonly unknown: boolean;
}

/** Everything said against a flight (bars) or around it (limits), by paragraph. */
export class Sheet {
  bars: Bar[] = [];
  limits: string[] = [];

  bar(cite: string, about: About = nothing): void {
    this.bars.push({ cite, about, unknown: false });
  }

  unknown(cite: string, about: About = nothing): void {
    this.bars.push({ cite, about, unknown: true });
  }

  limit(cite: string): void {
    this.limits.push(cite);
  }
}

export const valueOf = <T>(fact: Fact<T>): T | null => (fact.known ? fact.value : null);

export const tri = <T>(fact: Fact<T>, test: (value: T) => boolean): Tri =>
  fact.known ? test(fact.value) : null;

export function and(...parts: readonly Tri[]): Tri {
  if (parts.includes(false)) return false;
  return parts.includes(null) ? null : true;
}

export function or(...parts: readonly Tri[]): Tri {
  if (parts.includes(true)) return true;
  return parts.includes(null) ? null : false;
}

/** Whole days since 1970 of a date. */
function dayNumber(date: string): number {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  return Date.UTC(year, month - 1, day) / 86_400_000;
}

const dateOfDay = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);

export const addDays = (date: string, days: number): string => dateOfDay(dayNumber(date) + days);

/** "Within the preceding N calendar months": good through the last day of the Nth month after the one it was done in. */
export function endOfMonthAfter(date: string, months: number): string {
  const [year = 0, month = 0] = date.split('-').map(Number);
  // Day 0 of the month after is the last day of the month.
  return new Date(Date.UTC(year, month - 1 + months + 1, 0)).toISOString().slice(0, 10);
}

/** The day on which the flight ends, or begins if that is later (westward over a date border). */
export const lastDay = (use: { readonly departOn: string; readonly arriveOn: string }): string =>
  use.departOn > use.arriveOn ? use.departOn : use.arriveOn;

export const firstDay = (use: { readonly departOn: string; readonly arriveOn: string }): string =>
  use.departOn < use.arriveOn ? use.departOn : use.arriveOn;
