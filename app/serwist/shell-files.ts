import { randomUUID } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { SHELL_PAGE } from '../ramp/_worker/shell-paths';

/** What the service worker keeps from its first moment: one address, and what changes when its content does. */
export interface KeptFile {
  readonly url: string;
  /** Null: the address itself changes with the content. */
  readonly revision: string | null;
}

/**
 * The on-the-phone app and every script and style it can need, also those it loads later; nothing of desk and bench. Read
 * from the build that is being made: the page's own manifest names what it begins with, and each script names, as Turbopack
 * writes them, the files it loads later.
 */
export async function shellFiles(): Promise<KeptFile[]> {
  const built = path.join(/* turbopackIgnore: true */ process.cwd(), '.next');
  const folder = path.join(built, 'static', 'chunks');
  const all = new Set(await readdir(folder));
  const page = path.join(built, 'server', 'app', 'ramp', 'out');
  const modules = await readFile(path.join(page, 'page_client-reference-manifest.js'), 'utf8');
  const { rootMainFiles } = JSON.parse(
    await readFile(path.join(page, 'page', 'build-manifest.json'), 'utf8'),
  ) as { rootMainFiles: readonly string[] };
  // The same manifest names files for browsers so old that they know no service worker: those stay where they are.
  const needed = namesIn([modules, ...rootMainFiles].join('\n'), all);
  for (const name of needed) {
    const text = await readFile(path.join(folder, name), 'utf8');
    namesIn(text, all).forEach((found) => needed.add(found));
  }
  return [
    // The page names its build, so it is another with every build, even where no script is.
    { url: SHELL_PAGE, revision: randomUUID() },
    ...[...needed].sort().map((name) => ({ url: `/_next/static/chunks/${name}`, revision: null })),
  ];
}

/** Files of the folder that a text names. */
function namesIn(text: string, all: ReadonlySet<string>): Set<string> {
  return new Set((text.match(/[\w~.-]+\.(?:js|css)/g) ?? []).filter((name) => all.has(name)));
}
