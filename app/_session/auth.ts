import { type AuthOptions, type Session } from 'next-auth';
import Credentials from 'next-auth/providers/credentials';
import { checkSignIn } from '@/lib/access/passwords';
import { Refusal } from '@/lib/problems';
import { sessionSecret } from './secret';
import { readSessionContent } from './session-content';

/** A working day. After that one signs in again; forms keep what was typed meanwhile. */
const SESSION_SECONDS = 12 * 60 * 60;

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
        credentials: { email: {}, password: {} },
        authorize: async (given) => {
          const ref = await refFor(given?.email ?? '', given?.password ?? '');
          return ref && { id: ref.personId, ref };
        },
      }),
    ],
    callbacks: {
      jwt: ({ token, user }) => (user && 'ref' in user ? { ...readSessionContent(user.ref) } : token),
      session: ({ session, token }) => ({ expires: session.expires, ref: readSessionContent(token) }),
    },
  };
}

/**
 * A locked address and a wrong password give the same answer on purpose: a stranger could else find out by trying
 * which addresses exist. The words on the sign-in page cover both.
 */
async function refFor(email: string, password: string) {
  try {
    return await checkSignIn(email, password, new Date());
  } catch (error) {
    if (error instanceof Refusal && error.problem.code === 'locked') return null;
    console.error(JSON.stringify({ level: 'error', during: 'sign-in', message: String(error) }));
    // next-auth puts the message into its answer, so it must not tell more than this.
    throw new Error('try_again', { cause: error });
  }
}
