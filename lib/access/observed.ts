import { randomUUID } from 'node:crypto';
import { brokenUnique, isTransient, isUnreachable } from '../db/errors';
import { log, type LogFields } from '../log';
import { PROBLEMS, Refusal, type Problem, type Result } from '../problems';
import { countAct, inSpan } from '../telemetry/spans';
import type { ActorRef } from './actor';
import type { Verb } from './policy';

/** Acts of the few doors that open to somebody who is not signed in: they have no verb, because no role is asked. */
export type OpenDoor = 'operator.set-up' | 'set-up-token.read' | 'person-link.read' | 'person-link.use';

/**
 * Does what a command or query does, and gives its value or the problem it ended with. What anybody is told of it: one line
 * in the log with verb, operator, outcome and time (a query's only at the level debug), a span, and a count.
 */
export function observed<T>(
  kind: 'command' | 'query',
  verb: Verb | OpenDoor,
  ref: ActorRef | null,
  raw: unknown,
  work: () => Promise<T>,
): Promise<Result<T>> {
  const began = performance.now();
  const who = { verb, ...(ref ? { operatorId: ref.operatorId } : {}), ...requestOf(raw) };
  const about = { 'wheelchock.verb': verb, 'wheelchock.operator_id': ref?.operatorId };
  return inSpan(`${kind} ${verb}`, about, async (tell) => {
    const result = await guarded(work, who);
    const outcome = result.ok ? 'ok' : result.problem.code;
    const ms = Math.round(performance.now() - began);
    tell({ 'wheelchock.outcome': outcome });
    countAct(kind, verb, outcome, ms);
    const line = { ...who, outcome, ms };
    if (!result.ok && result.problem.eventId) log.info(kind, { ...line, eventId: result.problem.eventId });
    else if (kind === 'command') log.info(kind, line);
    else log.debug(kind, line);
    return result;
  });
}

/** The number of the request, when what came has one; the log keeps it only when it has a number's form. */
function requestOf(raw: unknown): Pick<LogFields, 'requestId'> {
  const given = (raw as { requestId?: unknown } | null | undefined)?.requestId;
  return typeof given === 'string' ? { requestId: given } : {};
}

async function guarded<T>(work: () => Promise<T>, who: LogFields): Promise<Result<T>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    return { ok: false, problem: toProblem(error, who) };
  }
}

function toProblem(error: unknown, who: LogFields): Problem {
  if (error instanceof Refusal) return error.problem;
  if (brokenUnique(error)) return { code: 'conflict', say: PROBLEMS.conflict.say };
  if (isTransient(error) || isUnreachable(error)) {
    log.warn('set aside', { ...who, about: 'database' }, error);
    return { code: 'try_again', say: PROBLEMS.try_again.say };
  }
  const eventId = randomUUID();
  log.error('bug', error, { ...who, eventId });
  return { code: 'bug', say: PROBLEMS.bug.say, eventId };
}
