import { type ActorRef } from '../../access/actor';
import { type CallOptions } from '../../access/service';
import { PROBLEMS, Refusal, type Problem } from '../../problems';
import { exportFile, type ExportFormat } from './write-file';

const FILE = /^([a-z-]+)\.(csv|json)$/;

/** Never kept by anything in between: it is one operator's, and as old as the moment it was asked for. */
const HEADERS = { 'Cache-Control': 'no-store', 'X-Content-Type-Options': 'nosniff' };

/** A file of an export as an answer. `refused` says how a refusal is told; in plain words unless said. */
export async function answerExport(
  ref: ActorRef | null,
  file: string,
  options: CallOptions = {},
  refused: (problem: Problem) => Response = inPlainWords,
): Promise<Response> {
  const [, set = '', format] = FILE.exec(file) ?? [];
  if (!format) return refused(new Refusal('not_found').problem);
  const result = await exportFile(ref, set, format as ExportFormat, options);
  if (!result.ok) return refused(result.problem);
  const { body, type, fileName } = result.value;
  return new Response(body, {
    headers: {
      ...HEADERS,
      'Content-Type': type,
      'Content-Disposition': `attachment; filename="${fileName}"`,
    },
  });
}

const inPlainWords = ({ code, say }: Problem): Response =>
  new Response(`${say}\n`, {
    status: PROBLEMS[code].status,
    headers: { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8' },
  });
