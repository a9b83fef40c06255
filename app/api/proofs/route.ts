import { syncBytes } from '@/app/api/sync/_door';
import { addProof } from '@/lib/people/add-proof';
import { PROOF_MAX_BYTES } from '@/lib/people/proof-file';

/** A proof: the raw bytes of the file; `?about=certificate|mel&id=…&request=…` says what it proves. Sent twice, it is kept once. */
export const POST = (request: Request): Promise<Response> => {
  const asked = new URL(request.url).searchParams;
  return syncBytes(request, PROOF_MAX_BYTES, (ref, bytes) =>
    addProof(ref, {
      requestId: asked.get('request'),
      about: asked.get('about'),
      aboutId: asked.get('id'),
      bytes,
    }),
  );
};
