import type { Tx } from '../db/client';
import { Refusal } from '../problems';
import { ROLES, type Role } from './policy';
import { liveSession, type LiveSession } from './sessions';

/** What a session carries: who, where, and which version of the session. Roles are read fresh on every request. */
export interface ActorRef {
  readonly personId: string;
  readonly operatorId: string;
  readonly sessionVersion: number;
  /** The row of this sign-in. Every browser has one; the demo's history, tests and other programs' keys have none. */
  readonly sessionId?: string;
  /** Set when another program asks with a key of this person's (lib/feeds/key-actor.ts); the audit row says so. */
  readonly keyId?: string;
}

/** Who asks, as the database knows them at this moment. */
export interface Actor {
  readonly personId: string;
  readonly operatorId: string;
  readonly name: string;
  readonly roles: readonly Role[];
  /** The session asked from; left out where there is none. */
  readonly session?: LiveSession;
}

/**
 * Reads the actor inside the scoped transaction. Refuses `not_signed_in` when the person has left, the session was ended
 * or is over.
 */
export async function loadActor(tx: Tx, ref: ActorRef, now: Date): Promise<Actor> {
  const person = await tx.person.findUnique({
    where: { operatorId_id: { operatorId: ref.operatorId, id: ref.personId } },
    select: { id: true, operatorId: true, name: true, roles: true, sessionVersion: true, leftOn: true },
  });
  if (!person || person.sessionVersion !== ref.sessionVersion || person.leftOn)
    throw new Refusal('not_signed_in');
  const { sessionId } = ref;
  const session = sessionId === undefined ? undefined : await liveSession(tx, { ...ref, sessionId }, now);
  if (session === null) throw new Refusal('not_signed_in');
  return {
    personId: person.id,
    operatorId: person.operatorId,
    name: person.name,
    roles: ROLES.filter((role) => person.roles.includes(role)),
    ...(session && { session }),
  };
}
