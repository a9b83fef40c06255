import { database } from './client';

/** Every operator's id, and nothing else of them: a function of the database tells it (migration 0006). */
export async function operatorsToSweep(): Promise<string[]> {
  const client = await database();
  const rows = await client.$queryRaw<{ id: string }[]>`SELECT operators_to_sweep()::text AS id`;
  return rows.map(({ id }) => id);
}
