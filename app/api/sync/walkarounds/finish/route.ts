import { finishWalkaround } from '@/lib/findings/finish-walkaround';
import { syncJson } from '../../_door';

/** A walkaround ended: `{ version: 1, requestId, walkaroundId, stations }`. */
export const POST = (request: Request): Promise<Response> =>
  syncJson(request, (ref, message) => finishWalkaround(ref, message));
