import { finishWalkaround } from '@/lib/walkarounds/finish-walkaround';
import { syncJson } from '../../_door';

/**
 * A walkaround ended: `{ version: 2, requestId, walkaroundId, answers, finishedAt }`. Version 1 had `stations` with the
 * answer of each instead of `answers`.
 */
export const POST = (request: Request): Promise<Response> =>
  syncJson(request, (ref, message) => finishWalkaround(ref, message));
