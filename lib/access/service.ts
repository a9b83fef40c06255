import { z } from 'zod';
import type { Tx } from '../db/client';
import { readInOperator, writeInOperator } from '../db/scope';
import { fieldRefusal, Refusal, type Problem, type Result } from '../problems';
import { appendAudit } from '../records/audit';
import { contentHash, toPlain } from '../records/canonical';
import { afterWrite } from './after-write';
import { loadActor, type Actor, type ActorRef } from './actor';
import { observed } from './observed';
import { mayUse, type Verb } from './policy';
import { confirmPassword } from './passwords';
import { demandSecondFactor } from './second-factor/demand';
import { requestId } from './request-id';
import { said } from '../words/said';
import { unkeepable } from './keepable';
import { noteSeen } from './sessions';

/** What a verb works with: its transaction, who asks, and what time it is. */
export interface Context {
  readonly tx: Tx;
  readonly actor: Actor;
  readonly operatorId: string;
  readonly now: Date;
  readonly requestId: string;
}

interface CommandOutcome<T> {
  readonly value: T;
  readonly audit: {
    readonly subjectKind: string;
    readonly subjectId: string;
    readonly detail: Record<string, unknown>;
  };
}

interface CommandDefinition<S extends z.ZodType, T> {
  readonly verb: Verb;
  /** Must parse to an object with `requestId`; a signing verb also has `password`. */
  readonly input: S;
  /** The password is asked again and checked before anything else: the act is a signature. */
  readonly signing?: boolean;
  /**
   * The password is asked again as for a signature, but nothing is signed: acts on accounts and their keys. A verb that does
   * several things may say for which; its schema then refuses those without a password.
   */
  readonly asksPassword?: boolean | ((input: z.output<S>) => boolean);
  /**
   * What of the input makes a request sent again the same one; all of it unless said. Only for what the server itself
   * worked out from the rest, which a newer server may work out another way.
   */
  readonly counts?: (input: z.output<S>) => unknown;
  /** A refusal leaves an audit row too (sign-offs and releases that were not allowed). */
  readonly auditRefusals?: boolean;
  run(context: Context, input: z.output<S>): Promise<CommandOutcome<T>>;
}

interface QueryDefinition<S extends z.ZodType, T> {
  readonly verb: Verb;
  readonly input: S;
  run(context: Omit<Context, 'requestId'>, input: z.output<S>): Promise<T | AfterReading<T>>;
}

/**
 * What a query still works out from the rows it has read, after its transaction has ended. The rules take seconds for a large
 * fleet on a busy machine: a transaction held open that long keeps a connection from everybody else, and times out.
 */
export class AfterReading<T> {
  constructor(readonly workOut: () => T) {}
}

/**
 * `now` is given by tests and by the demo's invented history; the running server leaves it out. Then it is the time of the
 * database's clock, which all servers share, when the transaction's turn has come.
 */
export interface CallOptions {
  readonly now?: Date;
}

export type Command<S extends z.ZodType, T> = (
  ref: ActorRef | null,
  raw: z.input<S> | unknown,
  options?: CallOptions,
) => Promise<Result<T>>;

const withRequest = z.looseObject({ requestId });
const withPassword = z.looseObject({ password: z.string() });

/**
 * The one door for writes. Parses, checks the password where the act is a signature, opens the operator's
 * transaction, reads the actor, asks the policy, answers a repeated request with the earlier answer, runs the verb,
 * and links an audit row, all in one transaction.
 */
export function command<S extends z.ZodType, T>(definition: CommandDefinition<S, T>): Command<S, T> {
  return (ref, raw, options = {}) =>
    observed('command', definition.verb, ref, raw, async () => {
      const input = parse(definition.input, raw);
      const request = withRequest.parse(input).requestId;
      const signedIn = required(ref);
      const counted = definition.counts?.(input) ?? withoutPassword(input);
      const hash = contentHash({ verb: definition.verb, input: counted });
      // A signature is a person's; a program holds a key, and never signs.
      const asks = definition.asksPassword;
      const asksPassword = definition.signing || (typeof asks === 'function' ? asks(input) : asks);
      if (asksPassword && signedIn.keyId !== undefined) throw new Refusal('not_allowed');
      if (asksPassword) {
        const wrong = definition.signing ? {} : { say: NOTHING_CHANGED };
        const triedAt = options.now ?? new Date();
        await confirmPassword(signedIn, withPassword.parse(input).password, triedAt, wrong);
      }
      try {
        return await writeInOperator(signedIn.operatorId, async (tx, at) => {
          const now = options.now ?? at;
          const actor = await loadActor(tx, signedIn, now);
          if (!mayUse(actor.roles, definition.verb)) throw new Refusal('not_allowed');
          if (definition.signing) await demandSecondFactor(tx, actor);
          const earlier = await tx.request.findUnique({ where: { id: request } });
          if (earlier) {
            const same =
              earlier.personId === actor.personId &&
              earlier.verb === definition.verb &&
              earlier.inputHash === hash;
            if (!same) throw new Refusal('conflict');
            return (earlier.result as { value: T }).value;
          }
          const context = { tx, actor, operatorId: actor.operatorId, now, requestId: request };
          const { value, audit } = await definition.run(context, input);
          const kept = toPlain({ value });
          await tx.request.create({
            data: {
              id: request,
              operatorId: actor.operatorId,
              personId: actor.personId,
              verb: definition.verb,
              inputHash: hash,
              result: kept as object,
              at: now,
            },
          });
          const { verb } = definition;
          // What another program wrote for a person says so, by which key.
          const by = signedIn.keyId === undefined ? {} : { byKey: signedIn.keyId };
          const detail = { ...audit.detail, ...by };
          const row = { at: now, personId: actor.personId, verb, requestId: request, ...audit, detail };
          const seq = await appendAudit(tx, actor.operatorId, row);
          await afterWrite({ ...context, verb, audit, seq });
          return kept.value;
        });
      } catch (error) {
        if (definition.auditRefusals && error instanceof Refusal && AUDITED.has(error.problem.code)) {
          const { problem } = error;
          await auditRefusal(
            signedIn,
            definition.verb,
            request,
            options.now,
            problem,
            withoutPassword(input),
          );
        }
        throw error;
      }
    });
}

/** The door for reads: same actor, same policy, one consistent view, nothing written. */
export function query<S extends z.ZodType, T>(definition: QueryDefinition<S, T>): Command<S, T> {
  return (ref, raw, options = {}) =>
    observed('query', definition.verb, ref, raw, async () => {
      const input = parse(definition.input, raw);
      const signedIn = required(ref);
      const { value, session, now } = await readInOperator(signedIn.operatorId, async (tx, at) => {
        const now = options.now ?? at;
        const actor = await loadActor(tx, signedIn, now);
        if (!mayUse(actor.roles, definition.verb)) throw new Refusal('not_allowed');
        const context = { tx, actor, operatorId: actor.operatorId, now };
        return { value: await definition.run(context, input), session: actor.session, now };
      });
      if (session) await noteSeen(signedIn.operatorId, session, now);
      return value instanceof AfterReading ? value.workOut() : value;
    });
}

const AUDITED = new Set<Problem['code']>(['signature_refused', 'no_go', 'not_allowed', 'superseded']);

async function auditRefusal(
  ref: ActorRef,
  verb: Verb,
  request: string,
  now: Date | undefined,
  problem: Problem,
  input: unknown,
): Promise<void> {
  await writeInOperator(ref.operatorId, (tx, at) =>
    appendAudit(tx, ref.operatorId, {
      at: now ?? at,
      personId: ref.personId,
      verb: `${verb}:refused`,
      subjectKind: 'request',
      subjectId: request,
      requestId: request,
      detail: { code: problem.code, lines: problem.lines ?? [], inputHash: contentHash(input) },
    }),
  );
}

function required(ref: ActorRef | null): ActorRef {
  if (!ref) throw new Refusal('not_signed_in');
  return ref;
}

/** What came, as the schema gives it; refuses with every field that is wrong. */
export function parse<S extends z.ZodType>(schema: S, raw: unknown): z.output<S> {
  const field = unkeepable(raw);
  if (field !== null) throw fieldRefusal(field, NOT_TO_BE_KEPT);
  const parsed = schema.safeParse(raw);
  if (parsed.success) return parsed.data;
  const fields: Record<string, string[]> = {};
  for (const issue of parsed.error.issues) (fields[issue.path.join('.')] ??= []).push(issue.message);
  throw new Refusal('invalid', { fields });
}

const NOT_TO_BE_KEPT = said('There is a broken character in it that cannot be kept. Type it again.');

const NOTHING_CHANGED = said('The password is not right. Nothing was changed.');

const SECRETS = new Set(['password', 'newPassword']);

/** Passwords never reach a hash, a log or the audit. */
function withoutPassword(input: unknown): unknown {
  if (typeof input !== 'object' || input === null) return input;
  return Object.fromEntries(Object.entries(input).filter(([key]) => !SECRETS.has(key)));
}
