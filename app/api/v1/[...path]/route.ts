import { answerRest } from '@/lib/feeds/rest/answer-rest';

/** The interface for other programs: everything below /api/v1 is answered by one table (lib/feeds/rest/routes.ts). */
async function answer(request: Request, { params }: { params: Promise<{ path: string[] }> }) {
  const { path } = await params;
  return answerRest(request, `/${path.join('/')}`);
}

export { answer as GET, answer as POST, answer as PUT, answer as PATCH, answer as DELETE };
