import { signedInRef } from '@/app/_session/actor-ref';
import { readUpTo } from '../_body';
import { type ActorRef } from '@/lib/access/actor';
import { PROBLEMS, type Problem, type ProblemCode, type Result } from '@/lib/problems';

/** Versions of the phone's messages this server reads. A version that was ever sent stays in this list. */
const VERSIONS_READ: readonly unknown[] = [1, 2];

/** A message of JSON is words and numbers; more than this is no message of ours. */
const JSON_MAX_BYTES = 64_000;

/** What goes beside a photo is a few numbers and the points of its marks; a form's own lines come on top. */
const ABOUT_MAX_BYTES = 64_000;

/** Whose message it is, as the phone kept it: a queue never sends one person's words under another's name. */
const PERSON_HEADER = 'x-wheelchock-person';

/**
 * Takes a message of JSON from the phone's queue to a service and answers with its result. Answers 403 to another site,
 * 415 and 400 to what is no JSON, 413 to what is too long, 422 to a version this server does not read, 409
 * `other_person` when somebody else than the writer is signed in; the phone keeps what was not taken. `most` is in bytes.
 */
export async function syncJson(
  request: Request,
  run: (ref: ActorRef | null, message: Record<string, unknown>) => Promise<Result<unknown>>,
  most = JSON_MAX_BYTES,
): Promise<Response> {
  if (!isFromHere(request)) return refused('not_allowed', FROM_ELSEWHERE);
  if (!request.headers.get('content-type')?.startsWith('application/json')) {
    return refused('invalid', 'This is not a message of JSON.', 415);
  }
  const ref = await signedInRef();
  if (isOfSomebodyElse(request, ref)) return refused('other_person');
  const body = await readUpTo(request, most);
  if (body === 'cut-off') return refused('try_again', CUT_OFF, 400);
  if (body === 'too-long') return refused('too_large', 'The message is too long.');
  const message = asObject(body);
  if (!message) return refused('invalid', 'This is not a message of JSON.', 400);
  if (!isVersionRead(message)) return refused('invalid', OTHER_VERSION);
  return answered(await run(ref, message));
}

/**
 * Takes a form with a file in it: `about` is a message of JSON, `photo` the file, of at most `most` bytes. The whole body
 * is read, within that bound, before any of it is looked at: a form that was cut off writes nothing. Somebody not signed
 * in is turned away before a byte is read.
 */
export async function syncForm(
  request: Request,
  most: number,
  run: (ref: ActorRef, about: Record<string, unknown>, photo: Uint8Array) => Promise<Result<unknown>>,
): Promise<Response> {
  if (!isFromHere(request)) return refused('not_allowed', FROM_ELSEWHERE);
  const type = request.headers.get('content-type') ?? '';
  if (!type.startsWith('multipart/form-data')) return refused('invalid', NO_FORM, 415);
  const ref = await signedInRef();
  if (!ref) return refused('not_signed_in');
  if (isOfSomebodyElse(request, ref)) return refused('other_person');
  const body = await readUpTo(request, most + ABOUT_MAX_BYTES);
  if (body === 'cut-off') return refused('try_again', CUT_OFF, 400);
  if (body === 'too-long') return refused('too_large');
  const parts = await formParts(body, type);
  if (!parts) return refused('invalid', NO_FORM, 400);
  if (parts.photo.byteLength > most) return refused('too_large');
  if (!isVersionRead(parts.about)) return refused('invalid', OTHER_VERSION);
  return answered(await run(ref, parts.about, parts.photo));
}

/** Takes the raw bytes of a file, as version 1 sent them. Somebody not signed in is turned away before a byte is read. */
export async function syncBytes(
  request: Request,
  most: number,
  run: (ref: ActorRef, bytes: Uint8Array) => Promise<Result<unknown>>,
): Promise<Response> {
  if (!isFromHere(request)) return refused('not_allowed', FROM_ELSEWHERE);
  const ref = await signedInRef();
  if (!ref) return refused('not_signed_in');
  const bytes = await readUpTo(request, most);
  if (bytes === 'cut-off') return refused('try_again', CUT_OFF, 400);
  if (bytes === 'too-long') return refused('too_large');
  return answered(await run(ref, bytes));
}

const FROM_ELSEWHERE = 'This request comes from another site.';
const OTHER_VERSION = 'This page and the server are of different versions. Load the page again.';
const CUT_OFF = 'The message did not arrive whole. Nothing was changed. Try again.';
const NO_FORM = 'This is not a form with a message and a photo.';

const isVersionRead = (message: Record<string, unknown>): boolean => VERSIONS_READ.includes(message.version);

/** Whether the phone says that the message is somebody else's than the session's. Without a session nobody is. */
function isOfSomebodyElse(request: Request, ref: ActorRef | null): boolean {
  const writer = request.headers.get(PERSON_HEADER);
  return writer !== null && ref !== null && writer !== ref.personId;
}

/**
 * Whether the page that asks is one of ours: a browser states the origin of every POST, and no page can alter it. Behind
 * a proxy the address people use is in X-Forwarded-Host, which a page of another site cannot set either.
 */
function isFromHere(request: Request): boolean {
  const origin = request.headers.get('origin');
  const host = request.headers.get('x-forwarded-host') ?? request.headers.get('host');
  return origin !== null && host !== null && URL.canParse(origin) && new URL(origin).host === host;
}

/** The two parts of a form, or null when it is not such a form. */
async function formParts(
  body: Uint8Array<ArrayBuffer>,
  type: string,
): Promise<{ about: Record<string, unknown>; photo: Uint8Array } | null> {
  try {
    const form = await new Response(body, { headers: { 'Content-Type': type } }).formData();
    const about = form.get('about');
    const photo = form.get('photo');
    if (about === null || photo === null || typeof photo === 'string') return null;
    const words = typeof about === 'string' ? new TextEncoder().encode(about) : await bytesOf(about);
    const message = asObject(words);
    return message && { about: message, photo: await bytesOf(photo) };
  } catch {
    return null;
  }
}

const bytesOf = async (file: Blob): Promise<Uint8Array> => new Uint8Array(await file.arrayBuffer());

function asObject(bytes: Uint8Array): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}

function answered(result: Result<unknown>): Response {
  const status = result.ok ? 200 : PROBLEMS[result.problem.code].status;
  return Response.json(result, { status, headers: { 'Cache-Control': 'no-store' } });
}

function refused(code: ProblemCode, say: string = PROBLEMS[code].say, status?: number): Response {
  const problem: Problem = { code, say };
  return Response.json(
    { ok: false, problem },
    { status: status ?? PROBLEMS[code].status, headers: { 'Cache-Control': 'no-store' } },
  );
}
