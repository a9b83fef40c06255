import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { commandOf, isAlive } from './embedded';
import { DATA } from './places.mjs';
import { Trouble } from './say.mjs';

const FILE = path.join(DATA, 'demo.json');

interface Running {
  pid: number;
  address: string;
}

/** The demo that runs from this folder now, or undefined. A file left by one that was cut off does not count. */
export async function runningDemo(): Promise<Running | undefined> {
  const text = await readFile(FILE, 'utf8').catch(() => '');
  let written: Partial<Running>;
  try {
    written = JSON.parse(text) as Partial<Running>;
  } catch {
    return undefined;
  }
  const { pid, address } = written;
  if (typeof pid !== 'number' || typeof address !== 'string' || pid === process.pid || !isAlive(pid)) {
    return undefined;
  }
  // The number may meanwhile belong to another program.
  const command = commandOf(pid);
  return command === undefined || command.includes('demo.mjs') ? { pid, address } : undefined;
}

/** Refuses what must not happen under a running demo. */
export async function requireNoDemo(why: string): Promise<void> {
  const running = await runningDemo();
  if (running !== undefined) {
    throw new Trouble(
      `A demo already runs from this folder (process ${running.pid}, ${running.address}). ${why} Stop it with Ctrl-C first.`,
    );
  }
}

/** Writes down that this process is the demo; gives back the act that takes it away. */
export async function claimDemo(address: string): Promise<() => Promise<void>> {
  await requireNoDemo('Use that one, or start anew.');
  await mkdir(DATA, { recursive: true });
  await rm(FILE, { force: true });
  try {
    await writeFile(FILE, JSON.stringify({ pid: process.pid, address }), { flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') {
      throw new Trouble('Another demo is starting from this folder at this moment.', { cause: error });
    }
    throw error;
  }
  return () => rm(FILE, { force: true });
}
