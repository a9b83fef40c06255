import type { Tx } from '../db/client';
import { Refusal } from '../problems';
import { said, filled } from '../words/said';
import { whatIsNamed } from './still-named';

/** A line as it stands, and what it is to do from now on. */
export interface FunctionChange {
  readonly id: string;
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/**
 * Refuses `conflict` when a line is made another thing while something names it: an open write-up or deferral on a landing light would from
 * then on be one on an ash tray, and the landing light that is entered beside it would count as working. Taking the line off is refused
 * for the same reasons (`requireNotNamed`).
 */
export async function requireSameFunction(
  tx: Tx,
  operatorId: string,
  lines: readonly FunctionChange[],
): Promise<void> {
  const other = lines.filter(({ from, to }) => from !== to);
  if (other.length === 0) return;
  const [named] = await whatIsNamed(tx, operatorId, other);
  if (!named) return;
  throw new Refusal('conflict', {
    say: filled(said('What {name} does cannot be changed now: {reasons}. Close that first.'), named),
  });
}
