/**
 * `npm run demo`: everything from a fresh clone to a running server, for a machine with Node and nothing else.
 * Up to the installing of the packages only node builtins are used; the rest is in demo.ts.
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
  const { demo } = await import('./demo.ts');
  return demo(process.argv.slice(2));
});
