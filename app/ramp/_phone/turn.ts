import { inOne } from './database';

const NAME = 'wheelchock-sending';
/** Longer than the longest wait for one answer. A tab that was frozen in the middle loses its turn after that. */
const TURN_MS = 120_000;
const LOOK_AGAIN_MS = 1_000;

/**
 * Does `work` while no other tab and no worker does the like. Whoever waits longer than two minutes takes the turn from a
 * tab that was put to sleep with it: what both send then is still written once, by its number.
 */
export async function inTurn<T>(work: () => Promise<T>): Promise<T> {
  // Absent without https; then the turn is a note in the database.
  const locks = navigator.locks as LockManager | undefined;
  if (!locks) return inNotedTurn(work);
  const given = { yes: false };
  const patience = new AbortController();
  const timer = setTimeout(() => patience.abort(), TURN_MS);
  try {
    return await locks.request(NAME, { signal: patience.signal }, () => {
      given.yes = true;
      clearTimeout(timer);
      return work();
    });
  } catch (error) {
    if (given.yes) throw error;
    return await locks.request(NAME, { steal: true }, work);
  } finally {
    clearTimeout(timer);
  }
}

async function inNotedTurn<T>(work: () => Promise<T>): Promise<T> {
  const holder = String(Math.random());
  while (!(await noteTurn(holder))) await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS));
  const renewing = setInterval(() => void noteTurn(holder), TURN_MS / 4);
  try {
    return await work();
  } finally {
    clearInterval(renewing);
    await inOne(['turns'], 'readwrite', async (at) => {
      if ((await at.get('turns', 'sending'))?.holder === holder) await at.drop('turns', 'sending');
    });
  }
}

/** Whether the turn is this holder's now. */
function noteTurn(holder: string): Promise<boolean> {
  return inOne(['turns'], 'readwrite', async (at) => {
    const now = new Date();
    const noted = await at.get('turns', 'sending');
    if (noted && noted.holder !== holder && noted.until > now.toISOString()) return false;
    await at.put('turns', {
      name: 'sending',
      holder,
      until: new Date(now.getTime() + TURN_MS).toISOString(),
    });
    return true;
  });
}
