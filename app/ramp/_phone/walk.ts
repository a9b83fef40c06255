'use client';

import { newRequestId } from '@/app/_ui/request-id';
import { keep, readKept, walkKey } from './kept';
import { sendMessage, sendOnce, type Sent } from './send';

/** A walkaround under way, as this phone keeps it. A station without an answer has not been looked at. */
export interface Walk {
  readonly id: string;
  readonly aircraftId: string;
  readonly startedAt: string;
  /** The server knows that it has begun. */
  readonly isStarted: boolean;
  readonly answers: Readonly<Record<string, 'good' | 'finding'>>;
  readonly finishId: string;
  /** What was last sent to finish it, in case that did arrive. */
  readonly finishTried: object | null;
}

export interface FinishedWalk {
  readonly good: number;
  readonly withFinding: number;
  readonly notLookedAt: number;
}

/** Begins a walkaround on this phone. It has its number before anybody is asked, so starting twice begins once. */
export function beginWalk(personId: string, aircraftId: string, now: string): Walk {
  const walk: Walk = {
    id: newRequestId(),
    aircraftId,
    startedAt: now,
    isStarted: false,
    answers: {},
    finishId: newRequestId(),
    finishTried: null,
  };
  keep(walkKey(personId, aircraftId), walk);
  return walk;
}

/** Changes the kept walkaround; nothing when another tab has ended it meanwhile. */
export function changeWalk(personId: string, walk: Walk, change: Partial<Walk>): Walk {
  const key = walkKey(personId, walk.aircraftId);
  const kept = readKept<Walk>(key);
  if (kept?.id !== walk.id) return walk;
  const changed = { ...kept, ...change };
  keep(key, changed);
  return changed;
}

/** The answer at one station; null takes it back. */
export function answerStation(
  personId: string,
  walk: Walk,
  station: string,
  answer: 'good' | 'finding' | null,
): void {
  const kept = readKept<Walk>(walkKey(personId, walk.aircraftId)) ?? walk;
  const others = Object.entries(kept.answers).filter(([key]) => key !== station);
  changeWalk(personId, walk, {
    answers: Object.fromEntries(answer === null ? others : [...others, [station, answer]]),
  });
}

/** Tells the server that the walkaround has begun, unless it knows. */
export async function sendStart(personId: string, walk: Walk): Promise<Sent<unknown>> {
  if (walk.isStarted) return { ok: true, value: null };
  const sent = await sendMessage('/api/sync/walkarounds', {
    requestId: walk.id,
    aircraftId: walk.aircraftId,
    startedAt: walk.startedAt,
  });
  if (sent.ok) changeWalk(personId, walk, { isStarted: true });
  return sent;
}

/** Sends all answers. What this phone kept is taken away only when the server has confirmed. */
export async function sendFinish(
  personId: string,
  walk: Walk,
  stations: readonly string[],
): Promise<{ readonly sent: Sent<FinishedWalk>; readonly arrivedEarlier: boolean }> {
  const started = await sendStart(personId, walk);
  if (!started.ok) return { sent: started, arrivedEarlier: false };
  const message = {
    requestId: walk.finishId,
    walkaroundId: walk.id,
    stations: Object.fromEntries(
      stations.map((station) => [station, walk.answers[station] ?? 'not-looked-at']),
    ),
  };
  changeWalk(personId, walk, { finishTried: message });
  const outcome = await sendOnce<FinishedWalk>('/api/sync/walkarounds/finish', message, walk.finishTried);
  if (outcome.sent.ok) keep(walkKey(personId, walk.aircraftId), null);
  return outcome;
}
