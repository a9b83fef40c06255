import { calendarDate, instant } from '../db/dates';
import { type SummaryRow } from '../findings/summary';
import { nameIn } from '../people/names';
import type { CalendarDate } from '../rules/facts';

/** A deferral that has ended, as the history shows it. */
export interface PastDeferral {
  readonly id: string;
  readonly basis: string;
  readonly method: string;
  readonly methodWords: string;
  readonly begunAt: string;
  readonly endedAt: string;
  readonly how: string;
  readonly words: string;
  readonly endedBy: string;
  readonly extension: ExtensionView | null;
}

/** The ended deferrals of a write-up, oldest first. */
export function pastDeferrals(
  deferrals: SummaryRow['deferrals'],
  names: ReadonlyMap<string, string>,
): readonly PastDeferral[] {
  return deferrals
    .flatMap(({ end, ...deferral }) => (end ? [{ end, deferral }] : []))
    .toSorted((a, b) => a.end.endedAt.getTime() - b.end.endedAt.getTime())
    .map(({ end, deferral }) => ({
      id: deferral.id,
      basis: deferral.basis,
      method: deferral.method,
      methodWords: deferral.methodWords,
      begunAt: instant(deferral.begunAt),
      endedAt: instant(end.endedAt),
      how: end.how,
      words: end.words,
      endedBy: nameIn(names, end.endedById),
      extension: extensionView(deferral.extension),
    }));
}

/** An extended repair interval, as the history shows it. */
export interface ExtensionView {
  readonly until: CalendarDate;
  readonly reason: string;
  readonly authority: string;
  readonly by: string;
  readonly at: string;
  readonly hash: string;
}

/** The extension of a deferral, or null. */
export const extensionView = (row: SummaryRow['deferrals'][number]['extension']): ExtensionView | null =>
  row && {
    until: calendarDate(row.untilOn),
    reason: row.reason,
    authority: row.authority,
    by: row.personName,
    at: instant(row.signedAt),
    hash: row.hash,
  };

interface Determined {
  readonly kind: string;
  readonly signedAt: Date;
}

/** Determinations that say how bad it is: of these the last one counts. */
const SAYS_HOW_BAD: readonly string[] = ['severity', 'within-limits'];

/** Whether a later judgement of the same sort has taken this one's place. */
export const superseded = (entry: Determined, all: readonly Determined[]): boolean =>
  SAYS_HOW_BAD.includes(entry.kind) &&
  all.some((other) => SAYS_HOW_BAD.includes(other.kind) && other.signedAt > entry.signedAt);
