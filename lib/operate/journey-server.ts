import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import getPort from 'get-port';
import { findBrowser } from './browser';
import { ensureBuild } from './build';
import { withDatabase } from './connection';
import { startEmbedded, temporaryDataDir } from './embedded';
import { photosIn } from './photos-in';
import { prepareDatabase, startAnew } from './prepare-database';
import { requireNoDemo } from './running-demo';
import { newSecret } from './secrets';
import { atEnd } from './stopping.mjs';
import { startWeb, webSettings, type WebOptions } from './web';

/** A built app on a database of its own with the demo in it, and a browser to look at it. */
export interface JourneyServer {
  readonly address: string;
  /** Path of the browser; undefined when Playwright's own is there. */
  readonly browser: string | undefined;
  /** Environment for fixtures that look behind the screens; the server itself never sees it. */
  readonly settings: Record<string, string | undefined>;
}

/** Builds, serves a database of its own with the demo in it, does the work, and takes everything away again. */
export const withJourneyServer = <T>(work: (server: JourneyServer) => Promise<T>): Promise<T> =>
  withJourneyServers(['alone'], ({ alone }) => work(alone));

/** The same with several servers of one build, by their names: each on a database of its own, so that they do not see one another. */
export async function withJourneyServers<Name extends string, T>(
  names: readonly [Name, ...Name[]],
  work: (servers: Readonly<Record<Name, JourneyServer>>) => Promise<T>,
): Promise<T> {
  const browser = await findBrowser();
  const database = await databaseServer();
  const undo: (() => Promise<unknown>)[] = [() => database.close()];
  try {
    const prepared: { name: Name; adminUrl: string; web: WebOptions }[] = [];
    for (const name of names) {
      const folders = { photoDir: await ownFolder('photos', undo), outbox: await ownFolder('outbox', undo) };
      const adminUrl = await database.make(`wheelchock_journeys_${name}`);
      const { appUrl } = await prepareDatabase(adminUrl, {}, photosIn(folders.photoDir));
      const port = await getPort();
      const web = { port, host: '127.0.0.1', appUrl, sessionSecret: newSecret(), ...folders };
      prepared.push({ name, adminUrl, web });
    }
    const [first] = prepared;
    await ensureBuild(first ? webSettings(first.web) : {}, () =>
      requireNoDemo('Building now would pull its files away.'),
    );
    // Journeys look at the page of the parts too.
    process.env['WHEELCHOCK_PARTS'] = 'yes';
    const servers: Partial<Record<Name, JourneyServer>> = {};
    for (const { name, adminUrl, web } of prepared) {
      const server = await startWeb(web);
      undo.push(() => server.stop());
      const settings = { ...webSettings(web), DATABASE_URL: adminUrl };
      servers[name] = { address: server.address, browser, settings };
    }
    return await work(servers as Record<Name, JourneyServer>);
  } finally {
    for (const step of undo.reverse()) await step();
  }
}

/** A folder for one run, taken away with the rest or when the program is ended. */
async function ownFolder(what: string, undo: (() => Promise<unknown>)[]): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), `wheelchock-${what}-`));
  const remove = () => rm(folder, { recursive: true, force: true });
  atEnd(remove);
  undo.push(remove);
  return folder;
}

/** Where the databases of the journeys live: the given server, or an embedded one that is thrown away. */
async function databaseServer(): Promise<{
  make(name: string): Promise<string>;
  close(): Promise<void>;
}> {
  const given = process.env['DATABASE_URL'];
  if (given) {
    const made: (() => Promise<unknown>)[] = [];
    return {
      async make(name) {
        const adminUrl = withDatabase(given, name);
        const clear = () => startAnew(adminUrl, name).catch(() => undefined);
        await clear();
        made.push(clear);
        return adminUrl;
      },
      async close() {
        for (const clear of made) await clear();
      },
    };
  }
  const folder = await temporaryDataDir();
  atEnd(folder.remove);
  const server = await startEmbedded({
    dataDir: folder.dataDir,
    password: newSecret(),
    zone: 'Pacific/Chatham',
  });
  atEnd(server.stop);
  return {
    make: (name) => Promise.resolve(withDatabase(server.adminUrl, name)),
    async close() {
      await server.stop();
      await folder.remove();
    },
  };
}
