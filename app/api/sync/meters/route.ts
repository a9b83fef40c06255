import { readMetersIn, readMetersOut } from '@/lib/releases/record-meters';
import { syncJson } from '../_door';

/**
 * Hobbs and tach from the ramp: `{ version: 2, requestId, releaseId, moment: 'out' | 'in', hobbsTenths, tachTenths, readAt }`.
 * Sent twice, they are written once.
 */
export const POST = (request: Request): Promise<Response> =>
  syncJson(request, (ref, message) =>
    message.moment === 'in' ? readMetersIn(ref, message) : readMetersOut(ref, message),
  );
