import { contentHash } from './canonical';

/** What the hash of a release covers. */
export interface ReleaseContent {
  readonly flight: unknown;
  readonly facts: unknown;
  readonly answer: unknown;
  readonly rulesVersion: string;
  readonly factsVersion: number;
  /** The dispatcher. */
  readonly by: string;
  /** Hours of other flights counted ahead, and the plan it came from: covered where there are any. */
  readonly spentAhead: unknown;
  readonly plannedFlightId: string | null;
}

/** Hash of a release. One without hours ahead and without a plan has the hash that releases had before there were any. */
export function releaseHash(release: ReleaseContent): string {
  const { flight, facts, answer, rulesVersion, factsVersion, by, spentAhead, plannedFlightId } = release;
  return contentHash({
    flight,
    facts,
    answer,
    rulesVersion,
    factsVersion,
    by,
    ...(spentAhead === null ? {} : { spentAhead }),
    ...(plannedFlightId === null ? {} : { plannedFlightId }),
  });
}
