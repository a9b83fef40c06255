/** `npm start`: from a fresh clone to a running server for a school of one's own, or the server alone in a container; see start.ts. */
import { runFromClone } from './from-clone.mjs';

await runFromClone(0, async () => (await import('./start.ts')).start);
