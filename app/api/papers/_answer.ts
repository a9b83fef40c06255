import { PROBLEMS, type Problem, type Result } from '@/lib/problems';

/** Never kept by anything in between: a paper is as old as the moment it was asked for, and one operator's. */
const NEVER_KEPT = { 'Cache-Control': 'no-store', 'X-Content-Type-Options': 'nosniff' };

/** A paper as PDF, shown beside the page and named for whoever keeps it; a refusal in plain words with its status. */
export async function answerPdf<V extends { readonly fileName: string }>(
  result: Result<V>,
  draw: (view: V) => Promise<Uint8Array>,
): Promise<Response> {
  if (!result.ok) return refused(result.problem);
  const bytes = await draw(result.value);
  return new Response(Uint8Array.from(bytes), {
    headers: {
      ...NEVER_KEPT,
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="${result.value.fileName}"`,
    },
  });
}

/** The same for facts as JSON, to be kept as a file. */
export function answerJson(result: Result<{ readonly jsonName: string; readonly facts: object }>): Response {
  if (!result.ok) return refused(result.problem);
  return Response.json(result.value.facts, {
    headers: { ...NEVER_KEPT, 'Content-Disposition': `attachment; filename="${result.value.jsonName}"` },
  });
}

function refused(problem: Problem): Response {
  // A number that is none at all is as unknown here as another operator's record.
  const strange = problem.code === 'invalid';
  return new Response(`${strange ? PROBLEMS.not_found.say : problem.say}\n`, {
    status: strange ? PROBLEMS.not_found.status : PROBLEMS[problem.code].status,
    headers: { ...NEVER_KEPT, 'Content-Type': 'text/plain; charset=utf-8' },
  });
}

/** What the address asks about. */
export const asked = (request: Request): URLSearchParams => new URL(request.url).searchParams;
