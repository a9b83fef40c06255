/**
 * Part of the proof: a backup made while people write (that alone: `writing` as an argument), and its way back. The commands run
 * as programs of their own, as a person runs them; what came back is asked through the services and held against what was there.
 */
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { checkSignIn } from '@/lib/access/passwords';
import { closeDatabase } from '@/lib/db/client';
import { readBoard } from '@/lib/fleet/read-board';
import { checkBackup } from '@/lib/operate/backup/check';
import { withClient } from '@/lib/operate/connection';
import { DEMO_LOGINS } from '@/lib/operate/load-demo';
import { end, endOnSignals } from '@/lib/operate/stopping.mjs';
import { hurtOneByOne } from './backup/hurts';
import { onGround, photosOf, type Ground } from './backup/ground';
import { program, type Ended } from './backup/programs';
import { findingsIn, writing } from './backup/writers';
import { report, type Row } from './row';

endOnSignals(1);
const COMMAND = 'node --conditions=react-server --import tsx tests/prove/backup.ts';
const NOW = new Date();
const rows: Row[] = [];
const row = (what: string, measured: string, wanted: string, good: boolean) => {
  rows.push({ part: 'backup', what, command: COMMAND, measured, wanted, good });
  process.stdout.write(`${good ? 'good' : 'NOT GOOD'}: ${what}: ${measured}\n`);
};
const seconds = (n: number) => `${n.toFixed(1)} s`;

async function signIn(name: string) {
  const login = DEMO_LOGINS.find(({ email }) => email.startsWith(`${name}@`));
  return checkSignIn(login?.email ?? '', login?.password ?? '', new Date());
}

/** What the services say of every demo aircraft at one moment, through this web account. */
async function answers(
  appUrl: string,
): Promise<{ text: string; aircraft: number; answers: number; signedIn: number }> {
  await closeDatabase();
  process.env['APP_DATABASE_URL'] = appUrl;
  let signedIn = 0;
  for (const { email, password } of DEMO_LOGINS)
    if (await checkSignIn(email, password, new Date())) signedIn += 1;
  const ref = await signIn('tess');
  const board = await readBoard(ref, {}, { now: NOW });
  if (!board.ok) throw new Error(JSON.stringify(board.problem));
  const { rows: told } = board.value;
  const count = told.reduce((all, { cells }) => all + cells.length, 0);
  return { text: JSON.stringify(told), aircraft: told.length, answers: count, signedIn };
}

/** The web account's address that `npm run restore` printed. */
const accountIn = ({ said }: Ended): string => /^APP_DATABASE_URL=(.+)$/m.exec(said)?.[1] ?? '';

async function whileWriting(ground: Ground): Promise<void> {
  // The restored one may have been asked before.
  await closeDatabase();
  process.env['APP_DATABASE_URL'] = ground.demoAppUrl;
  const ref = await signIn('ruth');
  if (!ref) throw new Error('ruth cannot sign in to the demo');
  const aircraftId = await withClient(ground.demoUrl, async (client) => {
    const { rows: found } = await client.query<{ id: string }>(
      `SELECT id FROM aircraft WHERE registration = 'N041QB'`,
    );
    return found[0]?.id ?? '';
  });
  const quiet = writing(ref, aircraftId);
  await new Promise((resolve) => setTimeout(resolve, 5000));
  const before = await quiet.stop();

  const folder = path.join(ground.folder, 'while-writing');
  const findingsBefore = await findingsIn(ground.demoUrl);
  const busy = writing(ref, aircraftId);
  const made = await program('backup', [folder], { DATABASE_URL: ground.demoUrl }).ended;
  const during = await busy.stop();
  const findingsAfter = await findingsIn(ground.demoUrl);
  const { manifest, rows: rowCount } = await checkBackup(folder);
  const inIt = manifest.tables.find(({ name }) => name === 'public.finding')?.rows ?? -1;
  const megabytes = (await sizeOf(folder)) / 1e6;
  row(
    'backup while people write',
    `${rowCount} rows, ${megabytes.toFixed(1)} MB, ${seconds(made.seconds)}, exit ${made.code}; ${during.count} write-ups went in meanwhile, ` +
      `${during.refused} refused; findings ${findingsBefore} before, ${inIt} in it, ${findingsAfter} after; ` +
      `a write took ${(during.median / before.median).toFixed(1)} times as long (${Math.round(before.median)} ms before)`,
    'exit 0, one moment between before and after, writes go on, none refused',
    made.code === 0 &&
      during.count > 0 &&
      during.refused === 0 &&
      findingsAfter - findingsBefore === during.count &&
      inIt >= findingsBefore &&
      inIt <= findingsAfter &&
      manifest.verified?.faults.length === 0,
  );
  const target = { DATABASE_URL: ground.another('prove_writing'), ...photosOf(ground, 'writing') };
  const back = await program('restore', [folder], target).ended;
  row(
    'that backup restored and verified',
    `${seconds(back.seconds)}, ${(rowCount / back.seconds).toFixed(0)} rows a second, exit ${back.code}: ${lastLine(back)}`,
    'exit 0; counts, sums, chains, signatures and files verified',
    back.code === 0 && back.said.includes(`verified it: ${rowCount} rows`),
  );
}

const lastLine = ({ said }: Ended): string =>
  said.split('\n').find((line) => line.startsWith('Restored')) ?? said.trim().split('\n').at(-1) ?? '';

async function thereAndBack(ground: Ground, folder: string): Promise<void> {
  const then = await answers(ground.demoAppUrl);
  await program('backup', [folder], { DATABASE_URL: ground.demoUrl }).ended;
  const target = ground.another('prove_restored');
  const photos = photosOf(ground, 'restored');
  const settings = { DATABASE_URL: target, ...photos };

  // Killed in the middle of loading: the database is empty as before, and the next try goes through.
  const first = program('restore', [folder], settings);
  const killedAt = await whenLoading(target, first.ended);
  first.child.kill('SIGKILL');
  const killed = await first.ended;
  const left = await settled(target);
  const back = await program('restore', [folder], settings).ended;
  row(
    'restore killed with SIGKILL while rows go in, and done again',
    `${killedAt}, exit ${killed.code ?? 'by signal'}; ${left} rows were left; again: exit ${back.code}`,
    'killed while loading, 0 rows left, then exit 0',
    killedAt === 'killed while loading' && killed.code === null && left === 0 && back.code === 0,
  );
  const now = await answers(accountIn(back));
  row(
    'answers of the restored system',
    `${now.answers} answers for ${now.aircraft} aircraft, ${now.text === then.text ? 'every word the same' : 'DIFFERENT'}; ` +
      `${now.signedIn} of ${DEMO_LOGINS.length} people sign in`,
    'every answer the same; all sign in',
    now.text === then.text &&
      now.aircraft > 0 &&
      now.signedIn === DEMO_LOGINS.length &&
      then.signedIn === now.signedIn,
  );
  const again = path.join(ground.folder, 'of-the-restored');
  const made = await program('backup', [again], settings).ended;
  const [a, b] = [await checkBackup(folder), await checkBackup(again)];
  const sums = new Map(a.manifest.tables.map(({ name, sha256 }) => [name, sha256]));
  const other = b.manifest.tables
    .filter(({ name, sha256 }) => sums.get(name) !== sha256)
    .map(({ name }) => name);
  row(
    'a backup of the restored system beside the first',
    `exit ${made.code}; ${b.manifest.tables.length - other.length} of ${a.manifest.tables.length} tables with the same sum` +
      `${other.length > 0 ? `; other: ${other.join(', ')}` : ''}`,
    'all tables the same',
    made.code === 0 && other.length === 0 && a.rows === b.rows,
  );
}

/** Waits until the restore's transaction inserts rows. */
async function whenLoading(url: string, ended: Promise<Ended>): Promise<string> {
  let isOver = false;
  void ended.then(() => (isOver = true));
  while (!isOver) {
    const found = await withClient(url, async (client) => {
      const { rowCount } = await client.query(
        `SELECT 1 FROM pg_stat_activity WHERE datname = current_database() AND state <> 'idle'
         AND query LIKE 'INSERT INTO%jsonb_array_elements%'`,
      );
      return (rowCount ?? 0) > 0;
    }).catch(() => false);
    if (found) return 'killed while loading';
  }
  return 'it was done before it could be killed';
}

/** Rows of people and the audit chain once the server has noticed that the program is gone. */
async function settled(url: string): Promise<number> {
  return withClient(url, async (client) => {
    const { rows: found } = await client.query<{ n: number }>(
      'SELECT ((SELECT count(*) FROM person) + (SELECT count(*) FROM audit_row))::int AS n',
    );
    return found[0]?.n ?? -1;
  });
}

async function killedBackup(ground: Ground): Promise<void> {
  const folder = path.join(ground.folder, 'killed');
  const { child, ended } = program('backup', [folder], { DATABASE_URL: ground.demoUrl });
  let isOver = false;
  void ended.then(() => (isOver = true));
  let tables = 0;
  while (!isOver && tables < 5) {
    const part = (await readdir(ground.folder)).find((name) => name.startsWith('killed.'));
    tables = part ? (await readdir(path.join(ground.folder, part, 'tables')).catch(() => [])).length : 0;
  }
  child.kill('SIGKILL');
  const { code } = await ended;
  const named = (await readdir(ground.folder)).includes('killed');
  row(
    'backup killed with SIGKILL in the middle',
    `after ${tables} tables, ${named ? 'a folder of its name is there' : 'no folder of its name'}`,
    'nothing that could be taken for a backup',
    code === null && tables >= 5 && !named,
  );
}

async function sizeOf(folder: string): Promise<number> {
  const files = (await readdir(folder, { recursive: true, withFileTypes: true })).filter((entry) =>
    entry.isFile(),
  );
  let bytes = 0;
  for (const entry of files) bytes += (await stat(path.join(entry.parentPath, entry.name))).size;
  return bytes;
}

async function all(): Promise<void> {
  await onGround(NOW, async (ground) => {
    const folder = path.join(ground.folder, 'quiet');
    await whileWriting(ground);
    if (process.argv[2] === 'writing') return;
    await thereAndBack(ground, folder);
    await killedBackup(ground);
    const { tried, missed } = await hurtOneByOne(folder);
    row(
      'one bit changed, or one file cut off or taken away',
      `${tried - missed.length} of ${tried} refused by --check${missed.length > 0 ? `; not: ${missed.join(', ')}` : ''}`,
      'all refused, each naming a file',
      tried >= 60 && missed.length === 0,
    );
  });
}

try {
  await all();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`);
  row(
    'to its end',
    `it broke off: ${error instanceof Error ? error.message : String(error)}`,
    'its end',
    false,
  );
}
report(rows);
await end(Number(process.exitCode ?? 0));
