import type { AircraftRow } from '../fleet/facts';
import { findingOf, workPartOf } from '../rules/findings/catalogue';
import { unknown, type Fact } from '../rules/facts';
import type { PartOfAircraft } from '../rules/jasc';

/** A way in which the aircraft does not comply, as the permit names it. */
export interface Covered {
  readonly kind: 'discrepancy' | 'requirement' | 'directive';
  readonly id: string;
  readonly label: string;
}

/** Everything of an aircraft that a permit can name: open write-ups, what recurs, and its directives. */
export const coverable = (row: AircraftRow): readonly Covered[] => [
  ...row.discrepancies.map(({ id, number, title }) => ({
    kind: 'discrepancy' as const,
    id,
    label: `${number} ${title}`,
  })),
  ...row.requirements.map(({ id, name }) => ({ kind: 'requirement' as const, id, label: name })),
  ...row.directives.map(({ id, number, title }) => ({
    kind: 'directive' as const,
    id,
    label: `${number}, ${title}`,
  })),
];

/** What a stored permit covers, read back. */
export const coversOf = (json: unknown): readonly Covered[] => json as readonly Covered[];

/** The part of every covered thing; an inspection or a directive has none of its own. */
export const partsCovered = (
  covers: readonly Covered[],
  writeUps: readonly { readonly id: string; readonly findingKey: string | null; readonly jasc: string }[],
): readonly Fact<PartOfAircraft>[] =>
  covers.map(({ kind, id, label }) => {
    const writeUp = kind === 'discrepancy' ? writeUps.find((one) => one.id === id) : undefined;
    if (!writeUp) return unknown(`the part that ${label} concerns`);
    const listed = writeUp.findingKey !== null && findingOf(writeUp.findingKey) !== null;
    return workPartOf(listed ? writeUp.findingKey : null, writeUp.jasc);
  });
