import { signedInRef } from '@/app/_session/actor-ref';
import { readPhoto } from '@/lib/photos/read-photo';
import { PROBLEMS } from '@/lib/problems';

/**
 * A stored photo; `?size=small` for the one of lists. The browser may keep it but asks each time whether it still may
 * show it; a photo never changes, so the answer is then a short "not modified". That a browser runs nothing in it is said
 * in next.config.ts.
 */
export async function GET(request: Request, { params }: { params: Promise<{ id: string }> }) {
  const size = new URL(request.url).searchParams.get('size') ?? undefined;
  const held = heldBy(request);
  const photo = await readPhoto(
    await signedInRef(),
    { photoId: (await params).id, size },
    { holds: (sha256) => held.includes(`"${sha256}"`) },
  );
  if (!photo.ok) {
    // A number that is none at all is as unknown here as another school's photo.
    const status = photo.problem.code === 'invalid' ? 404 : PROBLEMS[photo.problem.code].status;
    return new Response(null, { status, headers: { 'Cache-Control': 'no-store' } });
  }
  const { mime, sha256, bytes } = photo.value;
  const headers = {
    ETag: `"${sha256}"`,
    'Cache-Control': 'private, no-cache',
    'Cross-Origin-Resource-Policy': 'same-origin',
  };
  if (!bytes) return new Response(null, { status: 304, headers });
  return new Response(Uint8Array.from(bytes), {
    headers: { ...headers, 'Content-Type': mime, 'Content-Disposition': 'inline' },
  });
}

/** The entity tags in If-None-Match, compared weakly (RFC 9110, 13.1.2). */
const heldBy = (request: Request): readonly string[] =>
  (request.headers.get('if-none-match') ?? '').split(',').map((tag) => tag.trim().replace(/^W\//, ''));
