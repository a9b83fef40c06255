/**
 * `npm test`: every layer of proof, from a fresh clone. `npm test -- rules` runs one layer; see run-tests.ts.
 * Up to the installing of the packages only node builtins are used.
 */
import { requireNode } from './node-version.mjs';

requireNode();

const { endOnSignals, endWithNpm, runScript } = await import('./stopping.mjs');
endOnSignals(130);
endWithNpm(130);

await runScript(async () => {
  const { ensureDependencies } = await import('./dependencies.mjs');
  await ensureDependencies();
  const { register } = await import('tsx/esm/api');
  register();
  const { runTests } = await import('./run-tests.ts');
  return runTests(process.argv.slice(2));
});
