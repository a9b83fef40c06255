import { reportFinding } from '@/lib/findings/report-finding';
import { syncJson } from '../_door';

/** A finding from the ramp: `{ version: 1, ...ReportFindingInput }`. Sent twice, it is written once. */
export const POST = (request: Request): Promise<Response> =>
  syncJson(request, (ref, message) => reportFinding(ref, message));
