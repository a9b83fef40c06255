import { z } from 'zod';
import type { Tx } from '../../db/client';
import { fieldRefusal, Refusal, type Result } from '../../problems';
import { said } from '../../words/said';
import { confirmFactorInput, madeCodes } from '../account/schema';
import type { ActorRef } from '../actor';
import { command, type CallOptions, type Context } from '../service';
import { challengeNamedIn, takeChallenge } from './challenges';
import { unsealTotp } from './kept';
import { readCreated } from './passkeys';
import { newRecoveryCodes, recoveryCodesLeft, recoveryRows, replaceRecoveryCodes } from './recovery-codes';
import { totpStep } from './totp';

/** A secret that was begun longer ago may have been seen by others since. */
const OPEN_MINUTES = 30;

type Input = z.output<typeof confirmFactorInput>;
type TotpInput = Extract<Input, { kind: 'totp' }>;
type PasskeyInput = Extract<Input, { kind: 'passkey' }>;

const confirmed = command({
  verb: 'second-factor.confirm',
  input: confirmFactorInput.and(z.object({ made: madeCodes })),
  // The code of this moment and the codes made for the answer are no part of what was asked.
  counts: ({ kind, name }) => ({ kind, name }),
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const whose = { operatorId, personId: actor.personId, now };
    const factorId =
      input.kind === 'totp' ? await confirmTotp(context, input) : await confirmPasskey(context, input);
    const { personId } = whose;
    const first = (await recoveryCodesLeft(tx, { operatorId, personId })) === 0;
    if (first) await replaceRecoveryCodes(tx, whose, input.made);
    return {
      value: { factorId, madeId: first ? (input.made[0]?.id ?? null) : null },
      audit: { subjectKind: 'person', subjectId: personId, detail: { kind: input.kind, factorId } },
    };
  },
});

/** The factor counts from now on. `codes`: the recovery codes, made with the first factor, shown this once. */
export interface ConfirmedFactor {
  readonly factorId: string;
  readonly codes: readonly string[] | null;
}

/** Proves a factor that was begun, by its first code or the browser's answer. */
export async function confirmFactor(
  ref: ActorRef | null,
  raw: unknown,
  options?: CallOptions,
): Promise<Result<ConfirmedFactor>> {
  const codes = newRecoveryCodes();
  const made = recoveryRows(codes);
  const result = await confirmed(ref, { ...(raw as object), made }, options);
  if (!result.ok) return result;
  const { factorId, madeId } = result.value;
  return { ok: true, value: { factorId, codes: madeId !== null && madeId === made[0]?.id ? codes : null } };
}

const WRONG_CODE = said(
  'This is not the code of this moment. Look whether the clock of the phone is right, and type the newest one.',
);

async function confirmTotp({ tx, operatorId, actor, now }: Context, input: TotpInput): Promise<string> {
  const { factorId, name, code } = input;
  const { personId } = actor;
  const row = await openRow(tx, { operatorId, personId, factorId });
  if (now.getTime() - row.addedAt.getTime() > OPEN_MINUTES * 60_000)
    throw fieldRefusal('code', said('This was begun more than half an hour ago. Begin again.'));
  const step = totpStep(unsealTotp(row.sealedSecret, factorId), code, now, null);
  if (step === null) throw fieldRefusal('code', WRONG_CODE);
  // The step is kept: the code that proved it does not sign in as well.
  await tx.secondFactor.updateMany({
    where: { operatorId, id: factorId },
    data: { name, lastStep: step, confirmedAt: now },
  });
  return factorId;
}

async function openRow(tx: Tx, asked: { operatorId: string; personId: string; factorId: string }) {
  const { operatorId, personId, factorId: id } = asked;
  const row = await tx.secondFactor.findFirst({ where: { operatorId, personId, id, kind: 'totp' } });
  if (!row?.sealedSecret) throw new Refusal('not_found');
  if (row.confirmedAt || row.endedAt)
    throw fieldRefusal('code', said('This was finished or begun anew since. Load the page again.'));
  return { sealedSecret: row.sealedSecret, addedAt: row.addedAt };
}

async function confirmPasskey(context: Context, input: PasskeyInput): Promise<string> {
  const { tx, operatorId, actor, now, requestId } = context;
  const { personId } = actor;
  const asked = { operatorId, personId, purpose: 'passkey-add', now } as const;
  const challenge = await takeChallenge(tx, asked, challengeNamedIn(input.answer.response.clientDataJSON));
  const passkey = challenge === null ? null : await readCreated(input.answer, challenge);
  if (!passkey)
    throw fieldRefusal('answer', said('The passkey could not be checked, or it took too long. Begin again.'));
  await tx.secondFactor.create({
    data: {
      id: requestId,
      operatorId,
      personId,
      kind: 'passkey',
      name: input.name,
      credentialId: passkey.credentialId,
      publicKey: passkey.publicKey,
      signCount: passkey.signCount,
      transports: [...passkey.transports],
      addedAt: now,
      confirmedAt: now,
    },
  });
  return requestId;
}
