import { signedInRef } from '@/app/_session/actor-ref';
import { inspectionEntries } from '@/lib/papers/inspection-entries';
import { readInspectionPaper } from '@/lib/papers/read-inspection';
import { answerPdf, asked } from '../_answer';

/** The signed entries of an inspection (43.11(a)), one for each part: `?id=ID`. */
export async function GET(request: Request): Promise<Response> {
  const view = await readInspectionPaper(await signedInRef(), { inspectionId: asked(request).get('id') });
  return answerPdf(view, inspectionEntries);
}
