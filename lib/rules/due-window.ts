/**
 * What falls due soon: the sheet a shop plans by. The window of 30 days or 25 hours is issue 4's; no regulation sets it.
 * Both borders belong to it. Whichever limit is nearer puts a row into its group.
 */
import type { HoursTenths } from './facts';

const SOON_DAYS = 30;
const SOON_TENTHS: HoursTenths = 250;

/**
 * - `overdue`: past its last day or its last tenth
 * - `unknown`: nobody knows; counts like overdue until somebody does
 * - `soon`: at most 30 days or at most 25 hours left
 * - `later`: everything else, also what nothing limits any more
 */
export const DUE_GROUPS = ['overdue', 'unknown', 'soon', 'later'] as const;
export type DueGroup = (typeof DUE_GROUPS)[number];

/** What is left until a limit. Null: not limited in that way. */
export interface LeftToLimit {
  /** Whole days after today: 0 on the last good day. */
  readonly remainingDays: number | null;
  readonly remainingTenths: HoursTenths | null;
  /** Set when a fact that decides is not known. */
  readonly missing: string | null;
}

/** The group of one row. What is known to be over is overdue, whatever else is not known. */
export function dueGroupOf({ remainingDays, remainingTenths, missing }: LeftToLimit): DueGroup {
  if (isBelow(remainingDays, 0) || isBelow(remainingTenths, 0)) return 'overdue';
  if (missing !== null) return 'unknown';
  return isBelow(remainingDays, SOON_DAYS + 1) || isBelow(remainingTenths, SOON_TENTHS + 1)
    ? 'soon'
    : 'later';
}

const isBelow = (left: number | null, bound: number): boolean => left !== null && left < bound;
