/** Part of the proof: faults under write load. One fault alone: its name as an argument. See tests/prove/faults/. */
import { end, endOnSignals } from '@/lib/operate/stopping.mjs';
import { clock } from './faults/clock';
import { cuts } from './faults/cuts';
import { deliveries } from './faults/deliveries';
import { disk } from './faults/disk';
import { kills } from './faults/kills';
import { selfCheck } from './faults/self-check';
import { together } from './faults/together';
import { inYard } from './faults/yard';
import { COMMAND } from './faults/tally';
import { report, type Row } from './row';

/** Those that need no database of their own run on one, one after the other. */
const SHARED = { kills, cuts, clock, together, deliveries, selfCheck } as const;

endOnSignals(1);
process.setMaxListeners(0);
const chosen = process.argv.slice(2);
// The check of the check belongs to every run.
const isChosen = (name: string) => chosen.length === 0 || chosen.includes(name) || name === 'selfCheck';
const rows: Row[] = [];

async function fault(name: string, run: () => Promise<Row[]>): Promise<void> {
  const began = Date.now();
  try {
    rows.push(...(await run()));
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`);
    const measured = `did not come to its end: ${error instanceof Error ? error.message : String(error)}`;
    rows.push({
      part: 'faults',
      what: name,
      command: `${COMMAND} ${name}`,
      measured,
      wanted: 'its end',
      good: false,
    });
  }
  process.stdout.write(`${name}: ${Math.round((Date.now() - began) / 1000)} s\n`);
}

const shared = Object.entries(SHARED).filter(([name]) => isChosen(name));
if (chosen.join() !== 'disk') {
  await fault('opening the shared database', () =>
    inYard(async (yard) => {
      for (const [name, run] of shared) await fault(name, () => run(yard));
      return [];
    }),
  );
}
if (isChosen('disk')) await fault('disk', disk);
for (const { what, measured, good } of rows)
  process.stdout.write(`${good ? 'good' : 'NOT GOOD'}: ${what}: ${measured}\n`);
report(rows);
await end(Number(process.exitCode ?? 0));
