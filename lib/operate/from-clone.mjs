import { requireNode } from './node-version.mjs';

/**
 * Runs a program from a fresh clone: asks for the right Node, installs the packages where they are missing, and only then loads
 * what `load` names, which may be TypeScript and use them. Up to there only node builtins are used.
 *
 * @param {number} endedWith exit code when a signal or npm ends it
 * @param {() => Promise<(args: string[]) => Promise<number>>} load gives the command; it gets the words behind the program
 */
export async function runFromClone(endedWith, load) {
  requireNode();
  const { endOnSignals, endWithNpm, runScript } = await import('./stopping.mjs');
  endOnSignals(endedWith);
  endWithNpm(endedWith);
  await runScript(async () => {
    const { ensureDependencies } = await import('./dependencies.mjs');
    await ensureDependencies();
    const { register } = await import('tsx/esm/api');
    register();
    const command = await load();
    return command(process.argv.slice(2));
  });
}
