import { database } from './client';

/**
 * Operators that have letters due, asked before any operator is known: a function of the database answers, which tells
 * their ids and nothing of the letters (migration 0002).
 */
export async function operatorsWithLettersDue(asOf: Date): Promise<string[]> {
  const client = await database();
  const rows = await client.$queryRaw<{ id: string }[]>`
    SELECT operators_with_letters_due(${asOf.toISOString()}::timestamptz)::text AS id`;
  return rows.map(({ id }) => id);
}
