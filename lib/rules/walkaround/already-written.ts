import type { Severity } from '../aircraft';
import type { Instant } from '../facts';
import type { ItemAnswer } from './answers';
import type { RaisedByWalk } from './judge-walk';

/** What somebody wrote on a walk at one item, with how its write-up stands now. */
export interface WrittenAtItem {
  readonly itemKey: string | null;
  /** It opened a write-up of its own; else it is an observation of one that was there before. */
  readonly isOwn: boolean;
  /** The write-up's finding of the catalogue; null is "something else". */
  readonly findingKey: string | null;
  readonly state: 'open' | 'deferred' | 'closed';
  /** Null: undecided, and undecided grounds. */
  readonly severity: Severity | null;
  readonly closedAt: Instant | null;
}

/**
 * Whether a finding that the walk raises is written up already, so that it need not be raised a second time. Only the very
 * same finding at the very same item is: paint noted at the oil's item, or "water, then clean" at a drain that ran with
 * water to the end, says nothing of what the walk has measured. In doubt it is raised: a twin costs a signature.
 *
 * - Closed since, it counts for what was answered up to its closing, and not for what was read afterwards.
 * - Grounding, it counts.
 * - Standing for less or deferred, it counts where it is of this walk's own writing and names its finding: whoever judged it
 *   judged this. An observation that rests on something older does not.
 *
 * Our design (issue 3: "a number outside its limit raises a proposed finding by itself").
 */
export function isWrittenUp(
  { itemKey, findingKey }: RaisedByWalk,
  answer: ItemAnswer,
  written: readonly WrittenAtItem[],
): boolean {
  const lastAt = lastAnswered(answer);
  return written.some((one) => {
    if (one.itemKey !== itemKey || one.findingKey !== findingKey) return false;
    if (one.state === 'closed') return one.closedAt !== null && lastAt <= Date.parse(one.closedAt);
    if (one.state === 'open' && (one.severity === null || one.severity === 'grounding')) return true;
    return one.isOwn && findingKey !== null;
  });
}

/** When the newest number or sample was taken, milliseconds; before everything when none was. */
const lastAnswered = ({ readings, samples }: ItemAnswer): number =>
  Math.max(
    -Infinity,
    ...[...readings.filter(({ struck }) => !struck), ...samples].map(({ at }) => Date.parse(at)),
  );
