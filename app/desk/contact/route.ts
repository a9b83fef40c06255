import { signedInRef } from '@/app/_session/actor-ref';
import { whoAmI } from '@/lib/people/who-am-i';
import { PROBLEMS } from '@/lib/problems';

/**
 * Whether the server, its database and the session still answer. The screens ask before they fetch themselves anew, so
 * that a lost connection is told in words on the screen instead of replacing it.
 */
export async function GET(): Promise<Response> {
  const result = await whoAmI(await signedInRef(), {});
  return new Response(null, {
    status: result.ok ? 204 : PROBLEMS[result.problem.code].status,
    headers: { 'Cache-Control': 'no-store' },
  });
}
