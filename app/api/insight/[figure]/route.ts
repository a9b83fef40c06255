import { signedInRef } from '@/app/_session/actor-ref';
import { csvOf, definitionsCsv, fileNameOf } from '@/lib/insight/csv';
import { pictureOf } from '@/lib/insight/draw';
import { inEnglish } from '@/lib/words/translate';
import { headlineOf, isFigure } from '@/lib/insight/figures';
import { svgOf } from '@/lib/insight/picture';
import { readInsight, type InsightView } from '@/lib/insight/read-insight';
import { PROBLEMS } from '@/lib/problems';
import { dayInWords } from '@/lib/rules/in-words';
import { askedOf } from '@/lib/insight/address';

const NEVER_KEPT = { 'Cache-Control': 'no-store', 'X-Content-Type-Options': 'nosniff' };

/**
 * A figure's rows (`as=csv`) or its chart (`as=svg`) as a file: `/api/insight/availability?as=csv&from=…&until=…`. The
 * figure `definitions` is the sheet with what each one means.
 */
export async function GET(
  request: Request,
  context: { params: Promise<{ figure: string }> },
): Promise<Response> {
  const { figure } = await context.params;
  const asked = new URL(request.url).searchParams;
  const view = await readInsight(await signedInRef(), askedOf(Object.fromEntries(asked)));
  if (!view.ok) {
    const { say, fields, code } = view.problem;
    return plain([say, ...Object.values(fields ?? {}).flat()].join('\n'), PROBLEMS[code].status);
  }
  const file = fileOf(view.value, figure, asked.get('as'));
  if (!file) return plain(PROBLEMS.not_found.say, PROBLEMS.not_found.status);
  return new Response(file.body, {
    headers: {
      ...NEVER_KEPT,
      'Content-Type': file.type,
      'Content-Disposition': `attachment; filename="${file.name}"`,
      // A picture opened by itself runs nothing and fetches nothing.
      'Content-Security-Policy': "default-src 'none'; style-src 'unsafe-inline'",
    },
  });
}

function fileOf(view: InsightView, figure: string, as: string | null) {
  const csv = (body: string) => ({
    body,
    type: 'text/csv; charset=utf-8; header=present',
    name: fileNameOf(view, figure, 'csv'),
  });
  if (figure === 'definitions') return csv(definitionsCsv(view));
  if (!isFigure(figure)) return null;
  if (as !== 'svg') return csv(csvOf(view, figure));
  const picture = pictureOf(view, figure);
  const { number, words } = headlineOf(inEnglish, view, figure);
  const { from, until } = view.period;
  const period = `${dayInWords(from)} to ${dayInWords(until)}, ${view.about}, from what is on record`;
  return picture
    ? {
        body: svgOf(picture, [`${number} ${words}`, period]),
        type: 'image/svg+xml; charset=utf-8',
        name: fileNameOf(view, figure, 'svg'),
      }
    : null;
}

const plain = (text: string, status: number): Response =>
  new Response(`${text}\n`, {
    status,
    headers: { ...NEVER_KEPT, 'Content-Type': 'text/plain; charset=utf-8' },
  });
