'use client';

import { type Problem, type Result } from '@/lib/problems';
import { type Unsent } from '@/app/_ui/use-command';

/** What came of sending: the server's answer, or none. */
export type Sent<T> = Result<T> | { readonly ok: false; readonly problem: null; readonly unsent: Unsent };

const MESSAGE_PATIENCE_MS = 20_000;
const PHOTO_PATIENCE_MS = 90_000;

/** Sends a message of JSON to the sync API. Never throws. */
export const sendMessage = <T>(path: string, message: object): Promise<Sent<T>> =>
  post<T>(path, JSON.stringify({ version: 1, ...message }), MESSAGE_PATIENCE_MS, {
    'Content-Type': 'application/json',
  });

/** Sends a photo for a finding. Never throws. */
export const sendPhoto = (requestId: string, findingId: string, photo: Blob): Promise<Sent<unknown>> =>
  post('/api/sync/photos', photo, PHOTO_PATIENCE_MS, {
    'Content-Type': 'application/octet-stream',
    'X-Request-Id': requestId,
    'X-Finding-Id': findingId,
  });

/**
 * Sends a message that may have been tried before with other content. A number is written once: if the earlier try did
 * arrive, the server refuses the new content under it. Then the earlier content is asked for again, which gives the
 * earlier answer; `arrivedEarlier` says that the change since was not taken.
 */
export async function sendOnce<T>(
  path: string,
  message: object,
  triedBefore: object | null,
): Promise<{ readonly sent: Sent<T>; readonly arrivedEarlier: boolean }> {
  const sent = await sendMessage<T>(path, message);
  const changed = triedBefore !== null && JSON.stringify(triedBefore) !== JSON.stringify(message);
  if (sent.ok || sent.problem?.code !== 'conflict' || !changed) return { sent, arrivedEarlier: false };
  const earlier = await sendMessage<T>(path, triedBefore);
  return earlier.ok ? { sent: earlier, arrivedEarlier: true } : { sent, arrivedEarlier: false };
}

async function post<T>(
  path: string,
  body: string | Blob,
  patienceMs: number,
  headers: Record<string, string>,
): Promise<Sent<T>> {
  const hurry = new AbortController();
  const timer = setTimeout(() => hurry.abort(), patienceMs);
  try {
    const response = await fetch(path, {
      method: 'POST',
      body,
      headers,
      signal: hurry.signal,
      cache: 'no-store',
    });
    const answer: unknown = await response.json();
    return isResult<T>(answer) ? answer : NO_ANSWER;
  } catch (error) {
    // fetch throws TypeError when it could not reach the server at all; the rest is a broken or missing answer.
    return error instanceof TypeError && !hurry.signal.aborted ? NO_CONNECTION : NO_ANSWER;
  } finally {
    clearTimeout(timer);
  }
}

const NO_CONNECTION = { ok: false, problem: null, unsent: 'no-connection' } as const;
const NO_ANSWER = { ok: false, problem: null, unsent: 'no-answer' } as const;

function isResult<T>(answer: unknown): answer is Result<T> {
  if (typeof answer !== 'object' || answer === null || !('ok' in answer)) return false;
  if (answer.ok === true) return 'value' in answer;
  return 'problem' in answer && typeof (answer.problem as Problem | null)?.say === 'string';
}
