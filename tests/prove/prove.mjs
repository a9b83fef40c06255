/** `npm run prove`, from a fresh clone; see prove.ts. */
import { runFromClone } from '../../lib/operate/from-clone.mjs';

await runFromClone(130, async () => (await import('./prove.ts')).prove);
