import { signedInRef } from '@/app/_session/actor-ref';
import { type ActorRef } from '@/lib/access/actor';
import { PROBLEMS, type Problem, type ProblemCode, type Result } from '@/lib/problems';

/** Versions of the phone's messages this server reads. A version that was ever sent stays in this list. */
const VERSIONS_READ: readonly unknown[] = [1];

/** A message of JSON is words and numbers; more than this is no message of ours. */
const JSON_MAX_BYTES = 64_000;

/**
 * Takes a message of JSON from the phone's queue to a service and answers with its result. Answers 403 to another site,
 * 415 and 400 to what is no JSON, 413 to what is too long, 422 to a version this server does not read; the phone keeps
 * what was not taken.
 */
export async function syncJson(
  request: Request,
  run: (ref: ActorRef | null, message: Record<string, unknown>) => Promise<Result<unknown>>,
): Promise<Response> {
  if (!isFromHere(request)) return refused('not_allowed', FROM_ELSEWHERE);
  if (!request.headers.get('content-type')?.startsWith('application/json')) {
    return refused('invalid', 'This is not a message of JSON.', 415);
  }
  const body = await readUpTo(request, JSON_MAX_BYTES);
  if (!body) return refused('too_large', 'The message is too long.');
  const message = asObject(body);
  if (!message) return refused('invalid', 'This is not a message of JSON.', 400);
  if (!VERSIONS_READ.includes(message.version)) {
    return refused('invalid', 'This page and the server are of different versions. Load the page again.');
  }
  return answered(await run(await signedInRef(), message));
}

/** Takes the raw bytes of a file likewise. Somebody not signed in is turned away before a byte is read. */
export async function syncBytes(
  request: Request,
  most: number,
  run: (ref: ActorRef, bytes: Uint8Array) => Promise<Result<unknown>>,
): Promise<Response> {
  if (!isFromHere(request)) return refused('not_allowed', FROM_ELSEWHERE);
  const ref = await signedInRef();
  if (!ref) return refused('not_signed_in');
  const bytes = await readUpTo(request, most);
  if (!bytes) return refused('too_large');
  return answered(await run(ref, bytes));
}

const FROM_ELSEWHERE = 'This request comes from another site.';

/**
 * Whether the page that asks is one of ours: a browser states the origin of every POST, and no page can alter it. Behind
 * a proxy the address people use is in X-Forwarded-Host, which a page of another site cannot set either.
 */
function isFromHere(request: Request): boolean {
  const origin = request.headers.get('origin');
  const host = request.headers.get('x-forwarded-host') ?? request.headers.get('host');
  return origin !== null && host !== null && URL.canParse(origin) && new URL(origin).host === host;
}

/** The whole body, or null as soon as it is longer than `most` bytes, whatever its header says. */
async function readUpTo(request: Request, most: number): Promise<Uint8Array | null> {
  if (Number(request.headers.get('content-length') ?? 0) > most) return null;
  const reader = request.body?.getReader();
  const parts: Uint8Array[] = [];
  let length = 0;
  for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
    length += read.value.byteLength;
    if (length > most) {
      await reader?.cancel();
      return null;
    }
    parts.push(read.value);
  }
  return Buffer.concat(parts);
}

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
