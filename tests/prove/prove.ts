/**
 * `npm run prove`: runs every part one after the other, prints one table, and writes docs/proof.md. `npm run prove -- faults
 * scale` runs these alone and writes theirs; the others' figures stay, each with its day and commit. Ends with 1 when a row is
 * not good.
 */
import { cpus, platform, totalmem } from 'node:os';
import { readFile, writeFile } from 'node:fs/promises';
import { runToEnd, startChild } from '../../lib/operate/children.mjs';
import { ensureClient } from '../../lib/operate/generate.mjs';
import { say, Trouble } from '../../lib/operate/say.mjs';
import { PARTS, type Part } from './parts';
import { PAGE, withFigures } from './page';
import { rowsIn, type Row } from './row';
import { asText } from './table';

/** After it was asked to end; its servers and folders are to be cleaned up meanwhile. */
const PATIENCE_MS = 30_000;

const commandOf = ({ name }: Part): string[] => [
  '--conditions=react-server',
  '--import',
  'tsx',
  `tests/prove/${name}.ts`,
];

/**
 * Runs a part with everything it starts as one group, so that a part over its bound leaves no server behind. Where groups
 * cannot be ended (Windows) only the part itself is.
 */
function runBounded(part: Part): Promise<{ code: number; output: string }> {
  return new Promise((resolve) => {
    const child = startChild(process.execPath, commandOf(part), {
      detached: true,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const end = (signal: NodeJS.Signals) => {
      try {
        if (child.pid !== undefined) process.kill(-child.pid, signal);
      } catch {
        child.kill(signal);
      }
    };
    const asked = setTimeout(() => end('SIGTERM'), part.bound * 60_000);
    const forced = setTimeout(() => end('SIGKILL'), part.bound * 60_000 + PATIENCE_MS);
    let output = '';
    child.stdout?.on('data', (chunk: Buffer) => {
      output += chunk.toString('utf8');
      process.stdout.write(chunk);
    });
    child.once('exit', (code) => {
      clearTimeout(asked);
      clearTimeout(forced);
      // What a part leaves running is ended with it; its rows are all written by now.
      end('SIGKILL');
      setImmediate(() => resolve({ code: code ?? 1, output }));
    });
  });
}

async function rowsOf(part: Part): Promise<Row[]> {
  say(`\n${part.title} (at most ${part.bound} minutes) ...`);
  const began = Date.now();
  const { code, output } = await runBounded(part);
  const rows = rowsIn(output);
  say(`${part.title}: ${Math.round((Date.now() - began) / 1000)} s.`);
  // It broke off, or ended badly without saying of what: that is a row too, and not a good one.
  if (rows.length > 0 && (code === 0 || rows.some(({ good }) => good === false))) return rows;
  return [
    ...rows,
    {
      part: part.title,
      what: 'the part ran to its end',
      command: `npm run prove -- ${part.name}`,
      measured: `ended with ${code}`,
      wanted: 'ended with 0',
      good: false,
    },
  ];
}

/** Runs all parts, or those named in `asked`. Gives the exit code. */
export async function prove(asked: readonly string[]): Promise<number> {
  const unknown = asked.filter((name) => !PARTS.some((part) => part.name === name));
  if (unknown.length > 0)
    throw new Trouble(
      `No part is called ${unknown.join(', ')}. There are: ${PARTS.map(({ name }) => name).join(', ')}.`,
    );
  await ensureClient();
  const began = Date.now();
  const rows: Row[] = [];
  for (const part of PARTS) {
    if (asked.length > 0 && !asked.includes(part.name)) continue;
    const own = await rowsOf(part);
    rows.push(...own);
    // At once: a run that is cut later keeps what it had.
    await writeFile(PAGE, await withFigures(await readFile(PAGE, 'utf8'), part, await stamp(), own));
  }
  say(`\n${asText(rows)}\n`);
  const minutes = Math.round((Date.now() - began) / 60_000);
  const count = (good: boolean | null) => rows.filter((row) => row.good === good).length;
  const sum = `${rows.length} figures in ${minutes} minutes: ${count(true)} good, ${count(false)} not good, ${count(null)} not to be had here.`;
  say(`${sum} Written to ${PAGE}.`);
  return count(false) > 0 ? 1 : 0;
}

/** Where and when, since a figure is of one machine. */
async function stamp(): Promise<string> {
  const git = (...args: string[]) => runToEnd('git', args, { show: false });
  const { output } = await git('rev-parse', '--short', 'HEAD');
  // The page itself is written meanwhile.
  const changed = await git('diff', '--quiet', 'HEAD', '--', '.', `:!${PAGE}`);
  const commit = `${output.trim()}${changed.code === 0 ? '' : ' with changes'}`;
  const gigabytes = Math.round(totalmem() / 2 ** 30);
  const day = new Date().toISOString().slice(0, 10);
  return `${day}, commit ${commit}, ${platform()}, ${cpus().length} cores (${cpus()[0]?.model.trim() ?? 'unknown'}), ${gigabytes} GB, Node ${process.version}.`;
}
