import { addObservation } from '@/lib/findings/add-observation';
import { syncJson } from '../_door';

/** A write-up seen again on the ramp: `{ version: 2, ...AddObservationInput }`. Sent twice, it is written once. */
export const POST = (request: Request): Promise<Response> =>
  syncJson(request, (ref, message) => addObservation(ref, message));
