import { signedInRef } from '@/app/_session/actor-ref';
import { malfunctionPaper } from '@/lib/papers/malfunction-paper';
import { readMalfunction } from '@/lib/papers/read-malfunction';
import { answerJson, answerPdf, asked } from '../_answer';

/** Facts of a malfunction or defect: `?writeUp=ID` as PDF, with `&format=json` as data. */
export async function GET(request: Request): Promise<Response> {
  const words = asked(request);
  const report = await readMalfunction(await signedInRef(), { discrepancyId: words.get('writeUp') });
  return words.get('format') === 'json' ? answerJson(report) : answerPdf(report, malfunctionPaper);
}
