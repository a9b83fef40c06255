import type { Tx } from '../../db/client';
import { Refusal } from '../../problems';
import { said } from '../../words/said';
import type { Actor } from '../actor';

/** Where somebody sets up a second factor; screens lead there. */
export const WHERE_TO_SET_UP = '/account#second-factor';

const NEEDED = said(
  'To sign here you have to be signed in with a second factor. Set one up under your account, or sign in again with it.',
);

/**
 * Whether a signature may be made from this session: where the operator asks everybody who signs for a second factor, not
 * from one that was begun without. Refuses `signature_refused`. Who asks without a session (tests, the demo's history) has
 * no browser that could have been taken from them.
 */
export async function demandSecondFactor(tx: Tx, actor: Actor): Promise<void> {
  if (!actor.session || actor.session.secondFactor !== 'none') return;
  if (await asksSecondFactor(tx, actor.operatorId))
    throw new Refusal('signature_refused', { say: NEEDED, settleAt: WHERE_TO_SET_UP });
}

/** The operator's setting. */
export async function asksSecondFactor(tx: Tx, operatorId: string): Promise<boolean> {
  const operator = await tx.operator.findUnique({
    where: { id: operatorId },
    select: { signersNeedSecondFactor: true },
  });
  return operator?.signersNeedSecondFactor ?? false;
}
