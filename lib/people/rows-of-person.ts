import type { Tx } from '../db/client';
import type { TableOfPerson } from './tables-of-person';

interface Table {
  findMany(asked: object): Promise<Record<string, unknown>[]>;
  count(asked: object): Promise<number>;
}

function tableOf(tx: Tx, { model }: TableOfPerson): Table {
  const name = `${model.charAt(0).toLowerCase()}${model.slice(1)}` as keyof Tx;
  return tx[name] as unknown as Table;
}

const named = (operatorId: string, personId: string, fields: readonly string[]) => ({
  operatorId,
  OR: fields.map((field) => ({ [field]: personId })),
});

/** How many rows of a table name somebody, in whatever way. */
export const countRows = (
  tx: Tx,
  operatorId: string,
  personId: string,
  table: TableOfPerson,
): Promise<number> =>
  tableOf(tx, table).count({
    where: named(operatorId, personId, [...(table.about ?? []), ...(table.acted ?? [])]),
  });

/** Rows about somebody, whole but for what stays here. */
export async function rowsAbout(tx: Tx, operatorId: string, personId: string, table: TableOfPerson) {
  if (!table.about) return [];
  const rows = await tableOf(tx, table).findMany({ where: named(operatorId, personId, table.about) });
  const without = new Set(['operatorId', ...(table.without ?? [])]);
  return rows.map((row) =>
    Object.fromEntries(
      Object.entries(row).flatMap(([field, value]) => (without.has(field) ? [] : [[field, inJson(value)]])),
    ),
  );
}

/** Rows about something else that somebody entered or ended: which, and in which way. */
export async function rowsActedOn(tx: Tx, operatorId: string, personId: string, table: TableOfPerson) {
  const { acted } = table;
  if (!acted) return [];
  const rows = await tableOf(tx, table).findMany({
    where: named(operatorId, personId, acted),
    select: Object.fromEntries(['id', ...acted].map((field) => [field, true])),
  });
  return rows.map((row) => ({
    id: row.id,
    as: acted.filter((field) => row[field] === personId).map((field) => field.replace(/Id$/, '')),
  }));
}

/** JSON knows no whole numbers of any length; the counter of a passkey is one, of 32 bits (WebAuthn, 6.1). */
const inJson = (value: unknown): unknown => (typeof value === 'bigint' ? Number(value) : value);
