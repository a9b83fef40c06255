/** `npm run prove`, from a fresh clone: what is missing is installed and made first, as `npm test` does; prove.ts does the rest. */
import { requireNode } from '../../lib/operate/node-version.mjs';

requireNode();

const { endOnSignals, endWithNpm, runScript } = await import('../../lib/operate/stopping.mjs');
endOnSignals(130);
endWithNpm(130);

await runScript(async () => {
  const { ensureDependencies } = await import('../../lib/operate/dependencies.mjs');
  await ensureDependencies();
  const { ensureClient } = await import('../../lib/operate/generate.mjs');
  await ensureClient();
  const { register } = await import('tsx/esm/api');
  register();
  const { prove } = await import('./prove.ts');
  return prove(process.argv.slice(2));
});
