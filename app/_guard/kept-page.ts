import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { SHELL_PAGE } from '../ramp/_worker/shell-paths';
import { inlineScriptSums } from './inline-scripts';

/** A page and the hashes of the scripts that stand in it. */
export interface KeptPage {
  readonly html: string;
  readonly sums: readonly string[];
}

let page: Promise<KeptPage> | undefined;

/**
 * The page that phones keep, with its hashes, read once from the build this server runs. Page and hashes come of the same
 * reading: Next draws such a page anew after some writes, with other scripts, to which hashes read earlier would not fit. Throws
 * when there is no such page in the build: with an empty list the page would stay dead.
 */
export function keptPage(): Promise<KeptPage> {
  return (page ??= readPage().catch((error: unknown) => {
    page = undefined;
    throw error;
  }));
}

async function readPage(): Promise<KeptPage> {
  const file = path.join(
    /* turbopackIgnore: true */ process.cwd(),
    '.next',
    'server',
    'app',
    ...`${SHELL_PAGE}.html`.split('/').filter(Boolean),
  );
  const html = await readFile(file, 'utf8');
  const sums = inlineScriptSums(html);
  if (sums.length === 0) throw new Error(`${SHELL_PAGE} has no scripts in this build.`);
  return { html, sums };
}
