import { createHash, randomUUID } from 'node:crypto';
import { type z } from 'zod';
import { type CallOptions } from '../../access/service';
import { log } from '../../log';
import { PROBLEMS, Refusal, type Problem } from '../../problems';
import { actorOfKey, bearerKey } from '../key-actor';
import { openApiDocument } from './open-api';
import { HEADERS, noKey, noScope, problemAnswer } from './problem';
import { readBody } from './read-body';
import { isFile, type JsonRoute, type Route } from './route';
import { ROUTES } from './routes';

/** Where the document lies, which needs no key. */
export const DOCUMENT_PATH = '/openapi.json';

/**
 * Answers one request to the interface. `path` is what stands behind /api/v1. Only a key in the Authorization header
 * counts: cookies are not read, so that no page of another site can make a browser ask.
 */
export async function answerRest(
  request: Request,
  path: string,
  options: CallOptions = {},
): Promise<Response> {
  try {
    return await answered(request, path, options);
  } catch (error) {
    if (error instanceof Refusal) return problemAnswer(error.problem);
    const eventId = randomUUID();
    log.error('bug', error, { eventId, about: 'rest' });
    return problemAnswer({ code: 'bug', say: PROBLEMS.bug.say, eventId });
  }
}

async function answered(request: Request, path: string, options: CallOptions): Promise<Response> {
  const method = request.method === 'HEAD' ? 'GET' : request.method;
  if (path === DOCUMENT_PATH && method === 'GET') return jsonAnswer(request, openApiDocument(), 200);
  const here = ROUTES.flatMap((route) => {
    const parts = partsOf(route.path, path);
    return parts ? [{ route, parts }] : [];
  });
  const found = here.find(({ route }) => route.method === method);
  if (!found) return nothingHere(here.map(({ route }) => route));
  const { route, parts } = found;

  const key = bearerKey(request.headers.get('authorization'));
  const actor = key === null ? null : await actorOfKey(key, options.now ?? new Date());
  if (!actor) return noKey(key !== null);
  if (!actor.key.scopes.includes(route.scope)) return noScope(route.scope);

  const input = parsed(route.input, { ...queryOf(request), ...parts });
  if (isFile(route))
    return route.file(actor.ref, input as never, options, (problem) => problemAnswer(problem));
  const asked = route.body ? { ...(await readBody(request)), ...input } : input;
  const result = await route.run(actor.ref, asked as never, options);
  if (!result.ok) return problemAnswer(withHeaderName(result.problem));
  return jsonAnswer(request, shaped(route, result.value), route.status);
}

/** What goes out is what is documented, and nothing else. */
const shaped = (route: JsonRoute, value: unknown): object => route.output.parse(value);

function parsed<S extends z.ZodType>(schema: S, raw: unknown): z.output<S> {
  const result = schema.safeParse(raw);
  if (result.success) return result.data;
  const fields: Record<string, string[]> = {};
  for (const { path, message } of result.error.issues) (fields[path.join('.')] ??= []).push(message);
  throw new Refusal('invalid', { say: 'Some of what was asked cannot be used.', fields });
}

const queryOf = (request: Request): Record<string, string> =>
  Object.fromEntries(new URL(request.url).searchParams);

/** The parts in braces, or null where the path is another one. */
function partsOf(template: string, path: string): Record<string, string> | null {
  const wanted = template.split('/');
  const given = path.split('/');
  if (wanted.length !== given.length) return null;
  const parts: Record<string, string> = {};
  for (const [index, part] of wanted.entries()) {
    const text = given[index] ?? '';
    const name = /^\{(\w+)\}$/.exec(part)?.[1];
    if (name) parts[name] = text;
    else if (part !== text) return null;
  }
  return parts;
}

function nothingHere(others: readonly Route[]): Response {
  if (others.length === 0) {
    const say = 'There is nothing at this address. /api/v1/openapi.json lists what there is.';
    return problemAnswer({ code: 'not_found', say });
  }
  const allow = [...new Set(others.map(({ method }) => method))].join(', ');
  return problemAnswer(
    { code: 'invalid', say: `This address takes ${allow} only.` },
    { status: 405, headers: { Allow: allow } },
  );
}

/** Callers know the number of their request as a header. */
function withHeaderName(problem: Problem): Problem {
  const { requestId, ...fields } = problem.fields ?? {};
  return requestId ? { ...problem, fields: { ...fields, 'Idempotency-Key': requestId } } : problem;
}

/**
 * JSON with a tag of its content. The moment of judging is left out of the tag: what is otherwise the same has not
 * changed, and the Date of the answer tells when that was found.
 */
function jsonAnswer(request: Request, value: object, status: number): Response {
  const { asOf: _, seq: __, ...content } = value as Record<string, unknown>;
  const sum = createHash('sha256').update(JSON.stringify(content)).digest('base64url').slice(0, 27);
  const tag = `W/"${sum}"`;
  const headers = { ...HEADERS, ETag: tag };
  if (status === 200 && sameTag(request.headers.get('if-none-match'), tag)) {
    return new Response(null, { status: 304, headers });
  }
  return Response.json(value, { status, headers });
}

const sameTag = (header: string | null, tag: string): boolean =>
  header !== null && (header.trim() === '*' || header.split(',').some((one) => one.trim() === tag));
