/** What somebody has for signing in, for the matrix: the same person asks in every role, so requests are made to be sent again. */
import { changePassword } from '@/lib/access/account/change-password';
import type { ActorRef } from '@/lib/access/actor';
import { beginFactor } from '@/lib/access/second-factor/begin';
import { beginSession } from '@/lib/access/sessions';
import type { CallOptions } from '@/lib/access/service';
import { writeInOperator } from '@/lib/db/scope';
import { appCode, enrolPasskey, got, own, SITE } from '../fixtures/accounts';
import { NOW, PASSWORD } from '../fixtures/school';

export interface AccountThings {
  readonly sessionId: string;
  /** Proves an app that was begun; the second time it is answered as the first. */
  readonly confirm: object;
  /** Ends a passkey; likewise. */
  readonly end: object;
}

export async function accountThings(ref: ActorRef): Promise<AccountThings> {
  // Secrets of apps are sealed with the one, passkeys are tied to the other.
  process.env['NEXTAUTH_SECRET'] ??= 'a secret for tests only, of enough characters';
  process.env['NEXTAUTH_URL'] = SITE;
  const sessionId = await writeInOperator(ref.operatorId, (tx) =>
    beginSession(tx, ref, { userAgent: null, secondFactor: 'none', now: NOW }),
  );
  const passkey = await enrolPasskey(ref, NOW);
  const begun = got(await beginFactor(ref, { ...own(), password: PASSWORD, kind: 'totp' }, { now: NOW }));
  if (begun.kind !== 'totp') throw new Error('not an app');
  const { factorId, secret } = begun;
  return {
    sessionId,
    confirm: { ...own(), kind: 'totp', factorId, name: 'Phone', code: appCode(secret, NOW) },
    end: { ...own(), password: PASSWORD, factorId: passkey.factorId },
  };
}

export const newPasswordOf = () => ({
  ...own(),
  password: PASSWORD,
  newPassword: 'nine gravel umbrellas sing',
});

/** The act as it is; afterwards the person signs with the old password as before, as the rest of the matrix does. */
export async function changePasswordAndBack(ref: ActorRef | null, raw: unknown, options?: CallOptions) {
  if (!ref) return changePassword(ref, raw, options);
  const where = { operatorId_id: { operatorId: ref.operatorId, id: ref.personId } };
  const before = await writeInOperator(ref.operatorId, (tx) =>
    tx.person.findUniqueOrThrow({ where, select: { passwordHash: true, sessionVersion: true } }),
  );
  const result = await changePassword(ref, raw, options);
  await writeInOperator(ref.operatorId, (tx) => tx.person.update({ where, data: before }));
  return result;
}
