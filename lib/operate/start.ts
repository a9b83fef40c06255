import path from 'node:path';
import { ensureBuild } from './build';
import { ensureClient } from './generate.mjs';
import { appPasswordName, migrate } from './migrate';
import { OWN_APP_PASSWORD, OWN_DATA, startOwnDatabase } from './own-database';
import { requireNoDemo } from './running-demo';
import { checkAppAccount } from './roles';
import { Trouble, say } from './say.mjs';
import { keptSecret } from './secrets';
import { makeSetUpToken, tokenInWords } from './set-up-token';
import { atEnd } from './stopping.mjs';
import { requireFreePort, startWeb, webSettings } from './web';

/** Where the data is, and what may be done with it. */
interface Data {
  readonly appUrl: string;
  /** The owner's address, where this process has it: it then migrates and makes a set-up token. */
  readonly adminUrl: string | null;
  /** Folder of the photos, where nobody has said another. */
  readonly photoDir?: string;
  /** Resolves when a database of our own ends by itself. */
  readonly died: Promise<string>;
}

/**
 * Serves a school's own data until it is stopped or one of its parts dies. Gives the exit code.
 *
 * - `DATABASE_URL` (the owner's): migrates that database first.
 * - `APP_DATABASE_URL` alone: only serves; migrating and the set-up token are jobs of the owner's account.
 * - neither: an embedded PostgreSQL under `.data/own`.
 */
export async function start(args: string[]): Promise<number> {
  if (args.length > 0) throw new Trouble(`Not understood: ${args.join(' ')}. npm start takes no words.`);
  const port = readPort();
  const host = process.env['WHEELCHOCK_HOST'] || '127.0.0.1';
  await requireFreePort(port, host);
  await ensureClient();

  const data = await openData();
  const sessionSecret = process.env['NEXTAUTH_SECRET'] || (await keptSecret('sessions'));
  const web = {
    port,
    host,
    appUrl: data.appUrl,
    sessionSecret,
    showLog: true,
    ...(data.photoDir ? { photoDir: data.photoDir } : {}),
  };
  await ensureBuild(webSettings(web), () => requireNoDemo('Building now would pull its files away.'));
  const server = await startWeb(web);

  say(`\nWheelchock is at ${server.address}\n`);
  const token = data.adminUrl === null ? null : await makeSetUpToken(data.adminUrl);
  if (token !== null) say(`${tokenInWords(process.env['NEXTAUTH_URL'] || server.address, token)}\n`);
  if (!process.env['SMTP_URL'] && !process.env['MAIL_OUTBOX_DIR']) {
    say('No letters are sent: set SMTP_URL and MAIL_FROM for that. Links can be printed until then.');
  }
  say('Ctrl-C stops it.');
  const [what, words] = await Promise.race([
    data.died.then((said) => ['PostgreSQL', said] as const),
    server.died.then((said) => ['The web server', said] as const),
  ]);
  throw new Trouble(`${what} ended by itself. Its last words:\n${words}`);
}

async function openData(): Promise<Data> {
  const chosen = process.env['APP_DATABASE_URL'] || undefined;
  const given = process.env['DATABASE_URL'] || undefined;
  // A server of somebody else's is watched by the web server's own connections.
  const never = new Promise<string>(() => undefined);
  if (given === undefined && chosen !== undefined) {
    await checkAppAccount(chosen);
    return { appUrl: chosen, adminUrl: null, died: never };
  }
  if (given !== undefined) {
    return { appUrl: await migrated(given, chosen, appPasswordName(given)), adminUrl: given, died: never };
  }
  const { server, adminUrl, stop } = await startOwnDatabase();
  atEnd(stop);
  const appUrl = await migrated(adminUrl, undefined, OWN_APP_PASSWORD);
  return { appUrl, adminUrl, died: server.died, ...ownPhotos() };
}

async function migrated(adminUrl: string, appUrl: string | undefined, passwordName: string): Promise<string> {
  const done = await migrate(adminUrl, {
    appUrl,
    appPassword: appUrl === undefined ? await keptSecret(passwordName) : undefined,
  });
  if (done.applied.length > 0) say(`Migrated the database: ${done.applied.join(', ')}`);
  return done.appUrl;
}

/** Beside the database, not among the demo's; what somebody named in the environment holds. */
function ownPhotos(): { photoDir?: string } {
  const named = process.env['PHOTO_DIR'] || process.env['PHOTO_S3_BUCKET'];
  return named ? {} : { photoDir: path.join(OWN_DATA, 'photos') };
}

function readPort(): number {
  const text = process.env['PORT'] || '3000';
  const port = Number(text);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new Trouble(`PORT=${text} is no port; it is a whole number from 1 to 65535.`);
  }
  return port;
}
