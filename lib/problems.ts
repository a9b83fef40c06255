import { said } from './words/said';

/**
 * The closed list of refusals. A verdict is never an error (no go is a result); a bug is anything not in this list.
 * One table gives each refusal its HTTP status and its words; screens add the next step.
 */
export const PROBLEMS = {
  invalid: {
    status: 422,
    say: said('Some of what was entered cannot be used. See the fields that are marked.'),
  },
  not_signed_in: {
    status: 401,
    say: said('You are not signed in, or your session has ended. Sign in and send again.'),
  },
  other_person: {
    status: 409,
    say: said(
      'This was written by somebody else than is signed in. It waits on this phone until they sign in.',
    ),
  },
  not_allowed: { status: 403, say: said('Your role here does not include this.') },
  signature_refused: { status: 403, say: said('Your certificates do not allow this signature.') },
  wrong_password: { status: 403, say: said('The password is not right. Nothing was signed.') },
  not_found: { status: 404, say: said('There is no such record here.') },
  conflict: {
    status: 409,
    say: said('This was changed by somebody else, or was sent before with other content.'),
  },
  no_go: { status: 409, say: said('The answer is no go. The flight was not released.') },
  superseded: { status: 409, say: said('The facts changed since you looked. Look again before you decide.') },
  link_closed: {
    status: 410,
    say: said('This address opens nothing: it is not complete, was used before, or is too old.'),
  },
  locked: { status: 423, say: said('Too many wrong passwords. Wait a few minutes and try again.') },
  too_large: { status: 413, say: said('The file is too large.') },
  try_again: {
    status: 503,
    say: said('The server could not finish this just now. Try again: what is sent twice counts once.'),
  },
  bug: { status: 500, say: said('Something went wrong on our side. Nothing was changed.') },
} as const satisfies Record<string, { status: number; say: string }>;

export type ProblemCode = keyof typeof PROBLEMS;

/** A line of a rule verdict as it crosses to a screen. */
export interface ProblemLine {
  readonly cite: string;
  readonly because: string;
}

/** What the caller gets instead of a value. Plain data: it crosses the wire. */
export interface Problem {
  readonly code: ProblemCode;
  readonly say: string;
  /** Field path -> messages, all at once. */
  readonly fields?: Readonly<Record<string, readonly string[]>>;
  /** Paragraphs behind a refusal by law. */
  readonly lines?: readonly ProblemLine[];
  /** Path of the screen where the asking person can settle what stands in the way. */
  readonly settleAt?: string;
  /** For `bug`: what to quote to whoever runs the server. */
  readonly eventId?: string;
}

export type Result<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** Thrown inside a transaction, because Prisma rolls back on a throw; the door turns it into a Problem. */
export class Refusal extends Error {
  readonly problem: Problem;
  constructor(code: ProblemCode, details: Partial<Omit<Problem, 'code'>> = {}) {
    super(details.say ?? PROBLEMS[code].say);
    this.name = 'Refusal';
    this.problem = { code, say: PROBLEMS[code].say, ...details };
  }
}

/** A refusal of one field, in the form's own path. */
export const fieldRefusal = (path: string, message: string): Refusal =>
  new Refusal('invalid', { fields: { [path]: [message] } });
