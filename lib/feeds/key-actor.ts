import { type ActorRef } from '../access/actor';
import { noteInOperator, readForKey, readInOperator } from '../db/scope';
import { keySha256, looksLikeKey } from './key-text';
import { isScope, type Scope } from './scopes';

/** A key that counts at this moment, and who it acts for. */
export interface KeyActor {
  readonly ref: ActorRef;
  readonly key: { readonly id: string; readonly name: string; readonly scopes: readonly Scope[] };
}

const A_MINUTE = 60_000;

/**
 * Who a key acts for: the person who issued it, with the roles they have now. Null for one that is no key, is not known,
 * was ended, is over, or whose person has left. The key is looked up by its hash: how long it takes tells nothing of how
 * near a guess was.
 */
export async function actorOfKey(key: string, now: Date): Promise<KeyActor | null> {
  if (!looksLikeKey(key)) return null;
  const sha256 = keySha256(key);
  const row = await readForKey(sha256, (tx) => tx.accessKey.findUnique({ where: { keySha256: sha256 } }));
  if (!row || row.endedAt || (row.expiresAt && row.expiresAt <= now)) return null;
  const { id, operatorId, personId, name } = row;
  const person = await readInOperator(operatorId, (tx) =>
    tx.person.findUnique({
      where: { operatorId_id: { operatorId, id: personId } },
      select: { sessionVersion: true, leftOn: true },
    }),
  );
  if (!person || person.leftOn) return null;
  if (!row.lastUsedAt || now.getTime() - row.lastUsedAt.getTime() >= A_MINUTE) {
    await noteInOperator(operatorId, (tx) =>
      tx.accessKey.updateMany({ where: { operatorId, id }, data: { lastUsedAt: now } }),
    );
  }
  return {
    ref: { personId, operatorId, sessionVersion: person.sessionVersion, keyId: id },
    key: { id, name, scopes: row.scopes.filter(isScope) },
  };
}

/** The key of an `Authorization: Bearer …` header (RFC 6750, section 2.1); null without one. */
export function bearerKey(header: string | null): string | null {
  return /^Bearer +([\w~+/.-]+=*) *$/i.exec(header ?? '')?.[1] ?? null;
}
