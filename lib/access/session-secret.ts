/** Before the demo's own secret, so that it is known for what it is. */
export const DEMO_PREFIX = 'demo-';

const LEAST_CHARACTERS = 32;
/** Sixteen bytes at random, as hex, have fewer than these only once in some millions. */
const LEAST_DIFFERENT = 8;

/** What stands in examples; as words of their own, since letters at random make short ones now and then. */
const OF_EXAMPLES =
  /change-?_?me|placeholder|wheelchock|development|(?:^|[^a-z0-9])(?:demo|test|tests|secret|example|password|local|todo|openssl|your)(?:[^a-z0-9]|$)/i;

/** Whoever follows such an address is on this machine already (RFC 6761, 6.3; RFC 1122, 3.2.1.3; RFC 4291, 2.5.3). */
const ON_THIS_MACHINE = /^(?:localhost|(?:.+\.)?localhost|127(?:\.\d{1,3}){3}|\[::1\])$/;

/**
 * Why a server in production must not start with this secret, in plain words; null when it may. `address` is where browsers
 * reach the server (NEXTAUTH_URL). Whoever can guess the secret signs in as anybody, and signs as a mechanic. The demo's own
 * is good for the demo's own machine and nothing else. The words never hold the secret.
 */
export function sessionSecretTrouble(secret: string | undefined, address: string | undefined): string | null {
  const given = secret?.trim() ?? '';
  if (given.length < LEAST_CHARACTERS) {
    return (
      'NEXTAUTH_SECRET is missing or shorter than 32 characters; without it sessions could be forged. ' +
      `\`npm run demo\` makes one. By hand: ${BY_HAND}`
    );
  }
  if (given.startsWith(DEMO_PREFIX) && given.length >= DEMO_PREFIX.length + LEAST_CHARACTERS) {
    return isOnThisMachine(address) && !isGuessable(given.slice(DEMO_PREFIX.length))
      ? null
      : `NEXTAUTH_SECRET is the demo's, and NEXTAUTH_URL says that others reach this server. Make a secret of its own: ${BY_HAND}`;
  }
  return isGuessable(given)
    ? `NEXTAUTH_SECRET looks like one out of an example, which anybody can read. Make one: ${BY_HAND}`
    : null;
}

const BY_HAND = 'NEXTAUTH_SECRET="$(openssl rand -base64 32)".';

const isGuessable = (secret: string): boolean =>
  OF_EXAMPLES.test(secret) || new Set(secret).size < LEAST_DIFFERENT;

const isOnThisMachine = (address: string | undefined): boolean =>
  address !== undefined && URL.canParse(address) && ON_THIS_MACHINE.test(new URL(address).hostname);
