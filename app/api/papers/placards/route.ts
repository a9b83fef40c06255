import { signedInRef } from '@/app/_session/actor-ref';
import { placardSheet } from '@/lib/papers/placards';
import { readPlacards } from '@/lib/papers/read-placards';
import { answerPdf, asked } from '../_answer';

/** INOPERATIVE placards of an aircraft at real size: `?aircraft=ID`, and `&placard=ID` for only these. */
export async function GET(request: Request): Promise<Response> {
  const words = asked(request);
  const view = await readPlacards(await signedInRef(), {
    aircraftId: words.get('aircraft'),
    placardIds: words.getAll('placard'),
  });
  return answerPdf(view, placardSheet);
}
