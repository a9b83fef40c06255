/**
 * Generates the database client from prisma/schema.prisma, only when the schema has changed.
 * As a command: `npm run generate`.
 */
import { pathToFileURL } from 'node:url';
import { runOrStop } from './children.mjs';
import { inRepository } from './places.mjs';
import { explain, say } from './say.mjs';
import { isStamped, removeStamp, sumOf, writeStamp } from './stamps.mjs';

const STAMP = 'lib/db/generated/.wheelchock-stamp';

/** @returns {Promise<void>} */
export async function ensureClient() {
  const sum = await sumOf([
    'prisma/schema.prisma',
    'prisma.config.ts',
    'node_modules/@prisma/client/package.json',
  ]);
  if (await isStamped(STAMP, sum)) {
    return;
  }
  say('Generating the database client ...');
  await removeStamp(STAMP);
  const prisma = inRepository('node_modules', 'prisma', 'build', 'index.js');
  await runOrStop('Generating the database client', process.execPath, [prisma, 'generate'], {
    // Generating needs no schema engine; naming any program keeps Prisma from fetching one.
    env: { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1' },
  });
  await writeStamp(STAMP, sum);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  ensureClient().catch((error) => {
    console.error(explain(error));
    process.exit(1);
  });
}
