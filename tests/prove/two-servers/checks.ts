/** What must hold between two servers on one database, asked of each of them directly. Each check gives what it measured. */
import { randomUUID } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { setTimeout as wait } from 'node:timers/promises';
import { withClient } from '@/lib/operate/connection';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { DEMO_PASSWORD } from '../../../seed/people';
import { findingOf } from '../scale/asked';
import { Visitor } from '../scale/browser';

export interface Two {
  readonly a: string;
  readonly b: string;
  readonly adminUrl: string;
}

export interface Check {
  readonly what: string;
  readonly wanted: string;
  run(two: Two): Promise<{ readonly measured: string; readonly good: boolean }>;
}

const DISPATCHER = 'dov@quillback.example';
const PILOT = 'ruth@quillback.example';
const GUESSED = 'sam@quillback.example';

async function signedIn(address: string, email: string): Promise<Visitor> {
  const visitor = new Visitor(address);
  await visitor.signIn(email, DEMO_PASSWORD);
  return visitor;
}

const boardStatus = (visitor: Visitor): Promise<number> => visitor.status('/desk');

const report = (visitor: Visitor, finding: ReturnType<typeof findingOf>) =>
  visitor.ask('/api/sync/findings', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(finding),
  });

const anAircraft = (adminUrl: string): Promise<string> =>
  withClient(adminUrl, async (client) => {
    const { rows } = await client.query<{ id: string }>(
      `SELECT a.id FROM aircraft a JOIN person p ON p.operator_id = a.operator_id WHERE p.email = $1 ORDER BY a.registration LIMIT 1`,
      [PILOT],
    );
    return rows[0]!.id;
  });

const session: Check = {
  what: 'a session begun on A holds on B; signed out on A, its cookie opens nothing on B',
  wanted: '200 on B, then sent to sign in on both',
  async run({ a, b }) {
    const onA = await signedIn(a, DISPATCHER);
    const onB = onA.at(b);
    const before = await boardStatus(onB);
    const copyOnA = onA.at(a);
    await onA.signOut();
    const [afterB, afterA] = [await boardStatus(onB), await boardStatus(copyOnA)];
    return {
      measured: `${before} on B, then ${afterB} on B and ${afterA} on A`,
      good: before === 200 && afterB === 307 && afterA === 307,
    };
  },
};

const GUESSES = 8;

const guesses: Check = {
  what: 'wrong passwords at A and B in turn count together: the account is locked on both, also for the right one',
  wanted: `in before the first; after ${GUESSES} tries refused on A and on B; before the last try not locked`,
  async run({ a, b, adminUrl }) {
    const tryIn = async (address: string, password: string) =>
      new Visitor(address).signIn(GUESSED, password).then(
        () => 'in',
        () => 'refused',
      );
    const first = await tryIn(a, DEMO_PASSWORD);
    const isLocked = () =>
      withClient(adminUrl, async (client) => {
        const { rows } = await client.query<{ locked: boolean }>(
          'SELECT coalesce(locked_until > now(), false) AS locked FROM person WHERE email = $1',
          [GUESSED],
        );
        return rows[0]!.locked;
      });
    for (let n = 1; n < GUESSES; n += 1) await tryIn(n % 2 ? a : b, 'not it at all');
    const early = await isLocked();
    await tryIn(b, 'not it at all');
    const late = await isLocked();
    const after = [await tryIn(a, DEMO_PASSWORD), await tryIn(b, DEMO_PASSWORD)];
    return {
      measured: `${first}; locked after ${GUESSES - 1}: ${early}, after ${GUESSES}: ${late}; then ${after.join(' on A, ')} on B`,
      good: first === 'in' && !early && late && after.every((one) => one === 'refused'),
    };
  },
};

const once: Check = {
  what: 'the same message of a phone sent to A and B at the same moment, 20 times',
  wanted: '20 write-ups, 20 audit rows, both answers alike each time',
  async run({ a, b, adminUrl }) {
    const [onA, aircraft] = [await signedIn(a, PILOT), await anAircraft(adminUrl)];
    const onB = onA.at(b);
    const ids = Array.from({ length: 20 }, () => randomUUID());
    let alike = 0;
    let unlike = '';
    for (const id of ids) {
      const finding = findingOf(aircraft, id);
      const [one, other] = await Promise.all([report(onA, finding), report(onB, finding)]);
      // As facts and not as text: the second answer comes out of the database, which orders the names in its own way.
      const same = isDeepStrictEqual(JSON.parse(one.text), JSON.parse(other.text));
      if (same && one.text.includes('"ok":true')) alike += 1;
      else unlike ||= `, for one ${one.text} and ${other.text}`;
    }
    const { written, audited } = await withClient(adminUrl, async (client) => {
      const count = async (sql: string) => (await client.query<{ n: number }>(sql, [ids])).rows[0]!.n;
      return {
        written: await count('SELECT count(*)::int AS n FROM discrepancy WHERE finding_id = ANY($1::uuid[])'),
        audited: await count('SELECT count(*)::int AS n FROM audit_row WHERE request_id = ANY($1::uuid[])'),
      };
    });
    return {
      measured: `${written} write-ups, ${audited} audit rows, ${alike} alike${unlike}`,
      good: written === ids.length && audited === ids.length && alike === ids.length,
    };
  },
};

const atOnce: Check = {
  what: '40 different write-ups sent to A and B all at once; afterwards chain and signatures of every operator are verified',
  wanted: '40 answers, 40 numbers, no fault in the chain',
  async run({ a, b, adminUrl }) {
    const [onA, aircraft] = [await signedIn(a, PILOT), await anAircraft(adminUrl)];
    const onB = onA.at(b);
    const answers = await Promise.all(
      Array.from({ length: 40 }, (_, n) => report(n % 2 ? onA : onB, findingOf(aircraft))),
    );
    const numbers = new Set(
      answers.map(({ text }) => (JSON.parse(text) as { value: { number: string } }).value.number),
    );
    const faults = (await verifyAudit(adminUrl)).flatMap((one) => one.faults);
    return {
      measured: `${answers.length} answers, ${numbers.size} numbers, ${faults.length} faults`,
      good: numbers.size === 40 && faults.length === 0,
    };
  },
};

const PATIENCE_MS = 10_000;

const word: Check = {
  what: 'a change written on A reaches a browser that listens at B, and the other way round',
  wanted: 'both, each within two seconds of its acknowledgement',
  async run({ a, b, adminUrl }) {
    const [onA, aircraft] = [await signedIn(a, PILOT), await anAircraft(adminUrl)];
    const took = [];
    for (const [writer, listener] of [
      [onA, onA.at(b)],
      [onA.at(b), onA],
    ] as const) {
      const stop = new AbortController();
      const { heard } = await listen(listener, stop.signal);
      await report(writer, findingOf(aircraft));
      const acknowledged = performance.now();
      const at = await Promise.race([heard, wait(PATIENCE_MS, Number.POSITIVE_INFINITY)]);
      stop.abort();
      took.push(Math.max(0, at - acknowledged));
    }
    return {
      measured: `after ${took.map((ms) => Math.round(ms)).join(' and ')} ms`,
      good: took.every((ms) => ms < 2000),
    };
  },
};

/** Resolves when the stream is open and its server listens; `heard` resolves when a change was heard. */
async function listen(visitor: Visitor, signal: AbortSignal): Promise<{ heard: Promise<number> }> {
  const stream = (await visitor.open('/api/live', signal)).getReader();
  const decoder = new TextDecoder();
  let text = '';
  const until = async (sign: RegExp): Promise<number> => {
    while (!sign.test(text)) {
      const { done, value } = await stream.read();
      if (done) throw new Error('The stream ended.');
      text += decoder.decode(value, { stream: true });
    }
    return performance.now();
  };
  await until(/event: beat[^]*?"listening":true/);
  text = '';
  const heard = until(/event: change/);
  // A stream that is given up afterwards is no failure of anything.
  heard.catch(() => undefined);
  return { heard };
}

export const CHECKS: readonly Check[] = [session, once, word, atOnce, guesses];
