import { z } from 'zod';
import { UNITS } from '../../units/say';
import { LANGUAGES } from '../../words/language';
import { said } from '../../words/said';
import { requestId } from '../request-id';
import { proof } from '../second-factor/prove';
import { registrationAnswer } from '../second-factor/passkeys';
import { writtenWords } from '../written-words';

const base = z.object({ requestId });
const password = z.string().min(1, said('Enter your password.')).max(1000);

export const noInput = z.object({});
export const changePasswordInput = base.extend({ password, newPassword: z.string().max(1000) });

export const endSessionInput = z.discriminatedUnion('which', [
  base.extend({ which: z.literal('one'), sessionId: z.uuid() }),
  base.extend({ which: z.literal('others') }),
]);

/** An empty choice of a form means: as the operator or the browser has it. */
const unset = z.literal('').transform(() => null);
export const ownSettingsInput = base.extend({
  language: z.enum(LANGUAGES).or(unset).nullable(),
  units: z.enum(UNITS).or(unset).nullable(),
});

export const beginFactorInput = base.extend({ password, kind: z.enum(['totp', 'passkey']) });

const factorName = writtenWords(said('A name'), 60);
export const confirmFactorInput = z.discriminatedUnion('kind', [
  base.extend({ kind: z.literal('totp'), name: factorName, factorId: z.uuid(), code: z.string().max(20) }),
  base.extend({ kind: z.literal('passkey'), name: factorName, answer: registrationAnswer }),
]);
export const endFactorInput = base.extend({ password, factorId: z.uuid() });
export const makeCodesInput = base.extend({ password });

/** The rows of new recovery codes, made outside the command so that the codes stand in nothing that is kept. */
export const madeCodes = z.array(z.object({ id: z.uuid(), codeSha256: z.string() }));

export const ofPersonInput = base.extend({ personId: z.uuid() });
export const resetFactorInput = base.extend({
  password,
  personId: z.uuid(),
  why: writtenWords(said('A reason')),
});

export const changeOperatorInput = base
  .extend({
    name: writtenWords(said('A name'), 120).optional(),
    /** Null: nobody knows yet. */
    part141: z.boolean().nullable().optional(),
    units: z.enum(UNITS).optional(),
    signersNeedSecondFactor: z.boolean().optional(),
    /** Asked for how people sign, not for the rest. */
    password: z.string().max(1000).optional(),
  })
  .refine((asked) => asked.signersNeedSecondFactor === undefined || Boolean(asked.password), {
    path: ['password'],
    error: said('Enter your password.'),
  });

export const signInInput = z.object({
  email: z.string().max(320),
  password: z.string().max(1000),
  proof: proof.nullable(),
});
