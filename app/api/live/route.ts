import { signedInRef } from '@/app/_session/actor-ref';
import { isStopping } from '@/lib/live/hub-of-process';
import { readNewestChange } from '@/lib/live/newest-change';
import { liveStream } from '@/lib/live/stream';
import { PROBLEMS } from '@/lib/problems';

export const dynamic = 'force-dynamic';

/**
 * Word of every change of the own operator's, as it happens, for the screens that show answers (`app/_ui/use-live.ts`).
 * It says that something changed, never what: the screen asks for itself, with its own rights.
 */
export async function GET(request: Request): Promise<Response> {
  if (isStopping()) return refused(503);
  const ref = await signedInRef();
  const newest = await readNewestChange(ref, {});
  if (!newest.ok || !ref) return refused(newest.ok ? 401 : PROBLEMS[newest.problem.code].status);
  return new Response(liveStream(ref, request.signal), {
    headers: {
      'Content-Type': 'text/event-stream; charset=utf-8',
      // Neither kept, nor packed into blocks on the way (RFC 9111, 5.2.2), nor held back by a proxy that would gather it.
      'Cache-Control': 'no-store, no-transform',
      'X-Accel-Buffering': 'no',
      // A connection kept for later would hold up a server that is told to end.
      Connection: 'close',
    },
  });
}

const refused = (status: number) =>
  new Response(null, { status, headers: { 'Cache-Control': 'no-store', Connection: 'close' } });
