/** The connection cut in the middle of a sign-off, at every place it has a middle; the client sends it again. */
import { setTimeout as pause } from 'node:timers/promises';
import { withClient } from '@/lib/operate/connection';
import { nickedPropeller, startOf } from '../../fixtures/acts';
import type { Row } from '../row';
import { type Call } from './app-process';
import { spoken } from './kills';
import type { AircraftLedger } from './ledger';
import { entryToday, signatureToday } from './load';
import type { Site } from './site';
import { rowOf, rounds, Tally } from './tally';
import { between, type Yard } from './yard';

/** Tables a sign-off writes to, in the order it does. Its backend is ended while it waits for one of them. */
const TABLES = [
  'sign_off',
  'maintenance_action',
  'discrepancy',
  'request',
  'audit_row',
  'audit_head',
] as const;

/** Sends a sign-off and cuts it; gives when it was acknowledged in the end. `strikes` counts cuts that met it. */
type Cut = (yard: Yard, send: () => Promise<unknown>, call: Call, round: number) => Promise<number>;

/** `least`: the part of the rounds in which the cut must have met the sign-off; all of them unless said. */
const CUTS: readonly { readonly what: string; readonly cut: Cut; readonly least?: number }[] = [
  {
    what: 'the database ends the connection within the transaction of a sign-off, at each table it writes',
    cut: async ({ site }, send, _call, round) => {
      const met = { count: 0 };
      await whileLocked(site, TABLES[round % TABLES.length] ?? 'sign_off', send, met);
      return met.count;
    },
  },
  {
    what: 'the line is cut before the COMMIT of a sign-off reaches the database',
    cut: ({ site }, send) => throughPipe(site, 'before-commit', send),
  },
  {
    what: 'the line is cut between the COMMIT of a sign-off and its answer',
    cut: ({ site }, send) => throughPipe(site, 'after-commit', send),
  },
  {
    what: 'the client hangs up during a sign-off',
    least: 0.5,
    cut: async ({ apps }, send, call) => {
      const gone = new AbortController();
      // Only one that had no answer yet was cut.
      const met = apps[0]?.ask(call, gone.signal).then(
        () => 0,
        () => 1,
      );
      await pause(between(5, 60));
      gone.abort();
      const cut = (await met) ?? 0;
      await send();
      return cut;
    },
  },
];

export async function cuts(yard: Yard): Promise<Row[]> {
  const ledger = await yard.newcomer('CUT');
  const rows: Row[] = [];
  for (const one of CUTS) rows.push(await run(yard, ledger, one));
  return rows;
}

async function run(
  yard: Yard,
  ledger: AircraftLedger,
  { what, cut, least = 1 }: (typeof CUTS)[number],
): Promise<Row> {
  const { load } = yard;
  const times = rounds(18);
  const tally = new Tally();
  let strikes = 0;
  load.troubles.clear();
  for (let round = 0; round < times; round += 1) {
    load.set('open');
    const call = await toSign(yard, ledger);
    strikes += await cut(yard, () => load.send(call, ledger), call, round);
    await yard.checkAll(tally);
  }
  return rowOf({
    what,
    done: `${times} sign-offs, ${strikes} cuts, each sent again with its number and acknowledged${spoken(load.troubles)}`,
    atLeast: `${times} sign-offs, at least ${Math.ceil(times * least)} of them cut`,
    enough: strikes >= times * least,
    tally,
  });
}

/** Work begun and entered on a new write-up, or on this one: ready to be signed. */
export async function toSign({ load }: Yard, ledger: AircraftLedger, writeUp?: string): Promise<Call> {
  const { school } = ledger;
  const { renter, powerplant } = school.people;
  const send = (act: Call['act'], ref: Call['ref'], input: Call['input']) =>
    load.send({ act, ref, input }, ledger);
  const found = { ...nickedPropeller(school), foundAt: new Date().toISOString() };
  const discrepancyId = writeUp ?? String((await send('reportFinding', renter, found))['discrepancyId']);
  const { workId } = await send('startWork', powerplant, startOf(discrepancyId));
  const { entryHash } = await send('enterWork', powerplant, entryToday(String(workId)));
  return { act: 'signWork', ref: powerplant, input: signatureToday(String(workId), String(entryHash)) };
}

/** Holds a table so that the transaction has to wait in its middle, and ends the connections of all who wait. */
function whileLocked(
  { adminUrl }: Site,
  table: string,
  send: () => Promise<unknown>,
  met: { count: number },
): Promise<unknown> {
  return withClient(adminUrl, async (holder) => {
    await holder.query('BEGIN');
    await holder.query(`LOCK TABLE ${table} IN SHARE MODE`);
    const sent = send();
    const until = Date.now() + 10_000;
    while (met.count === 0 && Date.now() < until) {
      const { rows } = await holder.query<{ ended: boolean }>(
        `SELECT pg_terminate_backend(pid) AS ended FROM pg_locks WHERE relation = '${table}'::regclass AND NOT granted`,
      );
      met.count += rows.filter(({ ended }) => ended).length;
      await pause(5);
    }
    await holder.query('ROLLBACK');
    return sent;
  });
}

async function throughPipe(
  { pipe }: Site,
  cut: 'before-commit' | 'after-commit',
  send: () => Promise<unknown>,
): Promise<number> {
  const before = pipe.cuts;
  pipe.cutNext(cut);
  await send();
  return pipe.cuts - before;
}
