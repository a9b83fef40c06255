import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { closeDatabase } from '@/lib/db/client';
import { withDatabase } from '@/lib/operate/connection';
import { startEmbedded, temporaryDataDir } from '@/lib/operate/embedded';
import { loadDemo } from '@/lib/operate/load-demo';
import { migrate } from '@/lib/operate/migrate';
import { photosIn } from '@/lib/operate/photos-in';
import { atEnd } from '@/lib/operate/stopping.mjs';

/** A server of this part's own with the demo in one database, and a folder for photos and backups. */
export interface Ground {
  readonly demoUrl: string;
  readonly demoAppUrl: string;
  readonly folder: string;
  /** The owner's address of another database on the server. */
  another(name: string): string;
}

/** Where photos of a database lie. */
export const photosOf = (ground: Ground, name: string): Record<string, string> =>
  photosIn(path.join(ground.folder, `photos-${name}`));

/** Opens it and runs `work`. All of it is taken away at the end of the program, also of one that is told to stop. */
export async function onGround(now: Date, work: (ground: Ground) => Promise<void>): Promise<void> {
  // A line for each of the demo's thousand acts tells nothing here.
  process.env['LOG_LEVEL'] = 'error';
  const folder = await mkdtemp(path.join(tmpdir(), 'wheelchock-prove-backup-'));
  atEnd(() => rm(folder, { recursive: true, force: true }));
  const data = await temporaryDataDir();
  atEnd(() => data.remove());
  const server = await startEmbedded({ dataDir: data.dataDir, password: 'only-for-tests' });
  atEnd(() => server.stop());
  atEnd(() => closeDatabase());
  const another = (name: string) => withDatabase(server.adminUrl, name);
  const demoUrl = another('prove_demo');
  const { appUrl: demoAppUrl } = await migrate(demoUrl);
  const ground = { demoUrl, demoAppUrl, folder, another };
  Object.assign(process.env, photosOf(ground, 'demo'));
  await loadDemo(demoUrl, demoAppUrl, { now });
  process.env['APP_DATABASE_URL'] = demoAppUrl;
  await work(ground);
}
