import { runOrStop } from './children.mjs';
import { inRepository } from './places.mjs';
import { say } from './say.mjs';
import { isStamped, removeStamp, sumOf, writeStamp } from './stamps.mjs';

const STAMP = '.next/wheelchock-stamp';

/** What the built server is made from. The operating scripts are not part of it. */
const SOURCES = [
  'app',
  'lib',
  'public',
  'instrumentation.ts',
  'proxy.ts',
  'next.config.ts',
  'tsconfig.json',
  'package-lock.json',
];

/**
 * Builds the web server when its sources have changed since the last build.
 * `mayBuild` is asked first and refuses while a server runs from the same folder.
 */
export async function ensureBuild(
  env: Record<string, string | undefined>,
  mayBuild: () => Promise<void> = () => Promise.resolve(),
): Promise<void> {
  const sum = await sumOf(SOURCES, (file) => file === 'lib/operate' || file.endsWith('.wheelchock-stamp'));
  if (await isStamped(STAMP, sum)) {
    return;
  }
  await mayBuild();
  say('Building (about a minute) ...');
  await removeStamp(STAMP);
  await runOrStop(
    'Building',
    process.execPath,
    [inRepository('node_modules', 'next', 'dist', 'bin', 'next'), 'build'],
    {
      env: { ...env, NEXT_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' },
    },
  );
  await writeStamp(STAMP, sum);
}
