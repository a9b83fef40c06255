'use client';

import { tell } from './channel';
import { carryOver } from './carry-over';
import { inOne } from './database';
import { mirror } from './mirror';
import { flush } from './sender';
import { type KeptPack } from './shapes';
import { lastPersonChange } from '@/app/_session/last-signed-in';

/** What became of asking for a pack. */
export type PackAnswer = 'fresh' | 'no-connection' | 'no-answer' | 'signed-out';

/** A pack is asked for again after that long, when a page opens or the connection is back. */
const FRESH_FOR_MS = 120_000;
const PATIENCE_MS = 20_000;

const packs = mirror<KeptPack | null>('packs', async () =>
  newestOf(await inOne(['packs'], 'readonly', (at) => at.all('packs'))),
);

/** The newest, unless somebody else has signed in on this phone since: then nobody knows yet whose phone it is. */
function newestOf(kept: readonly KeptPack[]): KeptPack | null {
  const newest = [...kept].sort((a, b) => b.keptAt.localeCompare(a.keptAt))[0];
  return newest && newest.keptAt >= lastPersonChange() ? newest : null;
}

/** What this phone took along: undefined while loading, null when it has nothing. Always "as of" `pack.asOf`. */
export const usePack = (): KeptPack | null | undefined => packs.use();

/** The same outside of components. */
export const readPack = (): Promise<KeptPack | null> => packs.read();

/** Who this phone takes its holder for, as of the last answer of the server; null when it does not know. */
export const personHere = (): string | null => packs.now()?.pack.person.id ?? null;

let asking: Promise<PackAnswer> | null = null;

/**
 * Sees to it that what is kept is not old, and says how that went. Asks the server only when the pack is older than two
 * minutes, or something was sent since; `now` asks in any case. Never throws.
 */
export async function refreshPack(when: 'if-old' | 'now' = 'if-old'): Promise<PackAnswer> {
  if (when === 'if-old' && !(await isOld())) return 'fresh';
  asking ??= ask().finally(() => {
    asking = null;
  });
  return asking;
}

async function isOld(): Promise<boolean> {
  const kept = await packs.read();
  if (!kept) return true;
  const age = Date.now() - Date.parse(kept.keptAt);
  // A clock that was put back makes an age below zero.
  if (age < 0 || age > FRESH_FOR_MS) return true;
  const messages = await inOne(['outbox'], 'readonly', (at) => at.all('outbox'));
  return messages.some(({ sentAt }) => sentAt !== null && sentAt > kept.keptAt);
}

async function ask(): Promise<PackAnswer> {
  const askedAt = new Date().toISOString();
  let pack: KeptPack['pack'];
  try {
    const answer = await fetch('/api/ramp/pack', {
      cache: 'no-store',
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (answer.status === 401) return 'signed-out';
    if (!answer.ok) return 'no-answer';
    const given: unknown = await answer.json();
    if (!isPack(given)) return 'no-answer';
    pack = given;
  } catch (error) {
    // fetch throws TypeError when the server could not be reached; the rest is a broken or missing answer.
    return error instanceof TypeError ? 'no-connection' : 'no-answer';
  }
  await keepPack({ pack, keptAt: askedAt });
  return 'fresh';
}

function isPack(given: unknown): given is KeptPack['pack'] {
  return (
    typeof given === 'object' &&
    given !== null &&
    'version' in given &&
    given.version === 1 &&
    'person' in given
  );
}

async function keepPack(kept: KeptPack): Promise<void> {
  await inOne(['packs'], 'readwrite', async (at) => {
    for (const { pack } of await at.all('packs')) {
      if (pack.person.id !== kept.pack.person.id) await at.drop('packs', pack.person.id);
    }
    await at.put('packs', kept);
  });
  tell({ topic: 'packs' });
  await carryOver(kept.pack);
  flush();
}

/** Takes the pack away, at sign-out. What is not sent stays. */
export async function dropPacks(): Promise<void> {
  await inOne(['packs'], 'readwrite', async (at) => {
    for (const { pack } of await at.all('packs')) await at.drop('packs', pack.person.id);
  });
  tell({ topic: 'packs' });
}

/** Who writes. Asks the server where the phone does not know; throws when nobody does: nothing can be kept for nobody. */
export async function requirePerson(): Promise<string> {
  const kept = (await packs.read()) ?? ((await refreshPack()) === 'fresh' ? await packs.read() : null);
  if (!kept) throw new Error('This phone does not know who is writing.');
  return kept.pack.person.id;
}
