import { addPhoto, PHOTO_MAX_BYTES } from '@/lib/photos/add-photo';
import { syncBytes, syncForm } from '../_door';

/**
 * A photo. Version 2 is a form: `about`, JSON of `{ version: 2, requestId, findingId, marks, sha256 }`, and `photo`, the
 * file. Version 1 was the raw bytes with `x-request-id` and `x-finding-id` beside them. Sent twice, it is kept once.
 */
export const POST = (request: Request): Promise<Response> =>
  request.headers.get('content-type')?.startsWith('multipart/')
    ? syncForm(request, PHOTO_MAX_BYTES, (ref, { requestId, findingId, marks, sha256 }, bytes) =>
        addPhoto(ref, { requestId: text(requestId), findingId: text(findingId), bytes, marks, sha256 }),
      )
    : syncBytes(request, PHOTO_MAX_BYTES, (ref, bytes) =>
        addPhoto(ref, {
          requestId: request.headers.get('x-request-id') ?? '',
          findingId: request.headers.get('x-finding-id') ?? '',
          bytes,
        }),
      );

/** What is no text is no number of anything; the service says so. */
const text = (value: unknown): string => (typeof value === 'string' ? value : '');
