/**
 * What the phone keeps and how it sends. Source: issue 3 ("queues sends, and syncs in order, exactly once, after hours off,
 * a killed tab, a half-sent photo, a server that answered but whose answer was lost, two phones on one aircraft, a sign-in
 * that ran out. The pilot always sees what is sent and what is not"); else common practice, no source. The same in a real
 * browser with a real server: tests/journeys/offline.spec.ts.
 */
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type NewOutgoing, type SyncState } from '@/app/ramp/_phone/shapes';
import { sayHowItStands } from '@/app/ramp/_phone/sent-bar';
import { pauseAfter } from '@/app/ramp/_phone/sender';
import { shellDraws } from '@/app/ramp/_worker/shell-paths';
import { type RampPack } from '@/lib/walkarounds/pack';
import {
  freshPhone,
  keepMessages,
  openTab,
  refuses,
  startSync,
  states,
  stubStorage,
  takeAlong,
  type FakeSync,
} from '../fixtures/phone';
import { inEnglish } from '@/lib/words/translate';

const PIA = '00000000-0000-4000-8000-00000000000a';
const SAM = '00000000-0000-4000-8000-00000000000b';
const AIRCRAFT = '00000000-0000-4000-8000-0000000000aa';

const message = (id: string, more: Partial<NewOutgoing> = {}): NewOutgoing => ({
  id,
  aircraftId: AIRCRAFT,
  kind: 'finding',
  label: id,
  path: 'findings',
  message: { words: id },
  photoId: null,
  after: [],
  ...more,
});

const PACK = {
  version: 1,
  asOf: '2026-11-25T12:00:00Z',
  person: { id: PIA, name: 'Pia', roles: ['pilot'], operatorName: 'School' },
  bases: [],
  aircraft: [{ id: AIRCRAFT, registration: 'N053QB', typeId: 'type' }],
  lists: {
    type: {
      id: null,
      version: 1,
      list: {
        stations: [
          {
            area: 'cabin',
            title: 'Cabin',
            items: [
              { key: 'papers', kind: 'look', title: 'Papers', lookFor: 'There' },
              { key: 'belts', kind: 'look', title: 'Belts', lookFor: 'Whole' },
              { key: 'drain', kind: 'sample', drain: 'L1', title: 'Drain', lookFor: 'Clean' },
            ],
          },
          {
            area: 'propeller',
            title: 'Propeller',
            items: [
              { key: 'nicks', kind: 'look', title: 'Nicks', lookFor: 'None' },
              { key: 'inlets', kind: 'look', title: 'Inlets', lookFor: 'Free' },
            ],
          },
        ],
      },
    },
  },
  findings: [],
  paragraphs: {},
} as unknown as RampPack;

let sync: FakeSync;
beforeEach(async () => {
  freshPhone();
  sync = await startSync();
});
afterEach(async () => {
  await sync.stop();
  vi.unstubAllGlobals();
});

describe('sending', () => {
  test('goes in the order queued, one at a time, with the version, its number and its person', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a'), message('b')]);
    await keepMessages(tab, PIA, [message('c')]);
    expect(await tab.sendWaiting()).toBeNull();
    expect(sync.received.map(({ requestId }) => requestId)).toEqual(['a', 'b', 'c']);
    expect(sync.most).toBe(1);
    expect(JSON.parse(sync.received[0]!.body)).toEqual({ words: 'a', version: 2, requestId: 'a' });
    expect(sync.received[0]).toMatchObject({ path: '/api/sync/findings', person: PIA });
    expect(await states(tab)).toEqual(['a: sent', 'b: sent', 'c: sent']);
  });

  test('by two tabs at once it is still one at a time, and each message goes once', async () => {
    const first = await openTab();
    const ids = Array.from({ length: 12 }, (_, index) => `m${String(index).padStart(2, '0')}`);
    await keepMessages(
      first,
      PIA,
      ids.map((id) => message(id)),
    );
    const second = await openTab();
    await Promise.all([first.sendWaiting(), second.sendWaiting()]);
    expect(sync.received.map(({ requestId }) => requestId)).toEqual(ids);
    expect(sync.most).toBe(1);
  });

  test('an answer that was lost leaves the message waiting, and the next try carries the same number', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a'), message('b')]);
    sync.says = () => ({ how: 'drop' });
    expect(await tab.sendWaiting()).toBe('no-connection');
    expect(await states(tab)).toEqual(['a: waiting', 'b: waiting']);
    sync.says = () => ({ how: 'take' });
    expect(await tab.sendWaiting()).toBeNull();
    expect(sync.received.map(({ requestId }) => requestId)).toEqual(['a', 'a', 'b']);
    expect(sync.written()).toEqual(['a', 'b']);
  });

  test('with no server at all everything waits in its order', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a'), message('b')]);
    await sync.stop();
    expect(await tab.sendWaiting()).toBe('no-connection');
    expect(await states(tab)).toEqual(['a: waiting', 'b: waiting']);
  });

  test('what was being sent when its tab was killed counts as waiting', async () => {
    const killed = await openTab();
    await keepMessages(killed, PIA, [message('a')]);
    await killed.inOne(['outbox'], 'readwrite', async (at) => {
      await at.put('outbox', { ...(await at.get('outbox', 'a'))!, state: 'sending', tries: 1 });
    });
    const tab = await openTab();
    expect(await tab.sendWaiting()).toBeNull();
    expect(await states(tab)).toEqual(['a: sent']);
  });

  test('a refusal is kept with its reason; what hangs on it waits, the rest goes on', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a'), message('hangs', { after: ['a'] }), message('free')]);
    sync.says = ({ requestId }) => (requestId === 'a' ? refuses(422, 'invalid') : { how: 'take' });
    expect(await tab.sendWaiting()).toBeNull();
    expect(await states(tab)).toEqual(['a: refused', 'hangs: waiting', 'free: sent']);
    const [refused] = await tab.inOne(['outbox'], 'readonly', tab.inOrder);
    expect(refused?.problem?.code).toBe('invalid');

    sync.says = () => ({ how: 'take' });
    await tab.putRight('a', { words: 'better' });
    await vi.waitFor(async () => expect(await states(tab)).toEqual(['a: sent', 'hangs: sent', 'free: sent']));
    expect(JSON.parse(sync.received.at(-2)!.body)).toMatchObject({ words: 'better', requestId: 'a' });
  });

  test.each([
    ['try_again', 503, 'no-answer'],
    ['bug', 500, 'no-answer'],
    ['not_signed_in', 401, 'signed-out'],
  ] as const)('%s stops, and nothing is refused', async (code, status, stuck) => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a'), message('b')]);
    sync.says = () => refuses(status, code);
    expect(await tab.sendWaiting()).toBe(stuck);
    expect(sync.received).toHaveLength(1);
    expect(await states(tab)).toEqual(['a: waiting', 'b: waiting']);
  });

  test('a page that is none of ours (a network that wants a log-in) is no answer', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a')]);
    sync.says = () => ({ how: 'answer', status: 200, body: { welcome: 'to our network' } });
    expect(await tab.sendWaiting()).toBe('no-answer');
    expect(await states(tab)).toEqual(['a: waiting']);
  });

  test('a fault that one message meets every time holds up the others five times, not six', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a'), message('b')]);
    sync.says = ({ requestId }) => (requestId === 'a' ? refuses(500, 'bug') : { how: 'take' });
    for (let tried = 1; tried < 5; tried += 1) {
      expect(await tab.sendWaiting()).toBe('no-answer');
      expect(await states(tab)).toEqual(['a: waiting', 'b: waiting']);
    }
    expect(await tab.sendWaiting()).toBeNull();
    expect(await states(tab)).toEqual(['a: refused', 'b: sent']);
  });

  test('somebody else signed in: theirs goes, the first one’s waits and is asked about once a run', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('pia-1'), message('pia-2')]);
    await keepMessages(tab, SAM, [message('sam-1')]);
    sync.says = ({ person }) => (person === PIA ? refuses(409, 'other_person') : { how: 'take' });
    expect(await tab.sendWaiting()).toBe('other-person');
    expect(await states(tab)).toEqual(['pia-1: waiting', 'pia-2: waiting', 'sam-1: sent']);
    expect(sync.received.map(({ requestId }) => requestId)).toEqual(['pia-1', 'sam-1']);
  });

  test('a finding does not wait for a walkaround the server did not take; the end of the walkaround does', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [
      message('walk', { kind: 'walk-start', path: 'walkarounds' }),
      message('found', { message: { walkaroundId: 'walk', words: 'x' }, after: ['walk'] }),
      message('end', { kind: 'walk-finish', path: 'walkarounds/finish', after: ['walk'] }),
    ]);
    sync.says = ({ path }) => (path.endsWith('/walkarounds') ? refuses(404, 'not_found') : { how: 'take' });
    expect(await tab.sendWaiting()).toBeNull();
    expect(await states(tab)).toEqual(['walk: refused', 'found: sent', 'end: waiting']);
    expect(JSON.parse(sync.received[1]!.body)).toMatchObject({ walkaroundId: null, words: 'x' });
    await tab.withdraw('walk');
    expect(await states(tab)).toEqual(['found: sent']);
  });

  test('a finding made while the start of its walkaround was being refused does not wait for ever', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('walk', { kind: 'walk-start', path: 'walkarounds' })]);
    sync.says = () => refuses(404, 'not_found');
    await tab.sendWaiting();
    await keepMessages(tab, PIA, [message('found', { message: { walkaroundId: 'walk' }, after: ['walk'] })]);
    sync.says = () => ({ how: 'take' });
    expect(await tab.sendWaiting()).toBeNull();
    expect(await states(tab)).toEqual(['walk: refused', 'found: sent']);
    expect(JSON.parse(sync.received.at(-1)!.body)).toMatchObject({ walkaroundId: null });
  });

  test('the end of a walkaround does not wait for a finding that was refused: what was measured gets there', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [
      message('walk', { kind: 'walk-start', path: 'walkarounds' }),
      message('found', { after: ['walk'] }),
      message('end', { kind: 'walk-finish', path: 'walkarounds/finish', after: ['walk', 'found'] }),
    ]);
    sync.says = ({ requestId }) => (requestId === 'found' ? refuses(422, 'invalid') : { how: 'take' });
    expect(await tab.sendWaiting()).toBeNull();
    expect(await states(tab)).toEqual(['walk: sent', 'found: refused', 'end: sent']);
  });

  test('what another tab has sent meanwhile stays sent, whatever this one heard', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a')]);
    sync.says = async () => {
      await tab.inOne(['outbox'], 'readwrite', async (at) => {
        const kept = (await at.get('outbox', 'a'))!;
        await at.put('outbox', { ...kept, state: 'sent', sentAt: new Date().toISOString() });
      });
      return { how: 'drop' };
    };
    await tab.sendWaiting();
    expect(await states(tab)).toEqual(['a: sent']);
  });

  test('sent messages are shown for a day and then gone', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('old'), message('young')]);
    await tab.sendWaiting();
    const sentAgo = (id: string, ms: number) =>
      tab.inOne(['outbox'], 'readwrite', async (at) => {
        const kept = (await at.get('outbox', id))!;
        await at.put('outbox', { ...kept, sentAt: new Date(Date.now() - ms).toISOString() });
      });
    const DAY = 24 * 60 * 60 * 1000;
    await sentAgo('old', DAY + 1000);
    await sentAgo('young', DAY - 60_000);
    await tab.sendWaiting();
    expect(await states(tab)).toEqual(['young: sent']);
  });

  test('the pause doubles from 2 s to 2 min and is spread down to a half', () => {
    expect([1, 2, 6, 7, 40].map((failed) => pauseAfter(failed, 1))).toEqual([
      2000, 4000, 64000, 120000, 120000,
    ]);
    expect(pauseAfter(1, 0)).toBe(1000);
  });
});

describe('photos', () => {
  const keepPhoto = (tab: Awaited<ReturnType<typeof openTab>>, id: string) =>
    tab.inOne(['photos'], 'readwrite', (at) =>
      at.put('photos', {
        id,
        personId: PIA,
        bundle: 'bundle',
        picture: new Blob(['the picture'], { type: 'image/jpeg' }),
        width: 4,
        height: 3,
        marks: [
          {
            kind: 'ring',
            points: [
              [1, 2],
              [3, 4],
            ],
          },
        ],
        takenAt: `2026-11-25T12:00:0${id.length}Z`,
      }),
    );

  test('go after their finding, as a form with their marks and their sum, and leave the phone once sent', async () => {
    const tab = await openTab();
    await keepPhoto(tab, 'p1');
    await keepPhoto(tab, 'p22');
    const pictures = await tab.photoMessages('bundle', 'finding', AIRCRAFT, 'N053QB: nick');
    await keepMessages(tab, PIA, [...pictures, message('finding')]);
    expect(await tab.sendWaiting()).toBeNull();
    expect(sync.received.map(({ requestId }) => requestId)).toEqual(['finding', 'p1', 'p22']);
    const { body } = sync.received[1]!;
    expect(body).toContain('name="about"');
    expect(body).toContain('name="photo"');
    expect(body).toContain('the picture');
    // SHA-256 of "the picture", by `printf 'the picture' | sha256sum`.
    expect(body).toContain('"sha256":"01064c082a57b792544bbb6d2cb9cef502a54cfd915642ad70fcbd562758afdd"');
    expect(body).toContain('"findingId":"finding","marks":[{"kind":"ring","points":[[1,2],[3,4]]}]');
    expect(await tab.inOne(['photos'], 'readonly', (at) => at.all('photos'))).toEqual([]);
  });

  test('one that does not get through holds up no words behind it, and is tried again in the next run', async () => {
    const tab = await openTab();
    await keepPhoto(tab, 'p1');
    await keepPhoto(tab, 'p22');
    const pictures = await tab.photoMessages('bundle', 'finding', AIRCRAFT, 'N053QB: nick');
    await keepMessages(tab, PIA, [message('finding'), ...pictures, message('later')]);
    // The line breaks on every picture: no other is tried in that run.
    sync.says = ({ path }) => (path.endsWith('/photos') ? { how: 'drop' } : { how: 'take' });
    expect(await tab.sendWaiting()).toBe('no-connection');
    expect(sync.received.map(({ requestId }) => requestId)).toEqual(['finding', 'p1', 'later']);
    // The server asks for this one again: the other goes.
    sync.says = ({ requestId }) => (requestId === 'p1' ? refuses(503, 'try_again') : { how: 'take' });
    expect(await tab.sendWaiting()).toBe('no-answer');
    expect(await states(tab)).toEqual(['finding: sent', 'p1: waiting', 'p22: sent', 'later: sent']);
    sync.says = () => ({ how: 'take' });
    expect(await tab.sendWaiting()).toBeNull();
    expect(await states(tab)).toContain('p1: sent');
  });

  test('one that is gone from the phone is said, and holds up nothing', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [
      message('p', { kind: 'photo', path: 'photos', photoId: 'p' }),
      message('finding'),
    ]);
    expect(await tab.sendWaiting()).toBeNull();
    expect(await states(tab)).toEqual(['p: refused', 'finding: sent']);
  });

  test('left out before it is sent, its message goes with it', async () => {
    const tab = await openTab();
    await keepPhoto(tab, 'p1');
    await keepMessages(tab, PIA, await tab.photoMessages('bundle', 'finding', AIRCRAFT, 'N053QB'));
    await tab.dropPhoto('p1');
    expect(await states(tab)).toEqual([]);
    expect(await tab.inOne(['photos'], 'readonly', (at) => at.all('photos'))).toEqual([]);
  });
});

describe('what is typed', () => {
  const typed = (words: string, requestId = 'a') => ({
    key: 'k',
    personId: PIA,
    requestId,
    bundle: 'b',
    foundAt: '2026-11-25T12:00:00.000Z',
    values: { words } as never,
  });

  /** Whoever opens it waits behind a change of version, which waits for a page that does not close. */
  async function stalledDatabase(): Promise<IDBFactory> {
    const factory = new IDBFactory();
    await new Promise((resolve) => (factory.open('wheelchock', 1).onsuccess = resolve));
    await new Promise((resolve) => (factory.open('wheelchock', 2).onblocked = resolve));
    return factory;
  }

  test('a page loaded again while its database still writes has it; once written, the tab keeps nothing beside it', async () => {
    const held = stubStorage('sessionStorage');
    const before = await openTab();
    await before.keepDraft(typed('Straw'));
    expect(held.size).toBe(0);

    // A database that is not done when the page goes: the newest keystroke never gets to it.
    const { indexedDB } = globalThis;
    vi.stubGlobal('indexedDB', await stalledDatabase());
    const going = await openTab();
    void going.keepDraft(typed('Straw in the'));
    void going.keepDraft(typed('Straw in the inlet'));
    expect(held.size).toBe(1);

    vi.stubGlobal('indexedDB', indexedDB);
    const after = await openTab();
    expect(await after.readDraft('k')).toEqual(typed('Straw in the inlet'));
    expect(await after.readDraft('another')).toBeNull();
    await after.keepDraft(typed('Straw in the inlet'));
    expect(held.size).toBe(0);
    expect(await after.readDraft('k')).toEqual(typed('Straw in the inlet'));
  });

  test('the slip of a newer keystroke outlives the writing of an older one', async () => {
    const held = stubStorage('sessionStorage');
    const tab = await openTab();
    const older = tab.keepDraft(typed('S'));
    const newer = tab.keepDraft(typed('St'));
    await older;
    expect([...held.values()].join()).toContain('"words":"St"');
    await newer;
    expect(held.size).toBe(0);
    expect(await tab.readDraft('k')).toEqual(typed('St'));
  });

  test('dropped or sent, it is gone from both', async () => {
    const held = stubStorage('sessionStorage', new Map([['wheelchock/typed/k', JSON.stringify(typed('S'))]]));
    const tab = await openTab();
    expect(await tab.readDraft('k')).toEqual(typed('S'));
    await tab.dropDraft('k');
    expect(await tab.readDraft('k')).toBeNull();
    expect(held.size).toBe(0);

    await takeAlong(tab, PACK);
    held.set('wheelchock/typed/k', JSON.stringify(typed('S')));
    await tab.queue([message('a')], { dropDraft: 'k' });
    expect(await tab.readDraft('k')).toBeNull();
  });

  test('a tab without storage of its own keeps it in the database all the same', async () => {
    vi.stubGlobal('sessionStorage', {
      getItem: () => {
        throw new DOMException('no', 'SecurityError');
      },
    });
    const tab = await openTab();
    await tab.keepDraft(typed('Straw'));
    expect(await tab.readDraft('k')).toEqual(typed('Straw'));
  });
});

describe('queueing', () => {
  test('the draft goes in the same moment as the message comes', async () => {
    const tab = await openTab();
    await takeAlong(tab, PACK);
    const draft = { key: 'k', personId: PIA, requestId: 'a', bundle: 'b', foundAt: '', values: {} as never };
    await tab.inOne(['drafts'], 'readwrite', (at) => at.put('drafts', draft));
    await tab.queue([message('a')], { dropDraft: 'k' });
    expect(await tab.inOne(['drafts'], 'readonly', (at) => at.all('drafts'))).toEqual([]);
    expect((await tab.waitFor('a', 5_000)).state).toBe('sent');
    expect((await tab.waitFor('a', 5_000)).answer).toEqual({ wrote: 'a' });
  });

  test('the same number again changes what was never tried, and nothing that was', async () => {
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a'), message('b')]);
    await keepMessages(tab, PIA, [message('a', { message: { words: 'changed' } })]);
    sync.says = () => ({ how: 'drop' });
    await tab.sendWaiting();
    await keepMessages(tab, PIA, [message('a', { message: { words: 'too late' } })]);
    sync.says = () => ({ how: 'take' });
    await tab.sendWaiting();
    expect(sync.received.map(({ body }) => (JSON.parse(body) as { words: string }).words)).toEqual([
      'changed',
      'changed',
      'b',
    ]);
  });

  test('waiting for a message ends as soon as a try has failed, long before the patience does', async () => {
    const tab = await openTab();
    await takeAlong(tab, PACK);
    await sync.stop();
    await tab.queue([message('a')]);
    const began = Date.now();
    expect((await tab.waitFor('a', 30_000)).state).toBe('waiting');
    expect(Date.now() - began).toBeLessThan(5_000);
  });

  test('a phone that keeps nothing sends all the same, and says so', async () => {
    vi.stubGlobal('indexedDB', undefined);
    const tab = await openTab();
    await keepMessages(tab, PIA, [message('a')]);
    expect(tab.isKept()).toBe(false);
    expect(await tab.sendWaiting()).toBeNull();
    expect(await states(tab)).toEqual(['a: sent']);
  });

  test('work that fails in the middle leaves nothing behind', async () => {
    const tab = await openTab();
    await expect(
      tab.inOne(['outbox'], 'readwrite', async (at) => {
        await tab.enqueue(at, PIA, [message('a')]);
        throw new Error('in the middle');
      }),
    ).rejects.toThrow('in the middle');
    expect(await states(tab)).toEqual([]);
    expect(tab.isKept()).toBe(true);
  });
});

describe('a walkaround', () => {
  const begin = async () => {
    const tab = await openTab();
    await takeAlong(tab, PACK);
    const walk = await tab.beginWalk(PACK.aircraft[0]!, PACK.lists.type!);
    return { tab, walk };
  };
  const kept = (tab: Awaited<ReturnType<typeof openTab>>) =>
    tab.inOne(['walks'], 'readonly', (at) => at.all('walks'));

  test('begun twice is begun once, and its start is queued with it', async () => {
    const { tab, walk } = await begin();
    expect((await tab.beginWalk(PACK.aircraft[0]!, PACK.lists.type!)).id).toBe(walk.id);
    const other = await openTab();
    expect((await other.beginWalk(PACK.aircraft[0]!, PACK.lists.type!)).id).toBe(walk.id);
    await vi.waitFor(async () => expect(await states(tab)).toEqual([`${walk.id}: sent`]));
    expect(JSON.parse(sync.received[0]!.body)).toMatchObject({ aircraftId: AIRCRAFT, planId: null });
  });

  test('answered in two tabs keeps the answers of both', async () => {
    const { tab } = await begin();
    const other = await openTab();
    await other.beginWalk(PACK.aircraft[0]!, PACK.lists.type!);
    await tab.changeItem(AIRCRAFT, 'papers', (answer) => ({ ...answer, looked: 'good' }));
    await other.changeItem(AIRCRAFT, 'belts', (answer) => ({ ...answer, looked: 'finding' }));
    await tab.changePlacard(AIRCRAFT, 'placard', 'missing');
    const [walk] = await kept(tab);
    expect(walk?.items).toMatchObject({ papers: { looked: 'good' }, belts: { looked: 'finding' } });
    expect(walk?.placards).toEqual({ placard: 'missing' });
  });

  test('finished sends its answers behind what was found on it, and is gone from the phone', async () => {
    const { tab, walk } = await begin();
    await tab.changeItem(AIRCRAFT, 'papers', (answer) => ({ ...answer, looked: 'good' }));
    await tab.queue([message('found', { after: [walk.id] })]);
    await tab.noteFinding(AIRCRAFT, { station: 'cabin', itemKey: 'belts', id: 'found' });
    const id = await tab.finishWalk(AIRCRAFT);
    expect(await kept(tab)).toEqual([]);
    expect((await tab.waitFor(id, 5_000)).state).toBe('sent');
    expect(sync.received.map(({ requestId }) => requestId)).toEqual([walk.id, 'found', id]);
    expect(JSON.parse(sync.received[2]!.body)).toMatchObject({
      walkaroundId: walk.id,
      answers: { items: { papers: { looked: 'good', readings: [], samples: [] } }, placards: {} },
    });
    await expect(tab.finishWalk(AIRCRAFT)).rejects.toThrow();
  });
});

describe('what the earlier app kept', () => {
  const oldPhone = (entries: Record<string, unknown>) =>
    stubStorage(
      'localStorage',
      new Map(Object.entries(entries).map(([key, value]) => [key, JSON.stringify(value)])),
    );
  const OLD_WALK = {
    id: 'old-walk',
    aircraftId: AIRCRAFT,
    startedAt: '2026-11-24T10:00:00.000Z',
    isStarted: false,
    answers: { cabin: 'good', propeller: 'finding' },
    finishId: 'f',
    finishTried: null,
  };

  test('a walkaround under way is carried over: good to all there was to look at, a finding to one, a sample to none', async () => {
    const held = oldPhone({ [`wheelchock/walk/${PIA}/${AIRCRAFT}`]: OLD_WALK });
    const tab = await openTab();
    await takeAlong(tab, PACK);
    await tab.carryOver(PACK);
    const [walk] = await tab.inOne(['walks'], 'readonly', (at) => at.all('walks'));
    expect(walk).toMatchObject({ startedAt: OLD_WALK.startedAt, personId: PIA });
    expect(Object.fromEntries(Object.entries(walk!.items).map(([key, { looked }]) => [key, looked]))).toEqual(
      {
        papers: 'good',
        belts: 'good',
        nicks: 'finding',
      },
    );
    expect(held.size).toBe(0);
    await vi.waitFor(async () => expect(await states(tab)).toEqual([`${walk!.id}: sent`]));
  });

  test('one the server knows without a list is begun anew by one; somebody else’s stays where it is', async () => {
    const held = oldPhone({
      [`wheelchock/walk/${PIA}/${AIRCRAFT}`]: { ...OLD_WALK, isStarted: true },
      [`wheelchock/walk/${SAM}/${AIRCRAFT}`]: OLD_WALK,
      'somebody-elses': 'x',
    });
    const tab = await openTab();
    await tab.carryOver(PACK);
    const [walk] = await tab.inOne(['walks'], 'readonly', (at) => at.all('walks'));
    expect(walk?.id).not.toBe('old-walk');
    await vi.waitFor(async () => expect(await states(tab)).toEqual([`${walk!.id}: sent`]));
    expect(JSON.parse(sync.received[0]!.body)).toMatchObject({ requestId: walk?.id, planId: null });
    expect([...held.keys()]).toEqual([`wheelchock/walk/${SAM}/${AIRCRAFT}`, 'somebody-elses']);
  });

  test('a finding being typed is carried over under its own number, words and all', async () => {
    const held = oldPhone({
      [`wheelchock/finding/${PIA}/${AIRCRAFT}/propeller`]: {
        requestId: 'r',
        bundle: 'b',
        foundAt: '2026-11-24T10:00:00.000Z',
        values: { finding: 'prop-nick', words: 'Near the tip' },
      },
    });
    const tab = await openTab();
    await tab.carryOver(PACK);
    const [draft] = await tab.inOne(['drafts'], 'readonly', (at) => at.all('drafts'));
    expect(draft).toMatchObject({
      key: `${PIA}/${AIRCRAFT}/propeller/`,
      requestId: 'r',
      values: { finding: 'prop-nick', words: 'Near the tip', place: '', measurements: {} },
    });
    expect(held.size).toBe(0);
  });
});

describe('the bar', () => {
  const sync = (more: Partial<SyncState>): SyncState => ({
    waiting: 0,
    refused: 0,
    isSending: false,
    stuck: null,
    lastTriedAt: null,
    isNotKept: false,
    ...more,
  });
  test.each([
    ['nothing waits', sync({}), 0, 0, 'Everything is sent.', null],
    ['sending', sync({ isSending: true }), 2, 0, 'Sending, 2 to go.', null],
    [
      'no connection',
      sync({ stuck: 'no-connection' }),
      3,
      0,
      '3 not sent yet: no connection. Kept on this phone.',
      'send',
    ],
    [
      'signed out',
      sync({ stuck: 'signed-out' }),
      1,
      0,
      '1 not sent yet: your session has ended. Kept on this phone.',
      'sign-in',
    ],
    ['refused', sync({ refused: 1 }), 0, 0, '1 not taken by the server.', 'see'],
    [
      'refused, and something else waits: a refusal is never hidden behind it',
      sync({ refused: 1 }),
      2,
      0,
      '1 not taken by the server. 2 not sent yet. Kept on this phone.',
      'see',
    ],
    [
      'another’s',
      sync({ stuck: 'other-person' }),
      0,
      2,
      '2 of somebody else not sent: they wait until they sign in.',
      null,
    ],
    [
      'not kept',
      sync({ isNotKept: true }),
      1,
      0,
      '1 not sent, and this phone keeps nothing: leave this page open.',
      'send',
    ],
  ] as const)('says it when %s', (_, state, waiting, others, words, step) => {
    expect(sayHowItStands(inEnglish, { ...state, waiting }, others)).toMatchObject({ words, step });
  });
});

test('the shell draws its own screens always, the server’s when cut off, and no other', () => {
  const id = '3f0c2a52-6f0e-4c5e-9d5b-0123456789ab';
  for (const path of ['/ramp/out', `/ramp/${id}/walk`, `/ramp/${id}/finding`, `/ramp/${id}/meters`]) {
    expect(shellDraws(path), path).toBe('always');
  }
  for (const path of ['/ramp', `/ramp/${id}`]) expect(shellDraws(path), path).toBe('when-cut-off');
  for (const path of [
    '/ramp/mine',
    `/ramp/write-up/${id}`,
    '/desk',
    `/ramp/${id}/walk/x`,
    '/ramp/mine/walk',
    '/',
  ]) {
    expect(shellDraws(path), path).toBe('never');
  }
});
