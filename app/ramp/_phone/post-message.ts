import { type Problem, type Result } from '@/lib/problems';
import { type Outgoing, type SyncState } from './shapes';

/** What came of sending one message. */
export type Posted =
  | { readonly as: 'sent'; readonly answer: unknown }
  | { readonly as: 'refused'; readonly problem: Problem }
  | { readonly as: 'stuck'; readonly why: NonNullable<SyncState['stuck']>; readonly problem: Problem | null };

export const MESSAGE_PATIENCE_MS = 20_000;
export const PHOTO_PATIENCE_MS = 90_000;

/** Sends one message, with its picture if it has one, and reads what became of it. Never throws. */
export async function postMessage(message: Outgoing, picture: Blob | null): Promise<Posted> {
  const about = JSON.stringify({ ...message.message, version: 2, requestId: message.id });
  const hurry = new AbortController();
  const timer = setTimeout(() => hurry.abort(), picture ? PHOTO_PATIENCE_MS : MESSAGE_PATIENCE_MS);
  try {
    const response = await fetch(new URL(`/api/sync/${message.path}`, globalThis.location.href), {
      method: 'POST',
      body: picture ? formOf(about, picture) : about,
      headers: {
        'X-Wheelchock-Person': message.personId,
        // The browser itself names the border between the parts of a form.
        ...(picture ? {} : { 'Content-Type': 'application/json' }),
      },
      cache: 'no-store',
      signal: hurry.signal,
    });
    return readAnswer(await response.json());
  } catch (error) {
    // fetch throws TypeError when it could not reach the server at all; the rest is a broken or missing answer.
    const isUnreached = error instanceof TypeError && !hurry.signal.aborted;
    return { as: 'stuck', why: isUnreached ? 'no-connection' : 'no-answer', problem: null };
  } finally {
    clearTimeout(timer);
  }
}

function formOf(about: string, picture: Blob): FormData {
  const form = new FormData();
  form.append('about', about);
  form.append('photo', picture, 'photo');
  return form;
}

function readAnswer(answer: unknown): Posted {
  // A page of some network's log-in, or of a proxy, is no answer of ours.
  if (!isResult(answer)) return { as: 'stuck', why: 'no-answer', problem: null };
  if (answer.ok) return { as: 'sent', answer: answer.value };
  const { problem } = answer;
  if (problem.code === 'not_signed_in') return { as: 'stuck', why: 'signed-out', problem };
  if (problem.code === 'other_person') return { as: 'stuck', why: 'other-person', problem };
  if (problem.code === 'try_again' || problem.code === 'bug')
    return { as: 'stuck', why: 'no-answer', problem };
  return { as: 'refused', problem };
}

function isResult(answer: unknown): answer is Result<unknown> {
  if (typeof answer !== 'object' || answer === null || !('ok' in answer)) return false;
  if (answer.ok === true) return 'value' in answer;
  return 'problem' in answer && typeof (answer.problem as Problem | null)?.say === 'string';
}
