import { newRequestId } from '@/app/_ui/request-id';
import { EMPTY_DRAFT, type FindingDraft } from '@/lib/findings/compose-finding';
import { type ItemAnswer } from '@/lib/rules/walkaround/answers';
import { type PackList, type RampPack } from '@/lib/walkarounds/pack';
import { tell } from './channel';
import { inOne } from './database';
import { afterQueueing, enqueue } from './enqueue';
import { walkKey } from './kept-store';
import { type KeptDraft, type KeptWalk } from './shapes';
import { startOf } from './walk-start';

/**
 * What an earlier version of these pages kept in localStorage is carried over, once, as soon as the phone knows the lists:
 * a walkaround under way and findings being typed. Each is taken away there only when it is kept here.
 */
const WALK = 'wheelchock/walk/';
const DRAFT = 'wheelchock/finding/';

interface OldWalk {
  readonly id: string;
  readonly startedAt: string;
  readonly answers: Readonly<Record<string, 'good' | 'finding'>>;
}

interface OldDraft {
  readonly requestId: string;
  readonly bundle: string;
  readonly foundAt: string;
  readonly values: Partial<FindingDraft>;
}

/** Carries over what is this person's; what others left waits for their pack. */
export async function carryOver(pack: RampPack): Promise<void> {
  if (typeof localStorage === 'undefined') return;
  for (const key of Object.keys(localStorage)) {
    const [, , personId, aircraftId, station] = key.split('/');
    if (personId !== pack.person.id || !aircraftId) continue;
    if (key.startsWith(WALK) && (await carryWalk(key, pack, aircraftId))) localStorage.removeItem(key);
    if (key.startsWith(DRAFT) && station && (await carryDraft(key, personId, aircraftId, station))) {
      localStorage.removeItem(key);
    }
  }
}

async function carryWalk(key: string, pack: RampPack, aircraftId: string): Promise<boolean> {
  const old = readOld<OldWalk>(key);
  const aircraft = pack.aircraft.find((one) => one.id === aircraftId);
  const list = aircraft && pack.lists[aircraft.typeId];
  // Unreadable is over and done with; an aircraft that is away just now may be back in the next pack.
  if (!old?.id) return true;
  if (!aircraft || !list) return false;
  const walk: KeptWalk = {
    // The server knows the old number, if at all, without a list, and could not judge what is answered by one.
    id: newRequestId(),
    personId: pack.person.id,
    aircraftId,
    startedAt: old.startedAt,
    list,
    items: itemsFrom(old.answers, list),
    placards: {},
    findings: [],
  };
  await inOne(['walks', 'outbox'], 'readwrite', async (at) => {
    if (await at.get('walks', walkKey(walk.personId, aircraftId))) return;
    await at.put('walks', walk);
    await enqueue(at, walk.personId, [startOf(walk, aircraft.registration)]);
  });
  tell({ topic: 'walks' });
  afterQueueing();
  return true;
}

/**
 * A station's answer as answers of its items. Good was said of all there is to look at. A finding was one of them, nobody
 * kept which: it is put at the first, and the rest counts as not looked at. Numbers and samples were not asked for then.
 */
function itemsFrom(answers: OldWalk['answers'], { list }: PackList): Record<string, ItemAnswer> {
  const items: Record<string, ItemAnswer> = {};
  for (const station of list.stations) {
    const answer = answers[station.area];
    const looks = station.items.filter((item) => item.kind === 'look');
    if (answer === 'good') looks.forEach((item) => (items[item.key] = looked('good')));
    else if (answer === 'finding' && looks[0]) items[looks[0].key] = looked('finding');
  }
  return items;
}

const looked = (answer: 'good' | 'finding'): ItemAnswer => ({ looked: answer, readings: [], samples: [] });

async function carryDraft(
  key: string,
  personId: string,
  aircraftId: string,
  station: string,
): Promise<boolean> {
  const old = readOld<OldDraft>(key);
  if (!old?.requestId) return true;
  const draft: KeptDraft = {
    key: `${personId}/${aircraftId}/${station}/`,
    personId,
    requestId: old.requestId,
    bundle: old.bundle,
    foundAt: old.foundAt,
    values: { ...EMPTY_DRAFT, ...old.values },
  };
  await inOne(['drafts'], 'readwrite', async (at) => {
    if (!(await at.get('drafts', draft.key))) await at.put('drafts', draft);
  });
  return true;
}

function readOld<T>(key: string): T | null {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    return typeof value === 'object' ? (value as T | null) : null;
  } catch {
    return null;
  }
}
