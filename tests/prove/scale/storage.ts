/** What the largest size weighs: the figures that docs/scale.md rests on. */
import { withClient, withDatabase } from '@/lib/operate/connection';
import { say } from '@/lib/operate/say.mjs';
import { totals, type Size } from './sizes';

export async function tellStorage(serverUrl: string, size: Size): Promise<void> {
  const { writeUps } = totals(size);
  await withClient(withDatabase(serverUrl, `scale_${size.name}`), async (client) => {
    const { rows } = await client.query<{ name: string; rows: string; table: string; indexes: string }>(
      `SELECT relname AS name, n_live_tup::text AS rows, pg_table_size(relid)::text AS table, pg_indexes_size(relid)::text AS indexes
         FROM pg_stat_user_tables WHERE schemaname = 'public' ORDER BY pg_total_relation_size(relid) DESC LIMIT 10`,
    );
    const { rows: whole } = await client.query<{ bytes: string }>(
      'SELECT pg_database_size(current_database())::text AS bytes',
    );
    const bytes = Number(whole[0]!.bytes);
    say(
      `The database of ${size.name}: ${(bytes / 1e9).toFixed(2)} GB, ${Math.round(bytes / writeUps)} bytes a write-up in all.`,
    );
    for (const { name, rows: count, table, indexes } of rows) {
      const each = Math.round((Number(table) + Number(indexes)) / Math.max(1, Number(count)));
      say(
        `  ${name}: ${count} rows, ${(Number(table) / 1e6).toFixed(0)} MB and ${(Number(indexes) / 1e6).toFixed(0)} MB of indexes, ${each} bytes a row`,
      );
    }
  });
}
