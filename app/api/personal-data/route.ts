import { signedInRef } from '@/app/_session/actor-ref';
import { exportPersonalData } from '@/lib/people/export-personal';
import { PROBLEMS } from '@/lib/problems';

/** Everything about oneself as a file; `?person=` for a manager. */
export async function GET(request: Request) {
  const personId = new URL(request.url).searchParams.get('person') ?? undefined;
  const result = await exportPersonalData(await signedInRef(), { personId });
  const headers = { 'Cache-Control': 'private, no-store' };
  if (!result.ok) {
    const status = result.problem.code === 'invalid' ? 404 : PROBLEMS[result.problem.code].status;
    return Response.json(result, { status, headers });
  }
  return new Response(`${JSON.stringify(result.value, null, 2)}\n`, {
    headers: {
      ...headers,
      'Content-Type': 'application/json; charset=utf-8',
      'Content-Disposition': 'attachment; filename="personal-data.json"',
    },
  });
}
