import { signedInRef } from '@/app/_session/actor-ref';
import { discrepancyList } from '@/lib/papers/discrepancy-list';
import { readListPaper } from '@/lib/papers/read-list';
import { answerPdf, asked } from '../_answer';

/** The signed list of discrepancies (43.11(b)): `?id=ID`. */
export async function GET(request: Request): Promise<Response> {
  const view = await readListPaper(await signedInRef(), { listId: asked(request).get('id') });
  return answerPdf(view, discrepancyList);
}
