import { inTab } from '@/app/_ui/in-tab';
import { type LineAsTyped } from '../../../../_parts/line-typed';

/** What was decided of one item, as typed. */
export interface Decided {
  readonly kind: 'agrees' | 'not-installed';
  readonly equipmentId: string;
  readonly source: string;
  readonly line?: LineAsTyped;
}

/** A sitting that is not signed yet. It is kept in this tab, so that a reload loses nothing. */
export interface Draft {
  readonly source: string;
  readonly decided: readonly Decided[];
}

const keyOf = (aircraftId: string) => `wheelchock-confirm-${aircraftId}`;

/** The draft of this tab, without items that are no longer open. */
export const keptDraft = (aircraftId: string, openIds: readonly string[]): Draft | null =>
  inTab((tab) => {
    const kept = JSON.parse(tab.getItem(keyOf(aircraftId)) ?? 'null') as Draft | null;
    if (!kept || !Array.isArray(kept.decided)) return null;
    const decided = kept.decided.filter(({ equipmentId }) => openIds.includes(equipmentId));
    return { source: String(kept.source), decided };
  });

/** Null takes it away. Without storage the sitting lives as long as the page. */
export function keepDraft(aircraftId: string, draft: Draft | null): void {
  inTab((tab) => {
    if (draft) tab.setItem(keyOf(aircraftId), JSON.stringify(draft));
    else tab.removeItem(keyOf(aircraftId));
  });
}
