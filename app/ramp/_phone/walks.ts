'use client';

import { useMemo } from 'react';
import { newRequestId } from '@/app/_ui/request-id';
import { NO_ANSWER, type ItemAnswer, type WalkAnswers } from '@/lib/rules/walkaround/answers';
import { type PackAircraft, type PackList } from '@/lib/walkarounds/pack';
import { inOne } from './database';
import { afterQueueing, enqueue } from './enqueue';
import { walkKey, type AtTheShelves } from './kept-store';
import { mirror } from './mirror';
import { personHere, readPack, requirePerson, usePack } from './pack';
import { type KeptWalk } from './shapes';
import { startOf } from './walk-start';

type Walks = Readonly<Record<string, KeptWalk>>;

const walks = mirror<Walks>('walks', async () => {
  const kept = await inOne(['walks'], 'readonly', (at) => at.all('walks'));
  return Object.fromEntries(kept.map((walk) => [walkKey(walk.personId, walk.aircraftId), walk]));
});

/** This person's walkaround of an aircraft under way on this phone: undefined while loading, null when there is none. */
export function useWalk(aircraftId: string): KeptWalk | null | undefined {
  const all = walks.use();
  const pack = usePack();
  return useMemo(() => {
    if (!all || pack === undefined) return undefined;
    return (pack && all[walkKey(pack.pack.person.id, aircraftId)]) ?? null;
  }, [all, pack, aircraftId]);
}

/**
 * Begins a walkaround and queues its start, both or neither. It has its number before anybody is asked. One that is under
 * way already goes on instead: pressing twice begins once.
 */
export async function beginWalk(aircraft: PackAircraft, list: PackList): Promise<KeptWalk> {
  const personId = await requirePerson();
  const key = walkKey(personId, aircraft.id);
  const there = (await walks.read())[key];
  if (there) return there;
  const walk: KeptWalk = {
    id: newRequestId(),
    personId,
    aircraftId: aircraft.id,
    startedAt: new Date().toISOString(),
    list,
    items: {},
    placards: {},
    findings: [],
  };
  let begun = walk;
  await walks.change({ ...walks.now(), [key]: walk }, async () => {
    begun = await inOne(['walks', 'outbox'], 'readwrite', async (at) => {
      const kept = await at.get('walks', key);
      if (kept) return kept;
      await at.put('walks', walk);
      await enqueue(at, personId, [startOf(walk, aircraft.registration)]);
      return walk;
    });
  });
  afterQueueing();
  return begun;
}

/** Changes one item's answer. `change` must give the same from the same: it is done on the screen and on what is kept. */
export const changeItem = (
  aircraftId: string,
  itemKey: string,
  change: (answer: ItemAnswer) => ItemAnswer,
): Promise<void> => changeItems(aircraftId, [itemKey], change);

/** Changes several items' answers at once, likewise. */
export const changeItems = (
  aircraftId: string,
  itemKeys: readonly string[],
  change: (answer: ItemAnswer) => ItemAnswer,
): Promise<void> =>
  changeWalk(aircraftId, (walk) => {
    const changed = itemKeys.map((key) => [key, change(walk.items[key] ?? NO_ANSWER)] as const);
    return { ...walk, items: { ...walk.items, ...Object.fromEntries(changed) } };
  });

/** Says whether a placard that must be there is; null takes the answer back. */
export const changePlacard = (
  aircraftId: string,
  placardId: string,
  answer: 'there' | 'missing' | null,
): Promise<void> =>
  changeWalk(aircraftId, (walk) => {
    const others = Object.entries(walk.placards).filter(([id]) => id !== placardId);
    return { ...walk, placards: Object.fromEntries(answer ? [...others, [placardId, answer]] : others) };
  });

/** Notes a finding or an observation written on the walk: the number of its message. */
export const noteFinding = (
  aircraftId: string,
  finding: { readonly station: string; readonly itemKey: string | null; readonly id: string },
): Promise<void> =>
  changeWalk(aircraftId, (walk) =>
    walk.findings.some(({ id }) => id === finding.id)
      ? walk
      : { ...walk, findings: [...walk.findings, finding] },
  );

/** Throws the walkaround away on this phone. What was queued on it is sent all the same. */
export async function throwAwayWalk(aircraftId: string): Promise<void> {
  const key = keyHere(aircraftId);
  if (key === null) return;
  await walks.change(without(walks.now() ?? {}, key), () =>
    inOne(['walks'], 'readwrite', (at) => at.drop('walks', key)),
  );
}

/**
 * Ends the walkaround: queues its answers behind all that was written on it and takes the walk away, both or neither. Gives
 * the message's number. Throws when no walk is under way.
 */
export async function finishWalk(aircraftId: string): Promise<string> {
  const key = walkKey(await requirePerson(), aircraftId);
  const registration = (await readPack())?.pack.aircraft.find(({ id }) => id === aircraftId)?.registration;
  const id = newRequestId();
  let isFinished = false;
  const shown = await walks.read();
  await walks.change(without(shown, key), async () => {
    isFinished = await inOne(['walks', 'outbox'], 'readwrite', (at) => finish(at, key, id, registration));
  });
  if (!isFinished) throw new Error('No walkaround of this aircraft is under way on this phone.');
  afterQueueing();
  return id;
}

async function finish(
  at: AtTheShelves,
  key: string,
  id: string,
  registration: string | undefined,
): Promise<boolean> {
  const walk = await at.get('walks', key);
  if (!walk) return false;
  const answers: WalkAnswers = { items: walk.items, placards: walk.placards };
  await enqueue(at, walk.personId, [
    {
      id,
      aircraftId: walk.aircraftId,
      kind: 'walk-finish',
      label: `${registration ?? 'Aircraft'}: walkaround finished`,
      path: 'walkarounds/finish',
      message: { walkaroundId: walk.id, answers, finishedAt: new Date().toISOString() },
      photoId: null,
      after: [walk.id, ...walk.findings.map((finding) => finding.id)],
    },
  ]);
  await at.drop('walks', key);
  return true;
}

/** Shown at once, kept behind: changes the walk as it is kept then, so that two tabs do not undo each other. */
async function changeWalk(aircraftId: string, change: (walk: KeptWalk) => KeptWalk): Promise<void> {
  const key = keyHere(aircraftId);
  const shown = walks.now() ?? {};
  const walk = key === null ? undefined : shown[key];
  if (key === null || !walk) return;
  await walks.change({ ...shown, [key]: change(walk) }, () =>
    inOne(['walks'], 'readwrite', async (at) => {
      const kept = await at.get('walks', key);
      if (kept?.id === walk.id) await at.put('walks', change(kept));
    }),
  );
}

function keyHere(aircraftId: string): string | null {
  const personId = personHere();
  return personId === null ? null : walkKey(personId, aircraftId);
}

const without = (all: Walks, key: string): Walks =>
  Object.fromEntries(Object.entries(all).filter(([one]) => one !== key));
