import { existsSync } from 'node:fs';
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { runToEnd } from './children.mjs';
import { ensureClient } from './generate.mjs';
import { type JourneyServer, withJourneyServers } from './journey-server';
import { inRepository } from './places.mjs';
import { findPdfReader } from './pdf-reader';
import { Trouble, explain, say } from './say.mjs';
import { atEnd, isEnding } from './stopping.mjs';
import { type Counts, playwrightCounts, vitestCounts } from './test-counts';

/** One layer of proof. */
interface Layer {
  /** The word after `npm test --`. */
  name: string;
  what: string;
  /** Tests count; a check counts only when it fails, as one. */
  run(): Promise<Counts>;
}

interface Result extends Counts {
  what: string;
  seconds: number;
}

const NOTHING: Counts = { passed: 0, failed: 0, skipped: 0 };

/** Folder of the reports, made for one run. */
let reports = '';

/** In the order in which they run: quick ones first. Those of one row run at the same time: each keeps to one processor. */
const ROWS: Layer[][] = [
  [
    { name: 'lint', what: 'lint', run: () => check('eslint/bin/eslint.js', ['.', '--max-warnings', '0']) },
    { name: 'format', what: 'format', run: () => check('prettier/bin/prettier.cjs', ['--check', '.']) },
    { name: 'types', what: 'types', run: checkTypes },
  ],
  [{ name: 'rules', what: 'rules, zone UTC', run: () => vitest('rules', 'UTC') }],
  [{ name: 'rules', what: 'rules, zone Pacific/Chatham', run: () => vitest('rules', 'Pacific/Chatham') }],
  [{ name: 'services', what: 'services on PostgreSQL', run: services }],
  [{ name: 'journeys', what: 'build and browser journeys', run: journeys }],
];

/**
 * Runs every layer, or those named in `args` (lint, format, types, rules, services, journeys), prints a table and
 * closes with "N passed, N failed". Every layer runs even when an earlier one failed. Gives the exit code.
 */
export async function runTests(args: string[]): Promise<number> {
  const names = [...new Set(ROWS.flat().map((layer) => layer.name))];
  const strange = args.filter((word) => !names.includes(word));
  if (strange.length > 0) {
    throw new Trouble(`There is no layer ${strange.join(', ')}. The layers are: ${names.join(', ')}.`);
  }
  reports = await mkdtemp(path.join(tmpdir(), 'wheelchock-reports-'));
  // PostgreSQL runs under another account when this is root, and finds its temporary files in here.
  await chmod(reports, 0o755);
  atEnd(() => rm(reports, { recursive: true, force: true, maxRetries: 5, retryDelay: 300 }));
  await ensureClient();

  const results: Result[] = [];
  for (const row of ROWS) {
    if (isEnding()) {
      return 1;
    }
    const wanted = row.filter(({ name }) => args.length === 0 || args.includes(name));
    results.push(...(await Promise.all(wanted.map(runLayer))));
  }
  return isEnding() ? 1 : conclude(results);
}

async function runLayer(layer: Layer): Promise<Result> {
  say(`\n=== ${layer.what}`);
  const start = Date.now();
  const counts = await layer.run().catch((error: unknown) => {
    console.error(explain(error));
    return { ...NOTHING, failed: 1 };
  });
  return { what: layer.what, ...counts, seconds: (Date.now() - start) / 1000 };
}

function conclude(results: Result[]): number {
  const sum = (key: keyof Counts) => results.reduce((total, result) => total + result[key], 0);
  const wide = Math.max(...results.map((result) => result.what.length));
  say('');
  for (const result of results) {
    const counted = result.passed > 0 ? `${result.passed} passed, ${result.failed} failed` : '';
    const verdict = result.failed === 0 ? 'good  ' : 'FAILED';
    say(
      `${result.what.padEnd(wide)}  ${verdict}  ${result.seconds.toFixed(1).padStart(6)} s  ${counted}`.trimEnd(),
    );
  }
  const skipped = sum('skipped') > 0 ? `, ${sum('skipped')} skipped` : '';
  say(`\n${sum('passed')} passed, ${sum('failed')} failed${skipped}`);
  return sum('failed') === 0 ? 0 : 1;
}

/** Runs a tool that only says yes or no. */
async function check(tool: string, args: string[]): Promise<Counts> {
  const { code } = await runToEnd(
    process.execPath,
    [inRepository('node_modules', ...tool.split('/')), ...args],
    {
      show: true,
    },
  );
  return code === 0 ? NOTHING : { ...NOTHING, failed: 1 };
}

/** Next writes the types of the routes first; a fresh clone has none. */
async function checkTypes(): Promise<Counts> {
  const routes = existsSync(inRepository('app')) ? await check('next/dist/bin/next', ['typegen']) : NOTHING;
  return routes.failed > 0 ? routes : check('typescript/bin/tsc', ['--noEmit']);
}

async function vitest(project: string, zone: string): Promise<Counts> {
  const file = path.join(reports, `${project}-${zone.replace('/', '-')}.json`);
  const { code } = await runToEnd(
    process.execPath,
    [
      inRepository('node_modules', 'vitest', 'vitest.mjs'),
      'run',
      '--project',
      project,
      '--reporter=dot',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ],
    // What a run that is cut short leaves in the temporary folder goes with the reports.
    { show: true, env: { TZ: zone, TMPDIR: reports } },
  );
  return vitestCounts(file, code);
}

/** The papers that services make are read back with a program of the system's. */
async function services(): Promise<Counts> {
  await findPdfReader();
  return vitest('services', 'Pacific/Chatham');
}

/** Lanes of the journeys: projects of playwright.config.ts. Each has a server and a database of its own. */
const LANES = ['phone', 'desktop'] as const;

/**
 * Lets the browser travel through the built app: both lanes at the same time, for much of a journey is waiting. Journeys that
 * hold a stopwatch carry the tag @alone and run afterwards, one lane after the other.
 */
async function journeys(): Promise<Counts> {
  await findPdfReader();
  return withJourneyServers(LANES, async (servers) => {
    const counts = await Promise.all(
      LANES.map((lane) => travel(lane, servers[lane], '--grep-invert=@alone')),
    );
    for (const lane of LANES) {
      if (isEnding()) break;
      counts.push(await travel(lane, servers[lane], '--grep=@alone'));
    }
    return counts.reduce(plus, NOTHING);
  });
}

const plus = (one: Counts, other: Counts): Counts => ({
  passed: one.passed + other.passed,
  failed: one.failed + other.failed,
  skipped: one.skipped + other.skipped,
});

async function travel(
  lane: (typeof LANES)[number],
  { address, browser, settings }: JourneyServer,
  which: string,
): Promise<Counts> {
  const name = `${lane}${which.replace(/\W+/g, '-')}`;
  const file = path.join(reports, `journeys-${name}.json`);
  const { code } = await runToEnd(
    process.execPath,
    [
      inRepository('node_modules', '@playwright', 'test', 'cli.js'),
      'test',
      `--project=${lane}`,
      which,
      '--reporter=list,json',
      `--output=test-results/${name}`,
    ],
    {
      show: true,
      env: {
        ...settings,
        NODE_ENV: 'test',
        WHEELCHOCK_BASE_URL: address,
        PLAYWRIGHT_JSON_OUTPUT_NAME: file,
        ...(browser === undefined ? {} : { WHEELCHOCK_CHROMIUM: browser }),
      },
    },
  );
  return playwrightCounts(file, code);
}
