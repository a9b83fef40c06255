import NextAuth from 'next-auth';
import { NextRequest } from 'next/server';
import { authOptions } from '@/app/_session/auth';
import { readUpTo } from '../../_body';

interface RouteContext {
  params: Promise<{ nextauth: string[] }>;
}

/** Address, password and the answer of a passkey, which is the largest of them, a few kilobytes. */
const MOST_BYTES = 64_000;

const NOT_READ = { 'too-long': 413, 'cut-off': 400 } as const;

const GET = (request: NextRequest, context: RouteContext) =>
  NextAuth(request, context, authOptions()) as Promise<Response>;

/** next-auth reads a body to its end, whoever sends it and however long it is; so it is read here first, up to a bound. */
async function POST(request: NextRequest, context: RouteContext): Promise<Response> {
  const body = await readUpTo(request, MOST_BYTES);
  if (typeof body === 'string') return new Response(null, { status: NOT_READ[body] });
  const { url, method, headers } = request;
  return GET(new NextRequest(url, { method, headers, body }), context);
}

export { GET, POST };
