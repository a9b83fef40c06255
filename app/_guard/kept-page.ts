import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { SHELL_PAGE } from '../ramp/_worker/shell-paths';
import { inlineScriptSums } from './inline-scripts';

let sums: Promise<string[]> | undefined;

/**
 * The hashes of the scripts of the page that phones keep, read once from the build this server runs. Throws when there is no
 * such page in it: with an empty list the page would stay dead.
 */
export function keptPageSums(): Promise<string[]> {
  return (sums ??= readSums().catch((error: unknown) => {
    sums = undefined;
    throw error;
  }));
}

async function readSums(): Promise<string[]> {
  const file = path.join(
    /* turbopackIgnore: true */ process.cwd(),
    '.next',
    'server',
    'app',
    ...`${SHELL_PAGE}.html`.split('/').filter(Boolean),
  );
  const found = inlineScriptSums(await readFile(file, 'utf8'));
  if (found.length === 0) throw new Error(`${SHELL_PAGE} has no scripts in this build.`);
  return found;
}
