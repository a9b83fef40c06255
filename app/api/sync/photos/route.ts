import { addPhoto, PHOTO_MAX_BYTES } from '@/lib/findings/add-photo';
import { syncBytes } from '../_door';

/** A photo as raw bytes, with `x-request-id` and `x-finding-id` beside it. Sent twice, it is kept once. */
export const POST = (request: Request): Promise<Response> =>
  syncBytes(request, PHOTO_MAX_BYTES, (ref, bytes) =>
    addPhoto(ref, {
      requestId: request.headers.get('x-request-id') ?? '',
      findingId: request.headers.get('x-finding-id') ?? '',
      bytes,
    }),
  );
