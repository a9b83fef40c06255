/** `npm run demo`: everything from a fresh clone to a running server, for a machine with Node and nothing else; see demo.ts. */
import { runFromClone } from './from-clone.mjs';

await runFromClone(0, async () => (await import('./demo.ts')).demo);
