import { rm, statfs } from 'node:fs/promises';
import path from 'node:path';
import { DEMO_PREFIX } from '../access/session-secret';
import { ensureBuild } from './build';
import { databaseIn, ensureDatabase, withDatabase } from './connection';
import { removeData, startEmbedded } from './embedded';
import { ensureClient } from './generate.mjs';
import { appPasswordName } from './migrate';
import { DATA, ROOT } from './places.mjs';
import { prepareDatabase, startAnew } from './prepare-database';
import { claimDemo } from './running-demo';
import { Trouble, diskFull, say } from './say.mjs';
import { keptSecret } from './secrets';
import { atEnd } from './stopping.mjs';
import { requireFreePort, startWeb, webSettings } from './web';

/** Less than this and the build or the database fills the disk halfway. */
const LEAST_FREE_BYTES = 300 * 1024 * 1024;

/**
 * Brings the demo up and keeps it up until it is stopped or one of its parts dies. `args` are the words after
 * `npm run demo --`. Gives the exit code; everything started is stopped by `end` in stopping.mjs.
 */
export async function demo(args: string[]): Promise<number> {
  const fresh = readArguments(args);
  const port = readPort();
  const host = process.env['WHEELCHOCK_HOST'] || '127.0.0.1';
  atEnd(await claimDemo(`http://localhost:${port}`));
  await requireFreePort(port, host);
  await requireSpace();
  await ensureClient();

  const { adminUrl, passwordName, died } = await openDatabase(fresh);
  // The default folder of lib/photos. What somebody named in PHOTO_DIR is theirs and stays.
  if (fresh) await rm(path.join(DATA, 'photos'), { recursive: true, force: true });
  // The same of the default folder of letters.
  if (fresh) await rm(OUTBOX, { recursive: true, force: true });
  const chosen = process.env['APP_DATABASE_URL'] || undefined;
  const { appUrl, logins } = await prepareDatabase(adminUrl, {
    appUrl: chosen,
    appPassword: chosen === undefined ? await keptSecret(passwordName) : undefined,
  });
  const sessionSecret =
    process.env['NEXTAUTH_SECRET'] || `${DEMO_PREFIX}${await keptSecret('sessions of the demo')}`;
  const outbox = letterFolder();
  const web = { port, host, appUrl, sessionSecret, outbox };
  await ensureBuild(webSettings(web));
  const server = await startWeb(web);

  const letters = outbox
    ? `Letters are not sent; each lies as a file in ${outbox}`
    : 'Letters are sent by way of SMTP_URL.';
  say(`\nWheelchock is at ${server.address}\n\n${logins}\n\n${letters}\n\nCtrl-C stops it.`);
  const [what, words] = await Promise.race([
    died.then((said) => ['PostgreSQL', said] as const),
    server.died.then((said) => ['The web server', said] as const),
  ]);
  throw new Trouble(`${what} ended by itself, so the demo stops. Its last words:\n${words}`);
}

const OUTBOX = path.join(DATA, 'outbox');

/** The folder letters go to: the chosen one, or the demo's own; undefined when they are really sent. */
function letterFolder(): string | undefined {
  if (process.env['SMTP_URL']) return undefined;
  return process.env['MAIL_OUTBOX_DIR'] || OUTBOX;
}

function readArguments(args: string[]): boolean {
  const strange = args.filter((word) => word !== '--fresh');
  if (strange.length > 0) {
    throw new Trouble(`Not understood: ${strange.join(' ')}. The demo knows: npm run demo -- --fresh`);
  }
  return args.includes('--fresh');
}

function readPort(): number {
  const text = process.env['PORT'] || '3000';
  const port = Number(text);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new Trouble(`PORT=${text} is no port; it is a whole number from 1 to 65535.`);
  }
  return port;
}

async function requireSpace(): Promise<void> {
  const { bavail, bsize } = await statfs(ROOT);
  if (bavail * bsize < LEAST_FREE_BYTES) {
    throw diskFull();
  }
}

interface OpenDatabase {
  adminUrl: string;
  /** The name under which the web account's password is kept. */
  passwordName: string;
  /** Resolves when the embedded server ends by itself. */
  died: Promise<string>;
}

/** The given server's database, or the embedded server's. */
async function openDatabase(fresh: boolean): Promise<OpenDatabase> {
  const given = process.env['DATABASE_URL'];
  if (given) {
    await ensureDatabase(given);
    if (fresh) {
      await startAnew(given, databaseIn(given));
    }
    // A server of somebody else's is watched by the web server's own connections.
    return { adminUrl: given, passwordName: appPasswordName(given), died: new Promise(() => undefined) };
  }
  const dataDir = path.join(DATA, 'postgres');
  const password = await keptSecret('database owner');
  if (fresh) {
    say('Deleting the demo database and starting anew.');
    await removeData(dataDir, password);
  }
  // `claimDemo` has made sure that no other demo runs: a server still on the folder was left by one that was cut off.
  const server = await startEmbedded({ dataDir, password, takeOver: true });
  atEnd(() => server.stop());
  // The embedded server's port is another one each time, so it is no part of the name.
  const passwordName = 'web account of the embedded database';
  return { adminUrl: withDatabase(server.adminUrl, 'wheelchock'), passwordName, died: server.died };
}
