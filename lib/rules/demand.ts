import type { EquipmentFunction } from './aircraft';
import type { Fact } from './facts';
import type { CiteId } from './law';

/**
 * One demand of a regulation: so many of this equipment must be installed and operable for this use of the
 * aircraft. The section files (91.205, 91.207, 91.209, 91.215, 91.225, 91.171) each answer with a list of them;
 * 91.213(d)(2)(iii) and the equipment check of an answer both read that list, so they cannot disagree.
 */
export interface Demand {
  readonly function: EquipmentFunction;
  readonly count: number;
  readonly cite: CiteId;
  /** "Night flight needs position lights." */
  readonly because: string;
  /** Unknown when a fact that decides whether the demand applies is missing; an unknown demand stands. */
  readonly applies: Fact<true>;
  /** A relief the same section gives and this use meets; the demand then only limits, in these words. */
  readonly relief: { readonly cite: CiteId; readonly limit: string } | null;
  readonly strictReading?: string;
}
