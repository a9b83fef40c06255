import { signedInRef } from '@/app/_session/actor-ref';
import { PROBLEMS } from '@/lib/problems';
import { readPack } from '@/lib/walkarounds/read-pack';

/**
 * What the phone takes along: a RampPack as JSON. 401 when nobody is signed in; a refusal is `{ ok: false, problem }` with
 * its status. Never kept by anything between here and the phone: it is one person's, and as old as it says.
 */
export async function GET(): Promise<Response> {
  const result = await readPack(await signedInRef(), {});
  const headers = { 'Cache-Control': 'no-store' };
  return result.ok
    ? Response.json(result.value, { headers })
    : Response.json(result, { status: PROBLEMS[result.problem.code].status, headers });
}
