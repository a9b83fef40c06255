/**
 * Part of `npm run prove`: how long the board, an answer and a write take, from one operator with eight aircraft up to many,
 * as times of an empty page of the same server and of the bare SQL on the same database, and how they grow.
 *
 * WHEELCHOCK_SCALE=full measures up to 200 operators, 10,000 aircraft and 2,000,000 write-ups (an hour);
 * WHEELCHOCK_SCALE_KEEP=<folder> keeps the databases there and loads only what is missing.
 */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import getPort from 'get-port';
import { ensureBuild } from '@/lib/operate/build';
import { withClient } from '@/lib/operate/connection';
import { startEmbedded, temporaryDataDir } from '@/lib/operate/embedded';
import { photosIn } from '@/lib/operate/photos-in';
import { requireNoDemo } from '@/lib/operate/running-demo';
import { say } from '@/lib/operate/say.mjs';
import { newSecret } from '@/lib/operate/secrets';
import { atEnd, endOnSignals, runScript } from '@/lib/operate/stopping.mjs';
import { startWeb, webSettings } from '@/lib/operate/web';
import { report } from './row';
import { rowsOf } from './scale/bounds';
import { loadSchool, loadSize, type Loaded } from './scale/load';
import { measure, type Served } from './scale/measure';
import { tellStorage } from './scale/storage';
import { ASKED, sizesToMeasure, totals, type Asked, type Size } from './scale/sizes';

const isFull = process.env['WHEELCHOCK_SCALE'] === 'full';
const COMMAND = `${isFull ? 'WHEELCHOCK_SCALE=full ' : ''}npm run prove -- scale`;
const ROUNDS = Number(process.env['WHEELCHOCK_SCALE_ROUNDS'] ?? (isFull ? 40 : 30));

async function prove(): Promise<number> {
  const sizes = sizesToMeasure();
  const folder = await mkdtemp(path.join(tmpdir(), 'wheelchock-scale-'));
  atEnd(() => rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 300 }));
  const photoDir = path.join(folder, 'photos');
  const server = await startDatabase();
  await loadSchool(server.adminUrl, photosIn(photoDir));
  const places: Served[] = [];
  for (const size of sizes) {
    const { operators, aircraft, writeUps } = totals(size);
    say(`Loading ${size.name}: ${operators} operators, ${aircraft} aircraft, ${writeUps} write-ups ...`);
    const loaded = await loadSize(server.adminUrl, size);
    const address = await serve(loaded, { photoDir, outbox: path.join(folder, `outbox-${size.name}`) });
    places.push(...placesOf(size, loaded, address, size === sizes.at(-1)));
  }
  say(`Measuring ${places.length} places, ${ROUNDS} rounds ...`);
  const rows = rowsOf(await measure(places, ROUNDS), sizes, COMMAND);
  await tellStorage(server.adminUrl, sizes.at(-1)!);
  for (const row of rows)
    say(`${row.good ? 'good  ' : 'MISSED'} ${row.what}: ${row.measured}; wanted: ${row.wanted}`);
  report(rows);
  return process.exitCode === 1 ? 1 : 0;
}

/** A server of its own; in a kept folder its databases stay. */
async function startDatabase(): Promise<{ adminUrl: string }> {
  const kept = process.env['WHEELCHOCK_SCALE_KEEP'];
  if (kept) await mkdir(kept, { recursive: true });
  const place = kept
    ? { dataDir: path.join(kept, 'postgres'), remove: () => Promise.resolve() }
    : await temporaryDataDir();
  atEnd(place.remove);
  const server = await startEmbedded({
    dataDir: place.dataDir,
    password: kept ? 'kept for scale' : newSecret(),
    takeOver: true,
  });
  atEnd(server.stop);
  await withClient(server.adminUrl, async (client) => {
    // For loading: fewer checkpoints. Reads and caches stay as PostgreSQL sets them out of the box.
    await client.query(`ALTER SYSTEM SET max_wal_size = '8GB'`);
    await client.query('SELECT pg_reload_conf()');
  });
  return server;
}

async function serve({ appUrl }: Loaded, folders: { photoDir: string; outbox: string }): Promise<string> {
  await mkdir(folders.outbox, { recursive: true });
  const web = { port: await getPort(), host: '127.0.0.1', appUrl, sessionSecret: newSecret(), ...folders };
  await ensureBuild(webSettings(web), () => requireNoDemo('Building now would pull its files away.'));
  const { address, stop } = await startWeb(web);
  atEnd(stop);
  return address;
}

/** Which operators of a size are asked: in all of them eight and fifty, in the largest also what tells growth inside one. */
function placesOf(
  size: Size,
  { adminUrl, appUrl, operators }: Loaded,
  address: string,
  isLargest: boolean,
): Served[] {
  const wanted: Asked[] = isLargest ? ['eight', 'twenty', 'fifty', 'old'] : ['eight', 'fifty'];
  return wanted.flatMap((asked) => {
    const isThere = size.operators.some(({ number }) => number === ASKED[asked].number);
    const operatorId = operators.get(ASKED[asked].number);
    if (!isThere || operatorId === undefined) return [];
    return [{ size: size.name, asked, address, adminUrl, appUrl, operatorId }];
  });
}

endOnSignals(1);
await runScript(prove);
