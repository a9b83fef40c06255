import {
  generateAuthenticationOptions,
  generateRegistrationOptions,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
  type AuthenticationResponseJSON,
  type PublicKeyCredentialCreationOptionsJSON,
  type PublicKeyCredentialRequestOptionsJSON,
  type RegistrationResponseJSON,
} from '@simplewebauthn/server';
import { z } from 'zod';
import { passkeySite } from './site';

/**
 * Passkeys (WebAuthn), as a second thing beside the password: whether the device asked for a finger or a number is
 * preferred, not demanded, because the password was asked already.
 */
const FIVE_MINUTES = 5 * 60_000;

/** A passkey as it is kept. */
export interface KeptPasskey {
  readonly credentialId: string;
  /** COSE key, base64url. */
  readonly publicKey: string;
  readonly signCount: number;
  readonly transports: readonly string[];
}

/** What a browser answers with, as far as its form goes; what it is worth the library says. */
const text = z.string().max(20_000);
const credential = { id: text, rawId: text, type: z.literal('public-key') };
const extensions = z.record(z.string(), z.unknown()).default({});
export const registrationAnswer = z.looseObject({
  ...credential,
  clientExtensionResults: extensions,
  response: z.looseObject({
    clientDataJSON: text,
    attestationObject: text,
    transports: z.array(z.string().max(40)).max(10).optional(),
  }),
});
export const assertionAnswer = z.looseObject({
  ...credential,
  clientExtensionResults: extensions,
  response: z.looseObject({ clientDataJSON: text, authenticatorData: text, signature: text }),
});
export type RegistrationAnswer = z.output<typeof registrationAnswer>;
export type AssertionAnswer = z.output<typeof assertionAnswer>;

interface ForWhom {
  readonly personId: string;
  readonly email: string;
  readonly name: string;
  readonly have: readonly KeptPasskey[];
}

const named = (have: readonly KeptPasskey[]) =>
  have.map(({ credentialId, transports }) => ({ id: credentialId, transports: [...transports] }));

/** What the browser needs to make a new passkey. */
export async function creationOptions(person: ForWhom): Promise<PublicKeyCredentialCreationOptionsJSON> {
  return generateRegistrationOptions({
    rpName: 'Wheelchock',
    rpID: passkeySite().rpId,
    // Bytes that name nobody to whoever finds the device.
    userID: new Uint8Array(Buffer.from(person.personId.replaceAll('-', ''), 'hex')),
    userName: person.email,
    userDisplayName: person.name,
    timeout: FIVE_MINUTES,
    attestationType: 'none',
    excludeCredentials: named(person.have),
    authenticatorSelection: { residentKey: 'discouraged', userVerification: 'preferred' },
  });
}

/** The new passkey, when the answer is right for this challenge and this server; null otherwise. */
export async function readCreated(
  answer: RegistrationAnswer,
  challenge: string,
): Promise<KeptPasskey | null> {
  const { rpId, origin } = passkeySite();
  try {
    const { verified, registrationInfo } = await verifyRegistrationResponse({
      response: answer as unknown as RegistrationResponseJSON,
      expectedChallenge: challenge,
      expectedOrigin: origin,
      expectedRPID: rpId,
      requireUserVerification: false,
    });
    if (!verified) return null;
    const { id, publicKey, counter } = registrationInfo.credential;
    return {
      credentialId: id,
      publicKey: Buffer.from(publicKey).toString('base64url'),
      signCount: counter,
      transports: answer.response.transports ?? [],
    };
  } catch {
    // The library throws for every way an answer can be wrong.
    return null;
  }
}

/** What the browser needs to prove that it has one of these passkeys. */
export const requestOptions = async (
  have: readonly KeptPasskey[],
): Promise<PublicKeyCredentialRequestOptionsJSON> =>
  generateAuthenticationOptions({
    rpID: passkeySite().rpId,
    allowCredentials: named(have),
    timeout: FIVE_MINUTES,
    userVerification: 'preferred',
  });

/**
 * The passkey's new count of signatures when the answer is right, null otherwise: also when the count did not rise though
 * one is kept, which a copied key would show (WebAuthn, signature counter).
 */
export async function readAssertion(
  answer: AssertionAnswer,
  challenge: string,
  kept: KeptPasskey,
): Promise<number | null> {
  const { rpId, origin } = passkeySite();
  try {
    const { verified, authenticationInfo } = await verifyAuthenticationResponse({
      response: answer as unknown as AuthenticationResponseJSON,
      expectedChallenge: challenge,
      expectedOrigin: origin,
      expectedRPID: rpId,
      requireUserVerification: false,
      credential: {
        id: kept.credentialId,
        publicKey: new Uint8Array(Buffer.from(kept.publicKey, 'base64url')),
        counter: kept.signCount,
        transports: [...kept.transports],
      },
    });
    return verified ? authenticationInfo.newCounter : null;
  } catch {
    return null;
  }
}
