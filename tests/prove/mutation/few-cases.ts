import real, { type Parameters } from 'fast-check';

/**
 * fast-check as the mutation run sees it (bundle.mjs leads the name here): the same cases for every mutant, so that a kill is
 * not luck; few of them, because every mutant pays for them; and no search for a smaller example, because one kills.
 */

const SEED = 20_261_127;
const MOST_CASES = Number(process.env.WHEELCHOCK_CASES ?? 60);

const fewer = <Values>(asked: Parameters<Values> = {}): Parameters<Values> => ({
  ...asked,
  seed: SEED,
  numRuns: Math.min(asked.numRuns ?? 100, MOST_CASES),
  endOnFailure: true,
});

const assert: typeof real.assert = ((property: never, asked?: Parameters<never>) =>
  real.assert(property, fewer(asked))) as typeof real.assert;

const fewCases = { ...real, assert };
export default fewCases;
