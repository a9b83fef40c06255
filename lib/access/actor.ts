import type { Tx } from '../db/client';
import { Refusal } from '../problems';
import { ROLES, type Role } from './policy';

/** What a session carries: who, where, and which version of the session. Roles are read fresh on every request. */
export interface ActorRef {
  readonly personId: string;
  readonly operatorId: string;
  readonly sessionVersion: number;
  /** Set when another program asks with a key of this person's (lib/feeds/key-actor.ts); the audit row says so. */
  readonly keyId?: string;
}

/** Who asks, as the database knows them at this moment. */
export interface Actor {
  readonly personId: string;
  readonly operatorId: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

/** Reads the actor inside the scoped transaction. Refuses `not_signed_in` when the session no longer counts. */
export async function loadActor(tx: Tx, ref: ActorRef): Promise<Actor> {
  const person = await tx.person.findUnique({
    where: { operatorId_id: { operatorId: ref.operatorId, id: ref.personId } },
    select: { id: true, operatorId: true, name: true, roles: true, sessionVersion: true, leftOn: true },
  });
  if (!person || person.sessionVersion !== ref.sessionVersion || person.leftOn)
    throw new Refusal('not_signed_in');
  return {
    personId: person.id,
    operatorId: person.operatorId,
    name: person.name,
    roles: ROLES.filter((role) => person.roles.includes(role)),
  };
}
