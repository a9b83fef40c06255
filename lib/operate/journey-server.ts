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
import { startWeb, webSettings } from './web';

/** A built app on a database of its own with the demo in it, and a browser to look at it. */
export interface JourneyServer {
  readonly address: string;
  /** Path of the browser; undefined when Playwright's own is there. */
  readonly browser: string | undefined;
  /** Environment for fixtures that look behind the screens; the server itself never sees it. */
  readonly settings: Record<string, string | undefined>;
}

/** Builds, serves a database of its own with the demo in it, does the work, and takes everything away again. */
export async function withJourneyServer<T>(work: (server: JourneyServer) => Promise<T>): Promise<T> {
  const browser = await findBrowser();
  const photoDir = await mkdtemp(path.join(tmpdir(), 'wheelchock-photos-'));
  const removePhotos = () => rm(photoDir, { recursive: true, force: true });
  atEnd(removePhotos);
  const outbox = await mkdtemp(path.join(tmpdir(), 'wheelchock-outbox-'));
  const removeOutbox = () => rm(outbox, { recursive: true, force: true });
  atEnd(removeOutbox);
  const database = await journeyDatabase();
  try {
    const { appUrl } = await prepareDatabase(database.adminUrl, {}, photosIn(photoDir));
    const web = {
      port: await getPort(),
      host: '127.0.0.1',
      appUrl,
      sessionSecret: newSecret(),
      photoDir,
      outbox,
    };
    await ensureBuild(webSettings(web), () => requireNoDemo('Building now would pull its files away.'));
    // Journeys look at the page of the parts too.
    process.env['WHEELCHOCK_PARTS'] = 'yes';
    const server = await startWeb(web);
    try {
      const settings = { ...webSettings(web), DATABASE_URL: database.adminUrl };
      return await work({ address: server.address, browser, settings });
    } finally {
      await server.stop();
    }
  } finally {
    await database.close();
    await removePhotos();
    await removeOutbox();
  }
}

/** A database for the journeys alone: on the given server, or on an embedded one that is thrown away. */
async function journeyDatabase(): Promise<{ adminUrl: string; close(): Promise<void> }> {
  const given = process.env['DATABASE_URL'];
  if (given) {
    const adminUrl = withDatabase(given, 'wheelchock_journeys');
    const clear = () => startAnew(adminUrl, 'wheelchock_journeys').catch(() => undefined);
    await clear();
    return { adminUrl, close: clear };
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
    adminUrl: withDatabase(server.adminUrl, 'wheelchock'),
    async close() {
      await server.stop();
      await folder.remove();
    },
  };
}
