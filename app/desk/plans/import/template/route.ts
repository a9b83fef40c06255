import { csvTemplate } from '@/lib/flights/import/csv-columns';

/** The head of the CSV and one row to write over. It holds nobody's data. */
export const GET = () =>
  new Response(csvTemplate(), {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': 'attachment; filename="planned-flights.csv"',
    },
  });
