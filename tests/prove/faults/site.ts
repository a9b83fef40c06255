/** A PostgreSQL of the proof's own, on a folder of its own, that can be killed and started again under the same address. */
import { readFile, readdir } from 'node:fs/promises';
import { setTimeout as pause } from 'node:timers/promises';
import type pg from 'pg';
import { closeDatabase } from '@/lib/db/client';
import { withClient, withDatabase } from '@/lib/operate/connection';
import { isAlive, startEmbedded, temporaryDataDir, type EmbeddedServer } from '@/lib/operate/embedded';
import { migrate } from '@/lib/operate/migrate';
import { atEnd } from '@/lib/operate/stopping.mjs';
import { Pipe } from './pipe';

const PASSWORD = 'only-for-the-proof';
const NAME = 'wheelchock';

export class Site {
  private constructor(
    readonly dataDir: string,
    readonly pipe: Pipe,
    private server: EmbeddedServer,
    /** What the application is told: through the pipe. */
    readonly appUrl: string,
    private readonly remove: () => Promise<void>,
  ) {}

  /** @param place where its files lie; a temporary folder unless said */
  static async open(place?: string): Promise<Site> {
    const folder = place
      ? { dataDir: `${place}/postgres`, remove: async () => {} }
      : await temporaryDataDir();
    const { dataDir, remove } = folder;
    atEnd(remove);
    try {
      const server = await startEmbedded({ dataDir, password: PASSWORD });
      const { appUrl } = await migrate(withDatabase(server.adminUrl, NAME));
      const pipe = new Pipe();
      pipe.target = server.port;
      const through = new URL(appUrl);
      through.port = String(await pipe.open());
      const site = new Site(dataDir, pipe, server, through.toString(), remove);
      atEnd(() => site.server.stop());
      return site;
    } catch (error) {
      await remove();
      throw error;
    }
  }

  /** Owner of the tables, past the pipe. */
  get adminUrl(): string {
    return withDatabase(this.server.adminUrl, NAME);
  }

  sql = async <T extends pg.QueryResultRow>(text: string, values: unknown[] = []): Promise<T[]> =>
    withClient(this.adminUrl, async (client) => (await client.query<T>(text, values)).rows);

  /** Has this process's own services use the database too: for founding schools. */
  async use(): Promise<void> {
    process.env['APP_DATABASE_URL'] = this.appUrl;
    await closeDatabase();
  }

  /** kill -9 of the server with everything it started, at one moment. */
  async killDatabase(): Promise<void> {
    const postmaster = await this.postmaster();
    const all = [postmaster, ...(await childrenOf(postmaster))];
    // The first must not see the others die.
    all.forEach((pid) => killHard(pid));
    while (all.some(isRunning)) await pause(5);
  }

  /** kill -9 of one backend in the middle of what it does; the server then ends all others and recovers by itself. */
  async killBackend(): Promise<void> {
    const busy = await this.sql<{ pid: number }>(
      `SELECT pid FROM pg_stat_activity WHERE datname = $1 AND xact_start IS NOT NULL AND pid <> pg_backend_pid()
       ORDER BY state = 'active' DESC, random() LIMIT 1`,
      [NAME],
    );
    const pid = busy[0]?.pid ?? (await this.sql<{ pid: number }>(ANY_BACKEND, [NAME]))[0]?.pid;
    if (pid !== undefined) killHard(pid);
  }

  /** Starts the server again on its files, and waits until it has recovered. Nothing to do where it runs. */
  async startDatabase(): Promise<void> {
    const pid = await this.postmaster().catch(() => 0);
    if (pid === 0 || !isRunning(pid)) {
      this.server = await startEmbedded({ dataDir: this.dataDir, password: PASSWORD });
      this.pipe.target = this.server.port;
    }
    // Long: before it replays anything it has every file of the folder put on disk, behind whatever else the disk is busy with.
    const until = Date.now() + 300_000;
    for (;;) {
      try {
        await this.sql('SELECT 1');
        return;
      } catch (error) {
        if (Date.now() > until) throw error;
        await pause(50);
      }
    }
  }

  async close(): Promise<void> {
    await closeDatabase();
    await this.pipe.close();
    await this.server.stop();
    await this.remove();
  }

  private async postmaster(): Promise<number> {
    return Number((await readFile(`${this.dataDir}/postmaster.pid`, 'utf8')).split('\n')[0]);
  }
}

const ANY_BACKEND = `SELECT pid FROM pg_stat_activity WHERE datname = $1 AND pid <> pg_backend_pid() LIMIT 1`;

function killHard(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // Gone already.
  }
}

/** Alive and not a zombie that nobody has fetched yet. */
const isRunning = (pid: number): boolean => isAlive(pid);

async function childrenOf(parent: number): Promise<number[]> {
  const found: number[] = [];
  for (const name of await readdir('/proc')) {
    if (!/^\d+$/.test(name)) continue;
    const stat = await readFile(`/proc/${name}/stat`, 'utf8').catch(() => '');
    // pid (name) state parent …
    if (Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]) === parent) found.push(Number(name));
  }
  return found;
}
