import type { PublicKeyCredentialCreationOptionsJSON } from '@simplewebauthn/server';
import { readInOperator, writeInOperator } from '../../db/scope';
import { fieldRefusal, type Result } from '../../problems';
import { said } from '../../words/said';
import { beginFactorInput } from '../account/schema';
import type { ActorRef } from '../actor';
import { observed } from '../observed';
import { command, type CallOptions } from '../service';
import { keepChallenge } from './challenges';
import { keptFactors, passkeysOf, sealTotp, unsealTotp } from './kept';
import { creationOptions } from './passkeys';
import { newTotpSecret, totpAddress } from './totp';

/** More than anybody carries; it keeps the list of the browser's question short. */
const MOST_FACTORS = 10;

/** What the screen needs to go on: the app's secret, or the browser's question for a new passkey. */
export type BegunFactor =
  | {
      readonly kind: 'totp';
      readonly factorId: string;
      readonly secret: string;
      readonly address: string;
    }
  | { readonly kind: 'passkey'; readonly options: PublicKeyCredentialCreationOptionsJSON };

const begun = command({
  verb: 'second-factor.begin',
  asksPassword: true,
  input: beginFactorInput,
  async run({ tx, operatorId, actor, now, requestId }, { kind }) {
    const { personId } = actor;
    if ((await keptFactors(tx, { operatorId, personId })).length >= MOST_FACTORS)
      throw fieldRefusal('kind', said('You have ten already. End one of them first.'));
    if (kind === 'totp') {
      // One that was begun and left: its secret may still stand on some screen.
      await tx.secondFactor.updateMany({
        where: { operatorId, personId, kind, confirmedAt: null, endedAt: null },
        data: { endedAt: now, endedById: personId },
      });
      const sealedSecret = sealTotp(newTotpSecret(), requestId);
      const row = { id: requestId, operatorId, personId, kind, name: '', sealedSecret, addedAt: now };
      await tx.secondFactor.create({ data: row });
    }
    return {
      value: { kind, factorId: requestId },
      audit: { subjectKind: 'person', subjectId: personId, detail: { kind } },
    };
  },
});

/**
 * Begins to set up a second factor; the password is asked. Nothing of it counts before a first code or answer proves it
 * (`confirm.ts`). The secret stands in no answer that is kept: it is read from its sealed row each time.
 */
export async function beginFactor(
  ref: ActorRef | null,
  raw: unknown,
  options: CallOptions = {},
): Promise<Result<BegunFactor>> {
  const result = await begun(ref, raw, options);
  if (!result.ok || !ref) return result as Result<BegunFactor>;
  const { kind, factorId } = result.value;
  const now = options.now ?? new Date();
  return observed('query', 'second-factor.begin', ref, raw, () =>
    kind === 'totp' ? shownSecret(ref, factorId) : askedPasskey(ref, now),
  );
}

async function shownSecret({ operatorId, personId }: ActorRef, factorId: string): Promise<BegunFactor> {
  const { sealed, email } = await readInOperator(operatorId, async (tx) => {
    const row = await tx.secondFactor.findFirstOrThrow({
      where: { operatorId, personId, id: factorId },
      select: { sealedSecret: true, confirmedAt: true, endedAt: true, person: { select: { email: true } } },
    });
    // Sent again after it was proven or given up: the secret is not shown any more.
    const open = row.confirmedAt === null && row.endedAt === null;
    return { sealed: open ? row.sealedSecret : null, email: row.person.email };
  });
  if (sealed === null)
    throw fieldRefusal('kind', said('This was finished or begun anew since. Load the page again.'));
  const secret = unsealTotp(sealed, factorId);
  return { kind: 'totp', factorId, secret, address: totpAddress(secret, email) };
}

async function askedPasskey({ operatorId, personId }: ActorRef, now: Date): Promise<BegunFactor> {
  const person = await readInOperator(operatorId, async (tx) => ({
    have: passkeysOf(await keptFactors(tx, { operatorId, personId })),
    ...(await tx.person.findUniqueOrThrow({
      where: { operatorId_id: { operatorId, id: personId } },
      select: { name: true, email: true },
    })),
  }));
  const options = await creationOptions({ personId, ...person });
  await writeInOperator(operatorId, (tx) =>
    keepChallenge(tx, { operatorId, personId, purpose: 'passkey-add', now }, options.challenge),
  );
  return { kind: 'passkey', options };
}
