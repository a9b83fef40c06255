/**
 * Part of the proof: does a test notice when a rule is changed? Stryker changes lib/rules one place at a time (mutation.config.mjs says
 * what it leaves out, and why). As it stands the core of the answer is judged whole, and of all the rules one place in twelve, drawn by
 * lot. `WHEELCHOCK_MUTATION=sample` is the second alone. `WHEELCHOCK_MUTATION=all` judges every file, shard by
 * shard, and writes tests/prove/mutation-figures.md; a file's path in its place judges that one. `WHEELCHOCK_MUTATION_KEPT=yes` takes
 * over what an earlier run of the same shard found where neither rule nor test has changed since.
 */
import { readFile, rm, writeFile } from 'node:fs/promises';
import { runToEnd } from '../../lib/operate/children.mjs';
import { end, endOnSignals } from '../../lib/operate/stopping.mjs';
import { countsOf, score, sum, type Counts, type StrykerReport } from './mutation/counts';
import { figuresPage } from './mutation/figures-page';
import { sampleOfRules, wilson } from './mutation/sample';
import { CORE, SHARDS } from './mutation/shards';
import { report, type Row } from './row';

const WANTED = 90;
/** Of the places in all rules, one in so many is tried. */
const ONE_IN = 12;
const ASKED = process.env.WHEELCHOCK_MUTATION;
const ALL = ASKED === 'all';
const KEPT = process.env.WHEELCHOCK_MUTATION_KEPT === 'yes';
/** Of one shard, in minutes. The core takes about 4 on a machine with nothing else to do. */
const BOUND = ALL ? 180 : 18;
const PROGRAM = 'node --conditions=react-server --import tsx tests/prove/mutation.ts';
/** Whole it is a program of its own: it takes longer than a part of the proof may. */
const COMMAND = ASKED === undefined ? 'npm run prove -- mutation' : `WHEELCHOCK_MUTATION=${ASKED} ${PROGRAM}`;

async function judge(name: string, files: readonly string[]): Promise<Map<string, Counts>> {
  const began = Date.now();
  if (!KEPT) await rm(`.data/mutation/so-far-${name}.json`, { force: true });
  const { code, output } = await runToEnd(
    process.execPath,
    ['node_modules/@stryker-mutator/core/bin/stryker.js', 'run', 'tests/prove/mutation.config.mjs'],
    {
      show: false,
      timeoutMs: BOUND * 60_000,
      env: { ...process.env, WHEELCHOCK_MUTATE: files.join(','), WHEELCHOCK_MUTATION_NAME: name },
    },
  );
  if (code !== 0) throw new Error(`Stryker ended with ${code}:\n${output.slice(-2000)}`);
  const found = JSON.parse(await readFile(`.data/mutation/report-${name}.json`, 'utf8')) as StrykerReport;
  const counts = countsOf(found);
  process.stdout.write(
    `${name}: ${score(sum(counts.values())).toFixed(1)} % in ${Math.round((Date.now() - began) / 1000)} s\n`,
  );
  return counts;
}

const rowOf = (what: string, counts: Counts, more = ''): Row => {
  const { killed, survived } = counts;
  return {
    part: 'Mutations of the rules',
    what,
    command: COMMAND,
    measured: `${score(counts).toFixed(1)} % (${killed} of ${killed + survived} noticed)${more}`,
    wanted: `at least ${WANTED} %`,
    good: killed + survived > 0 && score(counts) >= WANTED,
  };
};

async function sampleRow(): Promise<Row> {
  const counts = sum((await judge('sample', await sampleOfRules(ONE_IN))).values());
  const [from, to] = wilson(counts.killed, counts.killed + counts.survived);
  const whole = `; of all, with 95 % confidence, ${from.toFixed(1)} to ${to.toFixed(1)} %`;
  return rowOf(`all of lib/rules, one place in ${ONE_IN} drawn by lot`, counts, whole);
}

endOnSignals(1);
const rows: Row[] = [];
try {
  if (ALL) {
    const files = new Map<string, Counts>();
    for (const [name, shard] of Object.entries(SHARDS))
      for (const [file, counts] of await judge(name, shard)) files.set(file, counts);
    await writeFile('tests/prove/mutation-figures.md', await figuresPage(files, COMMAND));
    rows.push(rowOf('every file of lib/rules', sum(files.values())));
  } else if (ASKED === 'sample') {
    rows.push(await sampleRow());
  } else if (ASKED !== undefined) {
    rows.push(rowOf(ASKED, sum((await judge('asked', ASKED.split(','))).values())));
  } else {
    rows.push(rowOf('the core of the answer', sum((await judge('core', CORE)).values())), await sampleRow());
  }
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`);
  const measured = `did not come to its end: ${error instanceof Error ? error.message.slice(0, 200) : String(error)}`;
  rows.push({
    part: 'Mutations of the rules',
    what: 'the run',
    command: COMMAND,
    measured,
    wanted: 'its end',
    good: false,
  });
}
report(rows);
await end(Number(process.exitCode ?? 0));
