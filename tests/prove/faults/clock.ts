/** The clock of one server jumps, forward and back, while another server and the database go right. */
import { randomUUID } from 'node:crypto';
import { deadLandingLight, deferralOf, nickedPropeller } from '../../fixtures/acts';
import { giveList } from '../../fixtures/minimum-list';
import type { Row } from '../row';
import type { AppProcess, Call } from './app-process';
import { toSign } from './cuts';
import { ASKED_DAYS_AHEAD, type inShort } from './ledger';
import { lessonOn, type SchoolToday } from './school-today';
import { rowOf, rounds, Tally } from './tally';
import { between, type Yard } from './yard';

const AN_HOUR_MS = 3_600_000;

/** Hours the clock is put off by: past borders of a day, of the two days after a flight, and of a deferral's end. */
const JUMPS = [2, -3, 26, -26, 49, -73, 0.02, -0.02, 170, -400] as const;

/** How far, in seconds, what is written may be dated from when it was written by the database's clock. */
const MAY_BE_OFF_S = 2;

export async function clock(yard: Yard): Promise<Row[]> {
  const [wrong] = await yard.twoApps();
  try {
    return [await underLoad(yard, wrong), await recalls(yard, wrong), await deferrals(yard, wrong)];
  } finally {
    await wrong.setClockOff(0);
  }
}

async function underLoad(yard: Yard, wrong: AppProcess): Promise<Row> {
  const { load, site } = yard;
  const tally = new Tally();
  const times = rounds(JUMPS.length * 2);
  const before = load.acked.length;
  const from = await lastRows(yard);
  for (let round = 0; round < times; round += 1) {
    await wrong.setClockOff((JUMPS[round % JUMPS.length] ?? 0) * AN_HOUR_MS);
    await yard.busyFor(between(300, 600));
    await load.settle();
    await wrong.setClockOff(0);
    await yard.checkAll(tally);
  }
  const [dated] = await site.sql<{ rows: number; off: number; backwards: number }>(
    `SELECT count(*)::int AS rows,
       (count(*) FILTER (WHERE at NOT BETWEEN $1::timestamptz AND clock_timestamp() + $3 * interval '1 s'))::int AS off,
       (count(*) FILTER (WHERE at < before))::int AS backwards
     FROM (SELECT a.*, lag(at) OVER (PARTITION BY operator_id ORDER BY seq) AS before FROM audit_row a
       WHERE seq > coalesce(($2::jsonb->>operator_id::text)::int, 0)) rows`,
    [from.at, JSON.stringify(from.seqs), MAY_BE_OFF_S],
  );
  const { off = -1, backwards = -1, rows = 0 } = dated ?? {};
  return rowOf({
    what: 'clock jump under load: one of two servers is put off by minutes to weeks, forward and back',
    done: `${times} jumps, ${load.acked.length - before} writes acknowledged; of ${rows} audit rows ${off} dated otherwise than when they were written, ${backwards} before the row they follow`,
    atLeast: `${times} jumps, more writes than jumps, no row dated otherwise or before the one it follows`,
    enough: load.acked.length - before > times && off === 0 && backwards === 0,
    tally,
  });
}

/** The database's time, and the last row of each audit chain. */
async function lastRows({ site }: Yard): Promise<{ at: Date; seqs: Record<string, number> }> {
  const rows = await site.sql<{ operator_id: string; seq: number }>(
    'SELECT operator_id, seq FROM audit_head',
  );
  const [now] = await site.sql<{ at: Date }>('SELECT clock_timestamp() AS at');
  return {
    at: now?.at ?? new Date(0),
    seqs: Object.fromEntries(rows.map((row) => [row.operator_id, row.seq])),
  };
}

/** A flight released by a server that goes right; the write-up that grounds comes in by one that goes wrong. */
async function recalls(yard: Yard, wrong: AppProcess): Promise<Row> {
  const { load, site } = yard;
  const [, right] = await yard.twoApps();
  const tally = new Tally();
  const times = rounds(JUMPS.length);
  const ledger = await yard.newcomer('RECALL');
  const { school } = ledger;
  const { dispatcher, renter } = school.people;
  const given: string[] = [];
  for (let round = 0; round < times; round += 1) {
    load.set('open');
    await wrong.setClockOff(0);
    const lesson = lessonOn(school, ASKED_DAYS_AHEAD);
    const seen = await load.send({ act: 'answerFlight', ref: dispatcher, input: lesson }, ledger);
    const release = {
      ...lesson,
      requestId: randomUUID(),
      factsVersion: seen['factsVersion'],
      limitsPassedOn: true,
    };
    await load.send({ act: 'releaseFlight', ref: dispatcher, input: release }, ledger);
    given.push(release.requestId);
    await wrong.setClockOff((JUMPS[round % JUMPS.length] ?? 0) * AN_HOUR_MS);
    const found = { ...nickedPropeller(school), foundAt: new Date().toISOString() };
    const result = await sent(wrong, { act: 'reportFinding', ref: renter, input: found });
    const acked = { call: { act: 'reportFinding', ref: renter, input: found } as const, value: result };
    load.acked.push(acked);
    ledger.take(acked);
    await load.settle();
    await wrong.setClockOff(0);
    await yard.checkAll(tally);
    load.set('open');
    for (const open of [...ledger.writeUps.keys()]) {
      const call = await toSign(yard, ledger, open);
      await sent(right, call);
      ledger.take({ call, value: null });
    }
  }
  const gone = await site.sql(
    `SELECT release_id FROM flight_event WHERE what = 'void' AND release_id = ANY($1)`,
    [given],
  );
  return rowOf({
    what: 'clock jump: a grounding write-up taken by a server whose clock is off voids the release given by another',
    done: `${given.length} releases given, ${gone.length} void`,
    atLeast: `${times} releases, every one void`,
    enough: given.length === times && gone.length === times,
    tally,
  });
}

/** The answers about a deferral's last day and the day after, and its end, whatever the server's clock says. */
async function deferrals(yard: Yard, wrong: AppProcess): Promise<Row> {
  const { load, site } = yard;
  const tally = new Tally();
  const seen = new Set<string>();
  const offsets = [0, ...JUMPS];
  load.set('open');
  for (const [index, hours] of offsets.entries()) {
    await wrong.setClockOff(hours * AN_HOUR_MS);
    const ledger = await yard.newcomer(`DEFER${index}`);
    const { school } = ledger;
    await giveList(school, null);
    const light = { ...deadLandingLight(school), foundAt: new Date().toISOString() };
    const report = { act: 'reportFinding', ref: school.people.renter, input: light } as const;
    const { discrepancyId } = await sent(wrong, report);
    const deferral = { ...deferralOf(String(discrepancyId)), melProceduresDone: true };
    const { placardId } = await sent(wrong, {
      act: 'beginDeferral',
      ref: school.people.airframe,
      input: deferral,
    });
    const placard = { requestId: randomUUID(), placardId };
    await sent(wrong, { act: 'placePlacard', ref: school.people.airframe, input: placard });
    // Asked by the wrong clock and by a right one: the flight's own day decides.
    await wrong.setClockOff(0);
    const told = await answersAround(wrong, school);
    seen.add(told);
    for (const asked of [-73, -26, 26, 49]) {
      await wrong.setClockOff(asked * AN_HOUR_MS);
      const again = await answersAround(wrong, school);
      if (again !== told)
        tally.add({ wrongGo: [`asked ${asked} h off: ${again}; by a right clock: ${told}`] });
    }
    await wrong.setClockOff(0);
    yard.forget(ledger);
  }
  await yard.checkAll(tally);
  const days = await site.sql<{ day: string }>('SELECT DISTINCT recorded_on::text AS day FROM deferral');
  if (days.length > 1)
    tally.add({ wrongGo: [`begun on one day, recorded on ${days.map(({ day }) => day).join(', ')}`] });
  if (seen.size > 1) tally.add({ wrongGo: [...seen] });
  return rowOf({
    what: 'clock jump: a deferral of ten days, begun and asked about by a server whose clock is off, ends when it ends',
    done: `${offsets.length} deferrals, asked about at five clocks: ${[...seen].join(' / ')}`,
    atLeast: 'go with limits to its last day and no go the day after, at every clock',
    enough: seen.size === 1 && [...seen][0] === 'go-with-limits go-with-limits no-go no-go',
    tally,
  });
}

/** Outcomes of the lesson 9, 10, 11 and 12 days from now. Category C: ten days, without the day it was recorded. */
async function answersAround(app: AppProcess, school: SchoolToday): Promise<string> {
  const outcomes: string[] = [];
  for (const days of [9, 10, 11, 12]) {
    const call = {
      act: 'answerFlight',
      ref: school.people.dispatcher,
      input: lessonOn(school, days),
    } as const;
    const { answer } = (await sent(app, call)) as { answer: Parameters<typeof inShort>[0] };
    outcomes.push(answer.outcome);
  }
  return outcomes.join(' ');
}

/** Asks until it is done. */
async function sent(app: AppProcess, call: Call): Promise<Record<string, unknown>> {
  for (;;) {
    const result = await app.ask(call);
    if (result.ok) return result.value as Record<string, unknown>;
    if (result.problem.code !== 'try_again')
      throw new Error(`${call.act}: ${JSON.stringify(result.problem)}`);
  }
}
