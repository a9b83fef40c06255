import { startWalkaround } from '@/lib/walkarounds/start-walkaround';
import { syncJson } from '../_door';

/**
 * A walkaround begun: `{ version: 2, requestId, aircraftId, startedAt, planId }`, where a planId of null is the starting
 * list. Version 1 had no planId.
 */
export const POST = (request: Request): Promise<Response> =>
  syncJson(request, (ref, message) => startWalkaround(ref, message));
