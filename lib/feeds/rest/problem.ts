import { STATUS_CODES } from 'node:http';
import { PROBLEMS, type Problem } from '../../problems';

/** What is not to be kept in between, and not to be taken for something else. */
export const HEADERS = {
  'Cache-Control': 'private, no-cache',
  Vary: 'Authorization',
  'X-Content-Type-Options': 'nosniff',
};

interface Told {
  readonly status?: number;
  readonly headers?: Readonly<Record<string, string>>;
}

/** A refusal as problem details (RFC 9457), with the code and the fields of ours beside its own members. */
export function problemAnswer(problem: Problem, told: Told = {}): Response {
  const status = told.status ?? PROBLEMS[problem.code].status;
  const { code, say: detail, fields, lines, eventId } = problem;
  const body = {
    // Section 4.2.1: the status alone says what kind of problem it is; `code` says it finer.
    type: 'about:blank',
    title: STATUS_CODES[status] ?? 'Error',
    status,
    detail,
    code,
    fields,
    lines: lines?.map(({ cite, because }) => ({ cite, because })),
    eventId,
  };
  return new Response(JSON.stringify(body), {
    status,
    headers: {
      ...HEADERS,
      ...(status === 503 ? { 'Retry-After': '2' } : {}),
      ...told.headers,
      'Content-Type': 'application/problem+json',
    },
  });
}

const REALM = 'Bearer realm="Wheelchock"';

/** No key, or one that opens nothing (RFC 6750, section 3). */
export const noKey = (given: boolean): Response =>
  problemAnswer(
    {
      code: 'not_signed_in',
      say: given
        ? 'This key is not known, was ended, is over, or its person has left.'
        : 'A key is needed: Authorization: Bearer wck_…',
    },
    { headers: { 'WWW-Authenticate': given ? `${REALM}, error="invalid_token"` : REALM } },
  );

/** A key that does not open this (RFC 6750, section 3.1). */
export const noScope = (scope: string): Response =>
  problemAnswer(
    { code: 'not_allowed', say: `This key does not have the scope ${scope}.` },
    { headers: { 'WWW-Authenticate': `${REALM}, error="insufficient_scope", scope="${scope}"` } },
  );
