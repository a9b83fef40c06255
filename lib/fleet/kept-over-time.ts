import { createHash } from 'node:crypto';
import { answersOverTime, type LaneOverTime } from '../rules/over-time';

/** Enough for a few schools; what was asked for longest ago goes first. */
const MOST = 400;

const kept = new Map<string, readonly LaneOverTime[]>();

/**
 * `answersOverTime`, worked out once for the same facts: boards are drawn every few seconds on many screens, and between
 * two drawings most aircraft have not changed. The key is a sum over everything the rules are given, so that nothing can
 * be kept for facts that are no longer so.
 */
export function keptOverTime(...given: Parameters<typeof answersOverTime>): readonly LaneOverTime[] {
  const key = createHash('sha256').update(JSON.stringify(given)).digest('hex');
  const over = kept.get(key) ?? answersOverTime(...given);
  kept.delete(key);
  kept.set(key, over);
  const [oldest] = kept.keys();
  if (kept.size > MOST && oldest !== undefined) kept.delete(oldest);
  return over;
}
