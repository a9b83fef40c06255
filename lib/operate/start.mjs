/**
 * `npm start`: from a fresh clone to a running server for a school of one's own, or the server alone in a container.
 * Up to the installing of the packages only node builtins are used; the rest is in start.ts.
 */
import { requireNode } from './node-version.mjs';

requireNode();

const { endOnSignals, endWithNpm, runScript } = await import('./stopping.mjs');
endOnSignals(0);
endWithNpm(0);

await runScript(async () => {
  const { ensureDependencies } = await import('./dependencies.mjs');
  await ensureDependencies();
  const { register } = await import('tsx/esm/api');
  register();
  const { start } = await import('./start.ts');
  return start(process.argv.slice(2));
});
