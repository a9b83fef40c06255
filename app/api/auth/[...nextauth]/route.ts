import NextAuth from 'next-auth';
import { type NextRequest } from 'next/server';
import { authOptions } from '@/app/_session/auth';

interface RouteContext {
  params: Promise<{ nextauth: string[] }>;
}

const answer = (request: NextRequest, context: RouteContext) =>
  NextAuth(request, context, authOptions()) as Promise<Response>;

export { answer as GET, answer as POST };
