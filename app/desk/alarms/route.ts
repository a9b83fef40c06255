import { signedInRef } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { PROBLEMS } from '@/lib/problems';
import { readAlarms } from '@/lib/releases/read-alarms';
import { alarmLine } from './alarm-line';

/** The alarms of released flights, for the strip over every page of the desk. */
export async function GET(): Promise<Response> {
  const alarms = await readAlarms(await signedInRef(), {});
  const t = await words();
  const headers = { 'Cache-Control': 'no-store' };
  if (!alarms.ok) return new Response(null, { status: PROBLEMS[alarms.problem.code].status, headers });
  return Response.json(
    alarms.value.map((one) => alarmLine(t, one)),
    { headers },
  );
}
