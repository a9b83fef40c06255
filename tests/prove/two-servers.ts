/**
 * Part of `npm run prove`: two servers of one build on one PostgreSQL. What must hold between them is asked of each directly;
 * then the journeys of `npm test` run through a line that hands each request to the other server than the one before.
 */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import getPort from 'get-port';
import { findBrowser } from '@/lib/operate/browser';
import { ensureBuild } from '@/lib/operate/build';
import { runToEnd } from '@/lib/operate/children.mjs';
import { withDatabase } from '@/lib/operate/connection';
import { startEmbedded, temporaryDataDir } from '@/lib/operate/embedded';
import { photosIn } from '@/lib/operate/photos-in';
import { inRepository } from '@/lib/operate/places.mjs';
import { prepareDatabase } from '@/lib/operate/prepare-database';
import { requireNoDemo } from '@/lib/operate/running-demo';
import { say } from '@/lib/operate/say.mjs';
import { newSecret } from '@/lib/operate/secrets';
import { atEnd, endOnSignals, runScript } from '@/lib/operate/stopping.mjs';
import { playwrightCounts } from '@/lib/operate/test-counts';
import { startWeb, webSettings, type WebOptions } from '@/lib/operate/web';
import { report, type Row } from './row';
import { CHECKS, type Two } from './two-servers/checks';
import { openLine, type Line } from './two-servers/proxy';

const COMMAND = 'npm run prove -- two-servers';

/** Not those that hold a stopwatch, and not what axe is asked: a page is the same whichever server draws it. */
const LEFT_OUT = '@alone|axe';

const row = (what: string, measured: string, wanted: string, good: boolean): Row => ({
  part: 'Two servers on one database',
  what,
  command: COMMAND,
  measured,
  wanted,
  good,
});

async function prove(): Promise<number> {
  const folder = await mkdtemp(path.join(tmpdir(), 'wheelchock-two-'));
  atEnd(() => rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 300 }));
  const { adminUrl, appUrl, photoDir, outbox } = await prepare(folder);
  const [front, portA, portB] = [await getPort(), await getPort(), await getPort()];
  // People see one address, whichever server answers.
  process.env['NEXTAUTH_URL'] = `http://localhost:${front}`;
  process.env['WHEELCHOCK_PARTS'] = 'yes';
  const common = { host: '127.0.0.1', appUrl, sessionSecret: newSecret(), photoDir, outbox };
  await ensureBuild(webSettings({ ...common, port: portA }), () =>
    requireNoDemo('Building now would pull its files away.'),
  );
  const rows: Row[] = [];
  const addresses: string[] = [];
  for (const port of [portA, portB]) {
    const server = await startWeb({ ...common, port });
    atEnd(server.stop);
    addresses.push(server.address);
  }
  const two: Two = { a: addresses[0]!, b: addresses[1]!, adminUrl };
  // Journeys first: they count what the demo holds, and the checks add to it.
  const line = await openLine(front, [portA, portB]);
  atEnd(line.close);
  rows.push(...(await journeys(line, { ...common, port: front }, adminUrl, folder)));
  for (const { what, wanted, run } of CHECKS) {
    const { measured, good } = await run(two).catch((error: unknown) => ({
      measured: `threw: ${String(error)}`,
      good: false,
    }));
    rows.push(row(what, measured, wanted, good));
  }
  for (const one of rows) say(`${one.good ? 'good  ' : 'MISSED'} ${one.what}: ${one.measured}`);
  report(rows);
  return rows.every(({ good }) => good) ? 0 : 1;
}

async function prepare(folder: string) {
  const [photoDir, outbox] = [path.join(folder, 'photos'), path.join(folder, 'outbox')];
  for (const one of [photoDir, outbox]) await mkdir(one);
  const data = await temporaryDataDir();
  atEnd(data.remove);
  const database = await startEmbedded({
    dataDir: data.dataDir,
    password: newSecret(),
    zone: 'Pacific/Chatham',
  });
  atEnd(database.stop);
  const adminUrl = withDatabase(database.adminUrl, 'wheelchock_two');
  const { appUrl } = await prepareDatabase(adminUrl, {}, photosIn(photoDir));
  return { adminUrl, appUrl, photoDir, outbox };
}

async function journeys(line: Line, web: WebOptions, adminUrl: string, folder: string): Promise<Row[]> {
  const browser = await findBrowser();
  const file = path.join(folder, 'journeys.json');
  const { code } = await runToEnd(
    process.execPath,
    [
      inRepository('node_modules', '@playwright', 'test', 'cli.js'),
      'test',
      '--project=desktop',
      `--grep-invert=${LEFT_OUT}`,
      '--reporter=list,json',
      `--output=${path.join(folder, 'results')}`,
    ],
    {
      show: true,
      env: {
        ...webSettings(web),
        DATABASE_URL: adminUrl,
        NODE_ENV: 'test',
        WHEELCHOCK_BASE_URL: `http://localhost:${line.port}`,
        PLAYWRIGHT_JSON_OUTPUT_NAME: file,
        ...(browser === undefined ? {} : { WHEELCHOCK_CHROMIUM: browser }),
      },
    },
  );
  const { passed, failed, skipped } = await playwrightCounts(file, code);
  const [handedA = 0, handedB = 0] = line.handed;
  const [wroteA = 0, wroteB = 0] = line.wrote;
  return [
    row(
      'the journeys of npm test at a desktop, through a line that goes to the other server with each request',
      `${passed} passed, ${failed} failed, ${skipped} skipped`,
      'all pass',
      passed > 0 && failed === 0 && code === 0,
    ),
    row(
      'requests of these journeys that each server was handed',
      `${handedA} and ${handedB}, of them writes ${wroteA} and ${wroteB}`,
      'both, within one; both write',
      Math.abs(handedA - handedB) <= 1 && wroteA > 0 && wroteB > 0,
    ),
  ];
}

endOnSignals(1);
await runScript(prove);
