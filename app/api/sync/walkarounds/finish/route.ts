import { finishWalkaround } from '@/lib/walkarounds/finish-walkaround';
import { syncJson } from '../../_door';

/** The answers of the longest list (1600 items) with several readings each; see lib/walkarounds/schema.ts. */
const MOST_BYTES = 512_000;

/**
 * A walkaround ended: `{ version: 2, requestId, walkaroundId, answers, finishedAt }`. Version 1 had `stations` with the
 * answer of each instead of `answers`.
 */
export const POST = (request: Request): Promise<Response> =>
  syncJson(request, (ref, message) => finishWalkaround(ref, message), MOST_BYTES);
