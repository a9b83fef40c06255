/** Two people at one moment, each at an application of their own on one database: what comes out is some order of the two. */
import { setTimeout as pause } from 'node:timers/promises';
import { randomUUID } from 'node:crypto';
import type { Result } from '@/lib/problems';
import { nickedPropeller } from '../../fixtures/acts';
import type { Row } from '../row';
import type { AppProcess, Call } from './app-process';
import { toSign } from './cuts';
import type { AircraftLedger } from './ledger';
import { signatureToday } from './load';
import { ASKED_DAYS_AHEAD } from './ledger';
import { lessonOn } from './school-today';
import { rowOf, rounds, Tally } from './tally';
import { between, type Yard } from './yard';

/** The whole check is made after so many rounds; what a round itself must come to is looked at in every round. */
const CHECK_EVERY = 20;

export async function together(yard: Yard): Promise<Row[]> {
  return [await twoSign(yard), await releaseAndWriteUp(yard)];
}

async function twoSign(yard: Yard): Promise<Row> {
  const { load, site } = yard;
  const [one, other] = await yard.twoApps();
  const ledger = await yard.newcomer('SIGN');
  const { powerplant } = ledger.school.people;
  const { inspector } = ledger.school;
  const tally = new Tally();
  const times = rounds(200);
  const first = { powerplant: 0, inspector: 0 };
  for (let round = 1; round <= times; round += 1) {
    load.set('open');
    const call = await toSign(yard, ledger);
    const { workId, entryHash } = call.input as { workId: string; entryHash: string };
    const theirs = { ...signatureToday(workId, entryHash), worker: 'certificated' };
    const calls: Call[] = [call, { act: 'signWork', ref: inspector, input: theirs }];
    const results = await Promise.all([ask(one, calls[0]), ask(other, calls[1])]);
    const yes = results.flatMap((result, index) =>
      result.ok ? [{ call: calls[index] as Call, value: result.value }] : [],
    );
    for (const acked of yes) {
      load.acked.push(acked);
      ledger.take(acked);
      first[acked.call.ref.personId === powerplant.personId ? 'powerplant' : 'inspector'] += 1;
    }
    const rows = await site.sql<{ person_id: string }>('SELECT person_id FROM sign_off WHERE work_id = $1', [
      workId,
    ]);
    const refused = results.flatMap((result) => (result.ok ? [] : [result.problem.code]));
    const isOne = yes.length === 1 && rows.length === 1 && rows[0]?.person_id === yes[0]?.call.ref.personId;
    if (!isOne) tally.add({ doubled: [`${yes.length} were told they signed, ${rows.length} signatures`] });
    if (refused.some((code) => code !== 'conflict')) tally.add({ otherAnswer: refused });
    if (round % CHECK_EVERY === 0 || round === times) await yard.checkAll(tally);
  }
  return rowOf({
    what: 'two mechanics sign one work at the same moment, at two servers',
    done: `${times} rounds, each signed once: ${first.powerplant} by the one, ${first.inspector} by the other`,
    atLeast: `${times} rounds, one signature each, both first at times`,
    enough: first.powerplant + first.inspector === times && first.powerplant > 0 && first.inspector > 0,
    tally,
  });
}

async function releaseAndWriteUp(yard: Yard): Promise<Row> {
  const { load, site } = yard;
  const [one, other] = await yard.twoApps();
  const ledger = await yard.newcomer('RACE');
  const { school } = ledger;
  const { dispatcher, renter } = school.people;
  const tally = new Tally();
  const times = rounds(200);
  const order = { released: 0, refused: 0 };
  for (let round = 1; round <= times; round += 1) {
    load.set('open');
    const lesson = lessonOn(school, ASKED_DAYS_AHEAD);
    const seen = await load.send({ act: 'answerFlight', ref: dispatcher, input: lesson }, ledger);
    const release = {
      ...lesson,
      requestId: randomUUID(),
      factsVersion: seen['factsVersion'],
      limitsPassedOn: true,
    };
    const found = { ...nickedPropeller(school), foundAt: new Date().toISOString() };
    const calls: [Call, Call] = [
      { act: 'releaseFlight', ref: dispatcher, input: release },
      { act: 'reportFinding', ref: renter, input: found },
    ];
    // Who has further to go has a head start by turns, so that both orders come.
    const [released, reported] = await Promise.all([
      pause(between(0, 12)).then(() => ask(one, calls[0])),
      pause(between(0, 12)).then(() => ask(other, calls[1])),
    ]);
    for (const [index, result] of [released, reported].entries()) {
      const acked = result.ok ? { call: calls[index] as Call, value: result.value } : null;
      if (acked) load.acked.push(acked);
      if (acked) ledger.take(acked);
    }
    order[released.ok ? 'released' : 'refused'] += 1;
    if (!reported.ok) tally.add({ lost: [`the write-up was refused: ${reported.problem.code}`] });
    tally.add({ wrongGo: await againstOrder(site.sql, release.requestId, found.requestId, released) });
    await signOff(yard, ledger);
    if (round % CHECK_EVERY === 0 || round === times) await yard.checkAll(tally);
  }
  return rowOf({
    what: 'a release against a grounding write-up at the same instant, at two servers',
    done: `${times} rounds: ${order.released} released first and recalled, ${order.refused} refused`,
    atLeast: `${times} rounds, both orders at least once in twenty, never a release on facts that were gone`,
    enough: order.released >= times / 20 && order.refused >= times / 20,
    tally,
  });
}

/**
 * What contradicts the order the audit chain tells: a release after the write-up, one whose kept facts lack it although it
 * came first, one that was not recalled by it; or a refusal although the release came first.
 */
async function againstOrder(
  sql: Yard['site']['sql'],
  releaseId: string,
  findingId: string,
  released: Result<unknown>,
): Promise<string[]> {
  const rows = await sql<{ verb: string; seq: number; subject_id: string }>(
    `SELECT verb, seq, subject_id FROM audit_row WHERE request_id IN ($1, $2) ORDER BY seq`,
    [releaseId, findingId],
  );
  const verbs = rows.map(({ verb }) => verb).join(' ');
  if (released.ok) {
    const wanted = 'flight.release finding.report flight.recall';
    return verbs === wanted ? [] : [`released, and the chain says: ${verbs}`];
  }
  const { code } = released.problem;
  if (code !== 'no_go' && code !== 'superseded') return [`refused with ${code}`];
  return verbs === 'finding.report flight.release:refused' ? [] : [`refused, and the chain says: ${verbs}`];
}

/** Puts right what is open, for the next round. */
async function signOff(yard: Yard, ledger: AircraftLedger): Promise<void> {
  for (const discrepancyId of [...ledger.writeUps.keys()]) {
    const call = await toSign(yard, ledger, discrepancyId);
    await yard.load.send(call, ledger);
  }
}

/** Asks until there is an answer. */
async function ask(app: AppProcess, call: Call | undefined): Promise<Result<unknown>> {
  if (!call) throw new Error('Nothing to ask.');
  for (;;) {
    const result = await app.ask(call);
    if (result.ok || result.problem.code !== 'try_again') return result;
  }
}
