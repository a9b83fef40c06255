import { type AuthOptions, type Session } from 'next-auth';
import Credentials from 'next-auth/providers/credentials';
import { signInInput } from '@/lib/access/account/schema';
import { endOwnSession, SESSION_HOURS } from '@/lib/access/sessions';
import { signIn, type SignInAnswer } from '@/lib/access/sign-in';
import { log } from '@/lib/log';
import { sessionSecret } from './secret';
import { senderIn } from './sender-in';
import { readSessionContent } from './session-content';

const SESSION_SECONDS = SESSION_HOURS * 60 * 60;

/** What the browser is told, by next-auth's error, when the password was right and a second factor is asked. */
export const SECOND_FACTOR = 'second_factor';

/** Nor was this try looked at: too many from where it comes from were wrong. */
export const HELD_UP = 'held_up';

/** The session as our own code sees it; next-auth's user with name and picture is not used. */
export type SealedSession = Session & { readonly ref: unknown };

/** next-auth's settings. A function, so that a missing secret is told at start and not while building. */
export function authOptions(): AuthOptions {
  return {
    secret: sessionSecret(),
    session: { strategy: 'jwt', maxAge: SESSION_SECONDS },
    // Over https the cookie travels on nothing else. Plain http is for the demo on one's own machine.
    useSecureCookies: process.env.NEXTAUTH_URL?.startsWith('https://') ?? false,
    pages: { signIn: '/sign-in', error: '/sign-in' },
    providers: [
      Credentials({
        credentials: { email: {}, password: {}, proof: {} },
        authorize: async (given, request) => {
          const answer = await answerFor(given, new Headers(request.headers));
          if (answer.step === 'refused') return null;
          if (answer.step === 'held-up') throw new Error(HELD_UP);
          if (answer.step === 'second-factor') throw new Error(SECOND_FACTOR);
          return { id: answer.ref.personId, ref: answer.ref };
        },
      }),
    ],
    events: {
      // The cookie goes either way; the row too, so that a copy of the cookie opens nothing.
      signOut: async ({ token }) => {
        const ref = readSessionContent(token);
        if (ref) await endOwnSession(ref, new Date());
      },
    },
    callbacks: {
      jwt: ({ token, user }) => (user && 'ref' in user ? { ...readSessionContent(user.ref) } : token),
      session: ({ session, token }) => ({ expires: session.expires, ref: readSessionContent(token) }),
    },
  };
}

type Given = Partial<Record<'email' | 'password' | 'proof', string>> | undefined;

async function answerFor(given: Given, headers: Headers): Promise<SignInAnswer> {
  const asked = signInInput.safeParse({
    email: given?.email ?? '',
    password: given?.password ?? '',
    proof: readProof(given?.proof),
  });
  if (!asked.success) return { step: 'refused' };
  try {
    return await signIn(
      { ...asked.data, userAgent: headers.get('user-agent') },
      new Date(),
      senderIn(headers),
    );
  } catch (error) {
    log.error('sign-in failed', error);
    // next-auth puts the message into its answer, so it must not tell more than this.
    throw new Error('try_again', { cause: error });
  }
}

/** The proof travels as JSON in a field of the form; what cannot be read proves nothing. */
function readProof(sent: string | undefined): unknown {
  if (!sent) return null;
  try {
    return JSON.parse(sent);
  } catch {
    return sent;
  }
}
