import { readiness } from '@/lib/health/ready';

export const dynamic = 'force-dynamic';

/** Whether this server can take requests: 200, or 503 with the parts that keep it from it (lib/health/ready.ts). */
export async function GET(): Promise<Response> {
  const found = await readiness();
  return Response.json(found, {
    status: found.ready ? 200 : 503,
    headers: { 'Cache-Control': 'no-store' },
  });
}
