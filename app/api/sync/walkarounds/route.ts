import { startWalkaround } from '@/lib/findings/start-walkaround';
import { syncJson } from '../_door';

/** A walkaround begun: `{ version: 1, requestId, aircraftId, startedAt }`. */
export const POST = (request: Request): Promise<Response> =>
  syncJson(request, (ref, message) => startWalkaround(ref, message));
