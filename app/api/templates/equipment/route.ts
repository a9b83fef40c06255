import { equipmentTemplate } from '@/lib/equipment/columns-of-file';

/** The columns of a file of equipment and two rows to write over. It holds nobody's data. */
export function GET(request: Request): Response {
  const isJson = new URL(request.url).searchParams.get('format') === 'json';
  return new Response(equipmentTemplate(isJson ? 'json' : 'csv'), {
    headers: {
      'Content-Type': isJson ? 'application/json; charset=utf-8' : 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': `attachment; filename="equipment.${isJson ? 'json' : 'csv'}"`,
      'X-Content-Type-Options': 'nosniff',
    },
  });
}
