import { signedInRef } from '@/app/_session/actor-ref';
import { readProof } from '@/lib/people/read-proof';
import { PROBLEMS } from '@/lib/problems';

/**
 * A proof, as a file to be saved and never as a page: a PDF is kept as it came, and may hold anything. That a browser runs
 * nothing in it is said in next.config.ts as well.
 */
export async function GET(_request: Request, { params }: { params: Promise<{ id: string }> }) {
  const proof = await readProof(await signedInRef(), { proofId: (await params).id });
  if (!proof.ok) {
    const status = proof.problem.code === 'invalid' ? 404 : PROBLEMS[proof.problem.code].status;
    return new Response(null, { status, headers: { 'Cache-Control': 'no-store' } });
  }
  const { fileName, mime, bytes } = proof.value;
  return new Response(Uint8Array.from(bytes), {
    headers: {
      'Content-Type': mime,
      'Content-Disposition': `attachment; filename="${fileName}"`,
      'Cache-Control': 'private, no-store',
      'Cross-Origin-Resource-Policy': 'same-origin',
    },
  });
}
