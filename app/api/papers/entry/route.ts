import { signedInRef } from '@/app/_session/actor-ref';
import { logbookEntry } from '@/lib/papers/logbook-entry';
import { readEntryPaper } from '@/lib/papers/read-entry';
import { answerPdf, asked } from '../_answer';

/** The signed entry of a piece of work (43.9): `?work=ID`. */
export async function GET(request: Request): Promise<Response> {
  const view = await readEntryPaper(await signedInRef(), { workId: asked(request).get('work') });
  return answerPdf(view, logbookEntry);
}
