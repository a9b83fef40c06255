/**
 * prisma/schema.prisma and the database that the migrations make agree, both ways: every model, column, type,
 * nullability, unique key and foreign key of the one is in the other. Common practice, no source; needed because
 * `prisma migrate` is not used here (see DEVELOPERS.md).
 */
import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withClient } from '@/lib/operate/connection';
import { freshDatabase, type FreshDatabase } from '../fixtures/database';

interface Column {
  readonly name: string;
  readonly type: string;
  readonly nullable: boolean;
}
interface Table {
  readonly columns: Column[];
  readonly uniques: string[];
  readonly foreignKeys: string[];
}
type Schema = Record<string, Table>;

const SQL_TYPE: Readonly<Record<string, string>> = {
  String: 'text',
  Int: 'integer',
  BigInt: 'bigint',
  Boolean: 'boolean',
  Float: 'double precision',
  Json: 'jsonb',
  Bytes: 'bytea',
};

/** Tables that serve the runner of migrations and are not the application's. */
const NOT_OURS = ['applied_migration'];

let database: FreshDatabase;
let inSchema: Schema;
let inDatabase: Schema;

beforeAll(async () => {
  database = await freshDatabase();
  inSchema = readSchema(await readFile('prisma/schema.prisma', 'utf8'));
  inDatabase = await readDatabase();
});
afterAll(() => database.close());

test('both were read: a few dozen tables, hundreds of columns', () => {
  expect(Object.keys(inSchema).length).toBeGreaterThan(25);
  expect(Object.values(inSchema).flatMap((table) => table.columns).length).toBeGreaterThan(250);
});

test('the same tables', () => {
  expect(Object.keys(inDatabase).sort()).toEqual(Object.keys(inSchema).sort());
});

describe.each(['columns', 'uniques', 'foreignKeys'] as const)('the same %s', (what) => {
  test('table by table', () => {
    const of = (schema: Schema) =>
      Object.fromEntries(Object.entries(schema).map(([name, table]) => [name, table[what]]));
    expect(of(inDatabase)).toEqual(of(inSchema));
  });
});

/** Reads the part of the Prisma language that our schema uses. */
function readSchema(text: string): Schema {
  const models = [...text.matchAll(/^model (\w+) \{\n([\s\S]*?)^\}/gm)].map(([, name = '', body = '']) => ({
    name,
    body,
  }));
  const names = new Set(models.map((model) => model.name));
  const columnOf = new Map<string, Map<string, string>>();
  const tableOf = new Map<string, string>();
  for (const { name, body } of models) {
    tableOf.set(name, /@@map\("(\w+)"\)/.exec(body)?.[1] ?? name);
    const columns = new Map<string, string>();
    for (const [, field = '', rest = ''] of body.matchAll(/^ {2}(\w+)\s+(.*)$/gm)) {
      columns.set(field, /@map\("(\w+)"\)/.exec(rest)?.[1] ?? field);
    }
    columnOf.set(name, columns);
  }
  return Object.fromEntries(
    models.map(({ name, body }) => {
      const columns: Column[] = [];
      const uniques: string[] = [];
      const foreignKeys: string[] = [];
      const own = columnOf.get(name);
      const listed = (fields: string, of = own) =>
        fields.split(',').map((field) => of?.get(field.trim()) ?? field.trim());
      for (const [, field = '', type = '', mark = '', rest = ''] of body.matchAll(
        /^ {2}(\w+)\s+(\w+)(\?|\[\])?(.*)$/gm,
      )) {
        const column = own?.get(field) ?? field;
        if (names.has(type)) {
          const relation = /fields: \[(.*?)\], references: \[(.*?)\].*?map: "(\w+)"/.exec(rest);
          if (!relation) continue;
          const [, fields = '', references = '', key = ''] = relation;
          foreignKeys.push(
            `${key}: ${listed(fields).join(',')} -> ${tableOf.get(type)} ${listed(references, columnOf.get(type)).join(',')}`,
          );
          continue;
        }
        columns.push({ name: column, type: sqlType(type, mark, rest), nullable: mark === '?' });
        const unique = /@unique\(map: "(\w+)"\)/.exec(rest)?.[1];
        if (unique) uniques.push(`${unique}: ${column}`);
        if (/@id\b/.test(rest)) uniques.push(`${tableOf.get(name)}_pkey: ${column}`);
      }
      for (const [, fields = '', key = ''] of body.matchAll(/@@unique\(\[(.*?)\], map: "(\w+)"\)/g)) {
        uniques.push(`${key}: ${listed(fields).join(',')}`);
      }
      for (const [, fields = ''] of body.matchAll(/@@id\(\[(.*?)\]\)/g)) {
        uniques.push(`${tableOf.get(name)}_pkey: ${listed(fields).join(',')}`);
      }
      const byName = (a: Column, b: Column) => (a.name < b.name ? -1 : 1);
      return [
        tableOf.get(name) ?? name,
        { columns: columns.sort(byName), uniques: uniques.sort(), foreignKeys: foreignKeys.sort() },
      ];
    }),
  );
}

function sqlType(type: string, mark: string, rest: string): string {
  const plain = /@db\.Uuid/.test(rest)
    ? 'uuid'
    : /@db\.Date\b/.test(rest)
      ? 'date'
      : type === 'DateTime'
        ? 'timestamp(3) with time zone'
        : (SQL_TYPE[type] ?? `unknown type ${type}`);
  return mark === '[]' ? `${plain}[]` : plain;
}

async function readDatabase(): Promise<Schema> {
  return withClient(database.adminUrl, async (client) => {
    const columns = await client.query<{ table: string; name: string; type: string; nullable: boolean }>(
      `SELECT c.relname AS table, a.attname AS name, format_type(a.atttypid, a.atttypmod) AS type,
         NOT a.attnotnull AND a.attndims = 0 AS nullable
       FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid
       WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND a.attnum > 0 AND NOT a.attisdropped
         AND c.relname <> ALL ($1) ORDER BY 1, 2`,
      [NOT_OURS],
    );
    const keys = await client.query<{
      table: string;
      name: string;
      kind: string;
      columns: string[];
      target: string;
      references: string[];
    }>(
      `SELECT c.relname AS table, k.conname AS name, k.contype AS kind, t.relname AS target,
         ARRAY(SELECT a.attname::text FROM unnest(k.conkey) WITH ORDINALITY u(n, i)
           JOIN pg_attribute a ON a.attrelid = k.conrelid AND a.attnum = u.n ORDER BY i) AS columns,
         ARRAY(SELECT a.attname::text FROM unnest(k.confkey) WITH ORDINALITY u(n, i)
           JOIN pg_attribute a ON a.attrelid = k.confrelid AND a.attnum = u.n ORDER BY i) AS references
       FROM pg_constraint k JOIN pg_class c ON c.oid = k.conrelid LEFT JOIN pg_class t ON t.oid = k.confrelid
       WHERE c.relnamespace = 'public'::regnamespace AND k.contype IN ('u', 'p', 'f') AND c.relname <> ALL ($1)`,
      [NOT_OURS],
    );
    const schema: Schema = {};
    const tableOf = (name: string) => (schema[name] ??= { columns: [], uniques: [], foreignKeys: [] });
    for (const { table, name, type, nullable } of columns.rows)
      tableOf(table).columns.push({ name, type, nullable });
    for (const key of keys.rows) {
      if (key.kind === 'f') {
        tableOf(key.table).foreignKeys.push(
          `${key.name}: ${key.columns.join(',')} -> ${key.target} ${key.references.join(',')}`,
        );
      } else tableOf(key.table).uniques.push(`${key.name}: ${key.columns.join(',')}`);
    }
    for (const table of Object.values(schema)) {
      table.columns.sort((a, b) => (a.name < b.name ? -1 : 1));
      table.uniques.sort();
      table.foreignKeys.sort();
    }
    return schema;
  });
}
