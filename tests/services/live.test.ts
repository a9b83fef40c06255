/**
 * Word of changes, on a real PostgreSQL and through real verbs. Sources: issue 5, "changes show within 2 s on every open
 * screen of every app instance"; PostgreSQL, NOTIFY ("until and unless the transaction is committed") and LISTEN; WHATWG
 * HTML 9.2.6 for the shape of the stream, which is read here by the few lines at the end of this file.
 */
import { randomUUID } from 'node:crypto';
import getPort from 'get-port';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { writeInOperator } from '@/lib/db/scope';
import { reportFinding } from '@/lib/findings/report-finding';
import { closeLive, isStopping } from '@/lib/live/hub-of-process';
import { openHub, type HubOptions, type LiveHub, type LiveWord } from '@/lib/live/hub';
import { readNewestChange } from '@/lib/live/newest-change';
import { liveStream, type StreamOptions } from '@/lib/live/stream';
import { withClient } from '@/lib/operate/connection';
import { appendAudit } from '@/lib/records/audit';
import { deadLandingLight, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { Line } from '../fixtures/line';
import { quietLog } from '../fixtures/logged';
import { closeSchools, foundSchool, openSchools, type School } from '../fixtures/school';

const SOON_MS = 2000;

let database: FreshDatabase;
let ours: School;
let theirs: School;
let schools = 0;
const hubs: LiveHub[] = [];

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(async () => {
  await closeLive();
  await closeSchools(database);
});
beforeEach(async () => {
  schools += 1;
  ours = await foundSchool(`live-a-${schools}`, trainer());
  theirs = await foundSchool(`live-b-${schools}`, trainer());
});
afterEach(async () => {
  for (const hub of hubs.splice(0)) await hub.close();
});

/** A hub of an app instance of its own. */
function instance(options: HubOptions = {}): LiveHub {
  const hub = openHub(database.appUrl, options);
  hubs.push(hub);
  return hub;
}

/** What a subscriber of this school is told by this hub, from when the hub listens on. */
async function listener(hub: LiveHub, school: School): Promise<LiveWord[]> {
  const words: LiveWord[] = [];
  hub.subscribe(school.operatorId, (word) => words.push(word));
  await vi.waitFor(() => expect(hub.isListening()).toBe(true), { timeout: SOON_MS });
  words.length = 0;
  return words;
}

const report = async (school: School) =>
  valueOf(await reportFinding(school.people.renter, deadLandingLight(school)));
const newest = async (school: School) => valueOf(await readNewestChange(school.people.renter, {})).seq;

/** Everything that was told before has arrived when this has: one connection delivers in order. */
async function afterOneMore(words: LiveWord[], school: School): Promise<LiveWord[]> {
  await report(school);
  const seq = await newest(school);
  await vi.waitFor(() => expect(words).toContainEqual({ kind: 'change', seq }), { timeout: SOON_MS });
  return words.filter((word) => word.kind !== 'change' || word.seq !== seq);
}

test('a write reaches the subscribers of both instances within two seconds', async () => {
  const [first, second] = [await listener(instance(), ours), await listener(instance(), ours)];
  await report(ours);
  const change = { kind: 'change', seq: await newest(ours) };
  await vi.waitFor(() => expect([first, second]).toEqual([[change], [change]]), { timeout: SOON_MS });
});

test('another operator’s change is told to nobody here', async () => {
  const words = await listener(instance(), ours);
  await report(theirs);
  expect(await afterOneMore(words, ours)).toEqual([]);
});

test('what was rolled back is told to nobody', async () => {
  const words = await listener(instance(), ours);
  const undone = writeInOperator(ours.operatorId, async (tx) => {
    await appendAudit(tx, ours.operatorId, {
      at: new Date(),
      personId: ours.people.renter.personId,
      verb: 'finding.report',
      requestId: randomUUID(),
      subjectKind: 'discrepancy',
      subjectId: randomUUID(),
      detail: {},
    });
    throw new Error('undone');
  });
  await expect(undone).rejects.toThrow('undone');
  expect(await afterOneMore(words, ours)).toEqual([]);
});

test.each([
  ['no JSON', 'hello'],
  ['nothing', ''],
  ['no number', { seq: 'three' }],
  ['a row that cannot be', { seq: 0 }],
  ['no operator', { operatorId: 'everybody', seq: 3 }],
])('a notification that is none of ours is passed over: %s', async (_, payload) => {
  const words = await listener(instance(), ours);
  const text =
    typeof payload === 'string' ? payload : JSON.stringify({ operatorId: ours.operatorId, ...payload });
  await withClient(database.adminUrl, async (client) => {
    await client.query('SELECT pg_notify($1, $2)', ['wheelchock_change', text]);
  });
  expect(await afterOneMore(words, ours)).toEqual([]);
});

test('a subscriber that throws does not keep the word from the next, and one that left hears nothing', async () => {
  const hub = instance();
  const quiet = quietLog();
  hub.subscribe(ours.operatorId, () => {
    throw new Error('of the subscriber');
  });
  const left: LiveWord[] = [];
  const leave = hub.subscribe(ours.operatorId, (word) => left.push(word));
  const words = await listener(hub, ours);
  leave();
  left.length = 0;
  await report(ours);
  await vi.waitFor(() => expect(words).toHaveLength(1), { timeout: SOON_MS });
  expect(left).toEqual([]);
  quiet.stop();
});

describe('a connection that is lost', () => {
  test('ended by the database: says deaf, connects again, says look again, and hears', async () => {
    const quiet = quietLog();
    const hub = instance({ waitsMs: [50] });
    const words = await listener(hub, ours);
    await endListening();
    await vi.waitFor(() => expect(words.map(({ kind }) => kind)).toEqual(['deaf', 'look-again']), {
      timeout: SOON_MS,
    });
    expect(hub.isListening()).toBe(true);
    await report(ours);
    await vi.waitFor(() => expect(words.at(-1)).toEqual({ kind: 'change', seq: expect.any(Number) }), {
      timeout: SOON_MS,
    });
    expect(quiet.about('live')).toBe(1);
    quiet.stop();
  });

  test('silent, as when a line breaks without a word: found out by asking, and given up', async () => {
    const quiet = quietLog();
    const line = await Line.to(Number(new URL(database.appUrl).port), await getPort());
    const url = new URL(database.appUrl);
    url.hostname = '127.0.0.1';
    url.port = String(line.port);
    const hub = openHub(url.href, { aliveEveryMs: 100, patienceMs: 300, waitsMs: [50] });
    hubs.push(hub);
    const words = await listener(hub, ours);
    line.freeze();
    await vi.waitFor(() => expect(words.map(({ kind }) => kind)).toEqual(['deaf']), { timeout: SOON_MS });
    expect(hub.isListening()).toBe(false);
    await line.mend();
    await vi.waitFor(() => expect(hub.isListening()).toBe(true), { timeout: 5000 });
    await hub.close();
    await line.cut();
    quiet.stop();
  });

  test('a database that is not there is tried again and again, and said once', async () => {
    const quiet = quietLog();
    const nobody = new URL(database.appUrl);
    nobody.port = String(await getPort());
    const hub = openHub(nobody.href, { waitsMs: [20] });
    hubs.push(hub);
    const words: LiveWord[] = [];
    hub.subscribe(ours.operatorId, (word) => words.push(word));
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect([hub.isListening(), words, quiet.about('live')]).toEqual([false, [], 1]);
    quiet.stop();
  });
});

describe('the stream of a screen', () => {
  test('says how far the records are, then each change, and nothing of another operator', async () => {
    const screen = await stream(ours);
    const start = await newest(ours);
    await screen.hears({ event: 'beat', data: { at: expect.any(String), seq: start, listening: true } });
    await report(theirs);
    await report(ours);
    await screen.hears({ event: 'change', data: { seq: start + 1 } });
    expect(screen.heard.filter(({ event }) => event === 'change')).toHaveLength(1);
    expect(screen.raw()).toMatch(/^retry: 1000\n\n/);
  });

  test('ends with the session: at the next beat after somebody was signed out', async () => {
    const screen = await stream(ours, { beatEveryMs: 100 });
    await screen.hears({ event: 'beat', data: expect.objectContaining({ listening: true }) });
    await withClient(database.adminUrl, async (client) => {
      await client.query('UPDATE person SET session_version = session_version + 1 WHERE id = $1', [
        ours.people.renter.personId,
      ]);
    });
    await screen.hears({ event: 'signed-out', data: {} });
    await screen.ended;
  });

  test('says when nothing would be heard, and to look when it would again', async () => {
    const quiet = quietLog();
    const hub = instance({ waitsMs: [300] });
    await listener(hub, ours);
    const screen = await stream(ours, { hub });
    await screen.hears({ event: 'beat', data: expect.objectContaining({ listening: true }) });
    screen.heard.length = 0;
    await endListening();
    await screen.hears({ event: 'beat', data: expect.objectContaining({ listening: false }) });
    await screen.hears({ event: 'again', data: {} });
    await screen.hears({ event: 'beat', data: expect.objectContaining({ listening: true }) });
    quiet.stop();
  });

  test('ends by itself after its time, with the browser, and with the server', async () => {
    const timed = await stream(ours, { endsAfterMs: 200 });
    await timed.hears({ event: 'pause', data: {} });
    await timed.ended;

    const going = new AbortController();
    const gone = await stream(ours, {}, going.signal);
    going.abort();
    await gone.ended;

    const open = await stream(ours);
    await open.hears({ event: 'beat', data: expect.objectContaining({ listening: true }) });
    await closeLive();
    await open.ended;
    expect(isStopping()).toBe(false);
  });
});

/** Ends every listening connection of this database, as an administrator would. */
const endListening = () =>
  withClient(database.adminUrl, async (client) => {
    const { rowCount } = await client.query(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
       WHERE datname = current_database() AND application_name = 'wheelchock-live'`,
    );
    expect(rowCount).toBeGreaterThan(0);
  });

interface Heard {
  readonly event: string;
  readonly data: unknown;
}

/** Reads a stream as a browser does: events end with an empty line, `event:` names it, `data:` is its content. */
async function stream(school: School, options: StreamOptions = {}, signal = new AbortController().signal) {
  process.env['APP_DATABASE_URL'] = database.appUrl;
  const reader = liveStream(school.people.renter, signal, options).getReader();
  const decoder = new TextDecoder();
  const heard: Heard[] = [];
  let raw = '';
  let rest = '';
  const ended = (async () => {
    for (let read = await reader.read(); !read.done; read = await reader.read()) {
      const text = decoder.decode(read.value, { stream: true });
      raw += text;
      rest += text;
      const blocks = rest.split('\n\n');
      rest = blocks.pop() ?? '';
      for (const block of blocks) {
        const field = (name: string) => new RegExp(`^${name}: (.*)$`, 'm').exec(block)?.[1];
        const event = field('event');
        if (event) heard.push({ event, data: JSON.parse(field('data') ?? '') });
      }
    }
  })();
  const hears = (expected: Heard) =>
    vi.waitFor(() => expect(heard).toContainEqual(expected), { timeout: SOON_MS });
  return { heard, hears, ended, raw: () => raw };
}
