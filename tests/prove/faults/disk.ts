/** The disk of the database runs full under write load, and is cleared again. */
import { spawnSync } from 'node:child_process';
import { chmod, mkdtemp, open, rm, statfs } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { atEnd } from '@/lib/operate/stopping.mjs';
import type { Row } from '../row';
import { spoken } from './kills';
import { COMMAND, rowOf, rounds, Tally } from './tally';
import { inYard, type Yard } from './yard';

const WHAT = 'disk full: the database’s files on a small disk of their own that fills up under load';
const SIZE_MB = 320;

export async function disk(): Promise<Row[]> {
  const place = await mkdtemp(path.join(tmpdir(), 'wheelchock-disk-'));
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${SIZE_MB}m`, 'wheelchock-disk', place], {
    encoding: 'utf8',
  });
  let isThere = mounted.status === 0;
  const clear = async () => {
    if (isThere) isThere = spawnSync('umount', [place]).status !== 0;
    if (!isThere) await rm(place, { recursive: true, force: true });
  };
  atEnd(clear);
  try {
    if (!isThere) {
      const measured = `not run: this account may mount no small disk (${mounted.stderr.trim()})`;
      return [
        {
          part: 'faults',
          what: WHAT,
          command: `${COMMAND} disk`,
          measured,
          wanted: 'run as root',
          good: false,
        },
      ];
    }
    await chmod(place, 0o755);
    return await inYard(async (yard) => [await fillAndClear(yard, place)], place);
  } finally {
    await clear();
  }
}

async function fillAndClear(yard: Yard, place: string): Promise<Row> {
  const { load, site } = yard;
  const tally = new Tally();
  const times = rounds(6);
  const ballast = path.join(place, 'ballast');
  let full = 0;
  let serverDown = 0;
  for (let round = 0; round < times; round += 1) {
    const since = load.acked.length;
    const troublesBefore = count(load.troubles) + load.unanswered;
    await yard.busyFor(300);
    await fill(ballast, place);
    // By turns the tables find no room (SQLSTATE 53100), or the log of the database finds none and the server goes down.
    const until = Date.now() + 60_000;
    while (count(load.troubles) + load.unanswered === troublesBefore && Date.now() < until) {
      if (round % 2 === 1) await site.sql(NEXT_SEGMENT).catch(() => undefined);
      await pause(50);
    }
    if (count(load.troubles) + load.unanswered > troublesBefore) full += 1;
    // It stays full for a while, and everybody goes on trying.
    await pause(700);
    await load.shut();
    await rm(ballast, { force: true });
    if (!(await isUp(site))) serverDown += 1;
    await site.startDatabase();
    await yard.checkAcknowledged(tally, since);
    await yard.checkAll(tally);
  }
  return rowOf({
    what: WHAT,
    done: `${times} times filled, ${full} met by the load, ${serverDown} times the database went down, ${load.acked.length} writes acknowledged${spoken(load.troubles)}`,
    atLeast: `met by the load ${times} times, and after each the work goes on`,
    enough: full === times,
    tally,
  });
}

/** Has the server begin a new file of its log, for which it needs room. */
const NEXT_SEGMENT = `SELECT pg_logical_emit_message(false, 'proof', 'full'), pg_switch_wal()`;

/** Takes all room there is. */
async function fill(file: string, place: string): Promise<void> {
  const { bavail, bsize } = await statfs(place);
  const ballast = await open(file, 'w');
  try {
    const block = Buffer.alloc(1 << 20);
    for (let room = bavail * bsize; room > 0; room -= block.byteLength) {
      await ballast.write(block, 0, Math.min(block.byteLength, Math.max(1, Math.floor(room))));
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOSPC') throw error;
  } finally {
    await ballast.close();
  }
}

const isUp = (site: Yard['site']): Promise<boolean> =>
  site.sql('SELECT 1').then(
    () => true,
    () => false,
  );

const count = (troubles: ReadonlyMap<string, number>): number =>
  [...troubles.values()].reduce((sum, one) => sum + one, 0);
