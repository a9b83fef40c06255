/**
 * The database of `npm start` where nobody names another: an embedded PostgreSQL under `.data/own`, apart from the demo's, so
 * that starting the demo anew deletes nothing of a school's own.
 */
import { existsSync } from 'node:fs';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { withDatabase } from './connection';
import { commandOf, isAlive, startEmbedded, type EmbeddedServer } from './embedded';
import { DATA } from './places.mjs';
import { Trouble } from './say.mjs';
import { keptSecret } from './secrets';

export const OWN_DATA = path.join(DATA, 'own');
const DATABASE = 'wheelchock_own';
const PASSWORD = 'owner of the own database';
/** The embedded server's port is another one each time, so the web account's password has a name without it. */
export const OWN_APP_PASSWORD = 'web account of the own database';

/** Which `npm start` runs from this folder, and on which port its database listens. */
const RUNNING = path.join(OWN_DATA, 'running.json');

interface Running {
  readonly pid: number;
  readonly port: number;
}

/**
 * Starts it and gives the owner's address. Refuses when another `npm start` runs on it: two web servers from one folder would
 * pull each other's build away. A server that a run left behind which was cut off is stopped first.
 */
export async function startOwnDatabase(): Promise<{
  server: EmbeddedServer;
  adminUrl: string;
  stop(): Promise<void>;
}> {
  const other = await running();
  if (other) {
    throw new Trouble(
      `Wheelchock runs from this folder already (process ${other.pid}). Stop it with Ctrl-C first.`,
    );
  }
  await mkdir(OWN_DATA, { recursive: true });
  const password = await keptSecret(PASSWORD);
  const server = await startEmbedded({ dataDir: path.join(OWN_DATA, 'postgres'), password, takeOver: true });
  await writeFile(RUNNING, JSON.stringify({ pid: process.pid, port: server.port } satisfies Running));
  const stop = async () => {
    await rm(RUNNING, { force: true });
    await server.stop();
  };
  return { server, adminUrl: withDatabase(server.adminUrl, DATABASE), stop };
}

/** Runs `work` on it with the owner's address: on the one of a running `npm start`, else started for as long as it takes. */
export async function withOwnDatabase<T>(work: (ownerUrl: string) => Promise<T>): Promise<T> {
  if (await running()) return work(await ownDatabaseUrl());
  const { adminUrl, stop } = await startOwnDatabase();
  try {
    return await work(adminUrl);
  } finally {
    await stop();
  }
}

/** Was it ever started? */
export const hasOwnDatabase = (): boolean => existsSync(path.join(OWN_DATA, 'postgres', 'PG_VERSION'));

/** The owner's address of the one that runs now. Refuses when there is none. */
export async function ownDatabaseUrl(): Promise<string> {
  const found = await running();
  if (!found) {
    throw new Trouble(
      "No database runs here: start it with `npm start`, or set DATABASE_URL to the owner's address.",
    );
  }
  return `postgres://postgres:${await keptSecret(PASSWORD)}@127.0.0.1:${found.port}/${DATABASE}`;
}

async function running(): Promise<Running | undefined> {
  const text = await readFile(RUNNING, 'utf8').catch(() => '');
  if (text === '') return undefined;
  const { pid, port } = JSON.parse(text) as Running;
  if (pid === process.pid || !isAlive(pid)) return undefined;
  // The number may meanwhile belong to another program.
  const command = commandOf(pid);
  return command === undefined || command.includes('start.mjs') ? { pid, port } : undefined;
}
