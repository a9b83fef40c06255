import { historyTemplate, isTemplateKind } from '@/lib/carry-over/templates';

/** The columns of a file of write-ups, inspections last done, or a minimum equipment list, and a row to write over. */
export function GET(request: Request): Response {
  const { searchParams } = new URL(request.url);
  const what = searchParams.get('what');
  if (!isTemplateKind(what)) return new Response('There is no such template.', { status: 404 });
  const format = searchParams.get('format') === 'json' ? 'json' : 'csv';
  return new Response(historyTemplate(what, format), {
    headers: {
      'Content-Type':
        format === 'json' ? 'application/json; charset=utf-8' : 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': `attachment; filename="${what}.${format}"`,
      'X-Content-Type-Options': 'nosniff',
    },
  });
}
