/** kill -9 of the application, of PostgreSQL, and of both, under write load. */
import type { Row } from '../row';
import { rowOf, rounds, Tally } from './tally';
import { between, type Yard } from './yard';

interface Kill {
  readonly what: string;
  readonly times: number;
  readonly strike: (yard: Yard, round: number) => Promise<void>;
  readonly recover: (yard: Yard, round: number) => Promise<void>;
}

const none = () => Promise.resolve();

const KILLS: readonly Kill[] = [
  {
    what: 'kill -9 of the application under load',
    times: rounds(24),
    strike: (yard) => yard.killApps(),
    recover: none,
  },
  {
    what: 'kill -9 of PostgreSQL under load: by turns the whole server and one backend (fsync itself cannot be shown so: the kernel lives on)',
    times: rounds(12),
    strike: ({ site }, round) => (round % 2 === 0 ? site.killDatabase() : site.killBackend()),
    recover: ({ site }) => site.startDatabase(),
  },
  {
    what: 'kill -9 of application and PostgreSQL at one moment under load',
    times: rounds(8),
    strike: async (yard) => {
      await Promise.all([yard.site.killDatabase(), yard.killApps()]);
    },
    recover: ({ site }) => site.startDatabase(),
  },
];

export async function kills(yard: Yard): Promise<Row[]> {
  const rows: Row[] = [];
  for (const kill of KILLS) rows.push(await run(yard, kill));
  return rows;
}

async function run(yard: Yard, { what, times, strike, recover }: Kill): Promise<Row> {
  const { load } = yard;
  const tally = new Tally();
  const before = load.acked.length;
  const unansweredBefore = load.unanswered;
  load.troubles.clear();
  for (let round = 0; round < times; round += 1) {
    const since = load.acked.length;
    await yard.busyFor(between(150, 900));
    await strike(yard, round);
    await recover(yard, round);
    await load.shut();
    await yard.checkAcknowledged(tally, since);
    await yard.checkAll(tally);
  }
  const acked = load.acked.length - before;
  const cut =
    load.unanswered - unansweredBefore + [...load.troubles.values()].reduce((sum, count) => sum + count, 0);
  return rowOf({
    what,
    done: `${times} kills, ${acked} writes acknowledged, ${cut} calls cut short${spoken(load.troubles)}`,
    atLeast: `at least ${times} kills with more than ${times * 3} writes acknowledged and ${times / 2} calls cut short`,
    enough: acked > times * 3 && cut >= times / 2,
    tally,
  });
}

/** What the application said when it could not, other than to try again. */
export function spoken(troubles: ReadonlyMap<string, number>): string {
  const bugs = [...troubles].filter(([what]) => !what.startsWith('try_again'));
  return bugs.map(([what, count]) => `, ${count} times answered "${what.split(':')[0]}"`).join('');
}
