import type { AircraftTypeFacts } from '../rules/aircraft';
import { findingOf } from '../rules/findings/catalogue';
import { whoCanSentence } from '../rules/who-may-sign';
import type { WorkKind } from '../rules/work-to-sign';

/** How the catalogue says a finding is usually put right, with who can sign each way. A hint, never an answer. */
export interface UsualWorkView {
  readonly action: string | null;
  readonly ways: readonly {
    readonly what: string;
    readonly kind: WorkKind;
    readonly preventiveItem: number | null;
    readonly swapOnly: boolean;
    readonly whoCan: string;
  }[];
}

/** The usual work for a finding of the catalogue; empty for "something else". */
export function usualWork(
  findingKey: string | null,
  aircraftCategory: AircraftTypeFacts['category'],
): UsualWorkView {
  const finding = findingKey === null ? null : findingOf(findingKey);
  if (!finding) return { action: null, ways: [] };
  return {
    action: finding.usualAction,
    ways: finding.work.map(({ what, part, kind, preventiveItem, swapOnly }) => ({
      what,
      kind,
      preventiveItem,
      swapOnly,
      whoCan: whoCanSentence({
        part,
        kind,
        preventiveItem,
        swapOnly,
        aircraftCategory,
        performedBySigner: true,
      }),
    })),
  };
}
