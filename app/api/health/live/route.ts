export const dynamic = 'force-dynamic';

/** Whether the process answers at all. Asks nothing else: a database that is away is no reason to start it anew. */
export function GET(): Response {
  return Response.json({ live: true }, { headers: { 'Cache-Control': 'no-store' } });
}
