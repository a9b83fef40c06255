import { database } from './client';

/** The migrations this program was written for; a test holds the list against prisma/migrations. */
export const NEEDED_MIGRATIONS = [
  '0001_first',
  '0002_ramp',
  '0003_bench',
  '0004_desk',
  '0005_deliveries',
  '0006_opening_day',
  '0007_trust',
] as const;

/**
 * Those the database does not have yet. One it has and this program does not know is no fault: migrations only add, and
 * while a new version is rolled out the old one runs on the new tables (docs/operate.md).
 */
export async function missingMigrations(): Promise<string[]> {
  const client = await database();
  const rows = await client.$queryRaw<{ name: string }[]>`SELECT name FROM applied_migration`;
  const applied = new Set(rows.map(({ name }) => name));
  return NEEDED_MIGRATIONS.filter((name) => !applied.has(name));
}
