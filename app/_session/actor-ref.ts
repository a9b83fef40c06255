import { getServerSession } from 'next-auth';
import { redirect } from 'next/navigation';
import { cache } from 'react';
import { type ActorRef } from '@/lib/access/actor';
import { whoAmI, type WhoAmI } from '@/lib/people/who-am-i';
import { type Problem } from '@/lib/problems';
import { authOptions, type SealedSession } from './auth';
import { readSessionContent } from './session-content';

/**
 * Who the request's cookie says is asking, or null. It proves a sign-in, not a right: every service reads the person
 * afresh and asks the policy. Server actions hand it on as it is.
 */
export const signedInRef = cache(async (): Promise<ActorRef | null> => {
  const session = await getServerSession<AuthOptionsHere, SealedSession>(authOptions());
  return readSessionContent(session?.ref);
});
type AuthOptionsHere = ReturnType<typeof authOptions>;

const askedOnce = cache(async (ref: ActorRef) => whoAmI(ref, {}));

/**
 * For pages: who is asking, or off to sign in and back to `path` afterwards. Also sends away a session that has been
 * ended on the server; somebody without any role is told so. Throws when the server cannot say; app/error.tsx shows that.
 */
export async function requireActor(path: string): Promise<{ ref: ActorRef; who: WhoAmI }> {
  const ref = await signedInRef();
  const result = ref && (await askedOnce(ref));
  if (!ref || !result || (!result.ok && result.problem.code === 'not_signed_in')) {
    redirect(`/sign-in?next=${encodeURIComponent(path)}`);
  }
  if (!result.ok) {
    if (result.problem.code === 'not_allowed') redirect('/sign-in/no-role');
    throw failure(result.problem);
  }
  return { ref, who: result.value };
}

/** For the sign-in page: whether a session that still counts is there. */
export async function isSignedIn(): Promise<boolean> {
  const ref = await signedInRef();
  return ref !== null && (await askedOnce(ref)).ok;
}

const failure = (problem: Problem): Error =>
  new Error(problem.eventId ? `${problem.say} Event ${problem.eventId}` : problem.say);
