import { signedInRef } from '@/app/_session/actor-ref';
import { answerExport } from '@/lib/feeds/export/answer-export';

/** A set as a file, for somebody who is signed in: `write-ups.csv`, `releases.json`, `everything.json`. */
export async function GET(_request: Request, { params }: { params: Promise<{ file: string }> }) {
  return answerExport(await signedInRef(), (await params).file);
}
