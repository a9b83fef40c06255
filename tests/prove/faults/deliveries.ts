/** What the ramp's phones send, delivered late, twice and in any order, as a bad signal does. */
import { isDeepStrictEqual } from 'node:util';
import { randomUUID } from 'node:crypto';
import { deadLandingLight, nickedPropeller } from '../../fixtures/acts';
import type { Row } from '../row';
import type { Call } from './app-process';
import type { AircraftLedger } from './ledger';
import { toSign } from './cuts';
import { rowOf, rounds, Tally } from './tally';
import type { Yard } from './yard';

/** As many as a phone and the worker behind it might have under way, and more. */
const AT_ONCE = 8;

export async function deliveries(yard: Yard): Promise<Row[]> {
  const { load, site } = yard;
  const apps = await yard.twoApps();
  const ledger = await yard.newcomer('SENT');
  const tally = new Tally();
  const times = rounds(40);
  let delivered = 0;
  let early = 0;
  for (let round = 1; round <= times; round += 1) {
    load.set('open');
    const messages = tripOf(ledger);
    const answers = new Map<string, unknown>();
    const copies = shuffled(messages.flatMap((message) => [message, message, message]));
    const late: Call[] = [];
    const deliver = async (call: Call) => {
      const id = String(call.input['requestId']);
      const result = await apps[Math.random() < 0.5 ? 0 : 1].ask(call);
      delivered += 1;
      if (result.ok && !answers.has(id)) {
        answers.set(id, result.value);
        const acked = { call, value: result.value };
        load.acked.push(acked);
        ledger.take(acked);
      } else if (result.ok && !isDeepStrictEqual(answers.get(id), result.value)) {
        tally.add({ doubled: [`${call.act} ${id}: another answer the second time`] });
      } else if (!result.ok) {
        // Before its walkaround: the phone keeps it and sends it again.
        if (result.problem.code === 'not_found') early += 1;
        else if (result.problem.code !== 'try_again')
          tally.add({ otherAnswer: [`${call.act}: ${result.problem.code}`] });
        late.push(call);
      }
    };
    for (let waiting = copies; waiting.length > 0; waiting = shuffled(late.splice(0)))
      await inParallel(waiting, deliver);
    // Repaired in between, and a copy still comes: nothing opens again.
    for (const discrepancyId of [...ledger.writeUps.keys()].slice(0, 1)) {
      await load.send(await toSign(yard, ledger, discrepancyId), ledger);
    }
    await inParallel(shuffled(messages), deliver);
    tally.add({ doubled: await numbersOf(site.sql, messages) });
    for (const discrepancyId of [...ledger.writeUps.keys()]) {
      await load.send(await toSign(yard, ledger, discrepancyId), ledger);
    }
    if (round % 5 === 0 || round === times) await yard.checkAll(tally);
  }
  return [
    rowOf({
      what: 'duplicate and reordered deliveries of the ramp: a walkaround, its findings and its end, four copies of each in any order',
      done: `${times} trips, ${delivered} deliveries of ${times * 4} messages, ${early} came before what they belong to`,
      atLeast: `${times * 16} deliveries, some before what they belong to`,
      enough: delivered >= times * 16 && early > 0,
      tally,
    }),
  ];
}

/** One trip to the aircraft as the phone sends it. */
function tripOf({ school }: AircraftLedger): Call[] {
  const ref = school.people.renter;
  const walkaroundId = randomUUID();
  const at = new Date().toISOString();
  const { aircraftId } = school;
  const walk = { requestId: walkaroundId, aircraftId, startedAt: at };
  const finding = { walkaroundId, foundAt: at };
  const finish = {
    requestId: randomUUID(),
    walkaroundId,
    stations: { propeller: 'finding', 'left-leading-edge': 'finding' },
    finishedAt: at,
  };
  return [
    { act: 'startWalkaround', ref, input: walk },
    { act: 'reportFinding', ref, input: { ...nickedPropeller(school), ...finding } },
    { act: 'reportFinding', ref, input: { ...deadLandingLight(school), ...finding } },
    { act: 'finishWalkaround', ref, input: finish },
  ];
}

/** One walkaround, ended once; two findings, each with one write-up. */
async function numbersOf(sql: Yard['site']['sql'], messages: readonly Call[]): Promise<string[]> {
  const ids = messages.map(({ input }) => input['requestId']);
  const [row] = await sql<{ walks: number; findings: number; ups: number }>(
    `SELECT (SELECT count(*)::int FROM walkaround WHERE id = ANY($1) AND finished_at IS NOT NULL) AS walks,
      (SELECT count(*)::int FROM finding WHERE id = ANY($1)) AS findings,
      (SELECT count(*)::int FROM discrepancy WHERE finding_id = ANY($1)) AS ups`,
    [ids],
  );
  const is = JSON.stringify(row);
  return is === JSON.stringify({ walks: 1, findings: 2, ups: 2 })
    ? []
    : [`of one walkaround and two findings: ${is}`];
}

function shuffled<T>(given: readonly T[]): T[] {
  return given
    .map((one) => [Math.random(), one] as const)
    .sort(([a], [b]) => a - b)
    .map(([, one]) => one);
}

async function inParallel(calls: readonly Call[], deliver: (call: Call) => Promise<void>): Promise<void> {
  const waiting = [...calls];
  const lane = async () => {
    for (let call = waiting.shift(); call; call = waiting.shift()) await deliver(call);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, lane));
}
