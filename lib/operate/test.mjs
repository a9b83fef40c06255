/** `npm test`: every layer of proof, from a fresh clone. `npm test -- rules` runs one layer; see run-tests.ts. */
import { runFromClone } from './from-clone.mjs';

await runFromClone(130, async () => (await import('./run-tests.ts')).runTests);
