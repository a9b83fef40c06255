import { signedInRef } from '@/app/_session/actor-ref';
import { deferralList } from '@/lib/papers/deferral-list';
import { readDeferralList } from '@/lib/papers/read-deferrals';
import { answerPdf, asked } from '../_answer';

/** Deferred and watched items of an aircraft, to carry aboard: `?aircraft=ID`. */
export async function GET(request: Request): Promise<Response> {
  const view = await readDeferralList(await signedInRef(), { aircraftId: asked(request).get('aircraft') });
  return answerPdf(view, deferralList);
}
