import { z } from 'zod';
import { type ActorRef } from '../access/actor';
import { command, type CallOptions } from '../access/service';
import { fieldRefusal, type Result } from '../problems';
import { keyPrefix, keySha256, newKeyText } from './key-text';
import { issueKeyInput } from './schema';
import { IN_ADDRESS, type Scope } from './scopes';
import { said } from '../words/said';

/** A key that was issued. The key itself is there the first time and never again. */
export interface IssuedKey {
  readonly keyId: string;
  readonly prefix: string;
  readonly key: string | null;
  readonly forCalendar: boolean;
}

/** A key outlasts the session it is issued in, so that the password is asked, as for a signature. */
const written = command({
  verb: 'key.issue',
  signing: true,
  input: issueKeyInput.extend({ made: z.object({ sha256: z.string(), prefix: z.string() }) }),
  // The key is made anew on every try; what makes a request the same one is what was asked for.
  counts: ({ made: _made, password: _password, ...asked }) => asked,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const scopes = [...new Set(input.scopes)].sort();
    const expiresAt = input.lastDay === '' ? null : new Date(`${input.lastDay}T24:00:00Z`);
    if (expiresAt && expiresAt <= now) throw fieldRefusal('lastDay', said('This day is over already.'));
    const { sha256, prefix } = input.made;
    await tx.accessKey.create({
      data: {
        id: requestId,
        operatorId,
        name: input.name,
        scopes,
        prefix,
        keySha256: sha256,
        personId: actor.personId,
        issuedAt: now,
        expiresAt,
      },
    });
    return {
      value: { keyId: requestId, prefix, forCalendar: scopes.includes(IN_ADDRESS satisfies Scope) },
      audit: {
        subjectKind: 'access-key',
        subjectId: requestId,
        detail: { name: input.name, scopes, prefix, expiresAt: expiresAt?.toISOString() ?? null },
      },
    };
  },
});

/**
 * Issues a key that acts for whoever issues it. The key is given back this once and kept nowhere, not in the answer that
 * is stored for a request sent again: who sends again is told which key it was, without the key.
 */
export async function issueKey(
  ref: ActorRef | null,
  raw: unknown,
  options?: CallOptions,
): Promise<Result<IssuedKey>> {
  const key = newKeyText();
  const made = { sha256: keySha256(key), prefix: keyPrefix(key) };
  const result = await written(ref, { ...(raw as object), made }, options);
  if (!result.ok) return result;
  const first = result.value.prefix === made.prefix;
  return { ok: true, value: { ...result.value, key: first ? key : null } };
}
