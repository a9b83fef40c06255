/**
 * What the rules are told is what the rows say: an aircraft written to rows and read back gives the same facts, and a
 * column nobody has filled becomes an unknown that names itself, never a default (binding rule).
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readInOperator } from '@/lib/db/scope';
import { aircraftFacts, basePlace, readAircraft } from '@/lib/fleet/facts';
import { readBoard } from '@/lib/fleet/read-board';
import { answersByOperation } from '@/lib/rules/answer';
import { withClient } from '@/lib/operate/connection';
import { valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;

beforeAll(async () => {
  ({ database, school } = await openSchools());
});
afterAll(() => closeSchools(database));

const read = () =>
  readInOperator(school.operatorId, async (tx) => {
    const row = await readAircraft(tx, school.operatorId, school.aircraftId);
    if (!row) throw new Error('the aircraft is not there');
    return aircraftFacts(row);
  });

const withoutIds = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (key, inner: unknown) => (key === 'id' ? undefined : inner)));

const sortedByName = <T extends { name: string }>(rows: readonly T[]) =>
  [...rows].sort((a, b) => a.name.localeCompare(b.name));

test('rows give back the facts they were made from', async () => {
  const facts = await read();
  const meant = trainer();
  expect(withoutIds({ ...facts, equipment: [], requirements: [], papers: [] })).toEqual(
    withoutIds({ ...meant, equipment: [], requirements: [], papers: [] }),
  );
  expect(withoutIds(sortedByName(facts.equipment))).toEqual(withoutIds(sortedByName(meant.equipment)));
  expect(withoutIds(sortedByName(facts.requirements))).toEqual(withoutIds(sortedByName(meant.requirements)));
  const byKind = (rows: typeof facts.papers) => [...rows].sort((a, b) => a.kind.localeCompare(b.kind));
  expect(withoutIds(byKind(facts.papers))).toEqual(withoutIds(byKind(meant.papers)));
});

/** Every nullable column that decides something, and a word of how the answer names its absence. */
const DECIDING: readonly [sql: string, names: RegExp][] = [
  ['UPDATE aircraft SET standard_category = NULL', /standard category/],
  ['UPDATE aircraft SET manufactured_on = NULL', /manufactured/],
  ['UPDATE aircraft SET ttis_tenths = NULL', /total time in service/],
  ['UPDATE aircraft SET directives_reviewed_on = NULL', /airworthiness directives/],
  ['UPDATE aircraft_type SET certificated_on = NULL', /certification date/],
  ['UPDATE aircraft_type SET certificated_under_part23 = NULL', /part 23/],
  ['UPDATE aircraft_type SET max_takeoff_weight_lb = NULL', /takeoff weight/],
  ['UPDATE aircraft_type SET cooling = NULL', /cooling/],
  ['UPDATE aircraft_type SET altitude_engine = NULL', /supercharged/],
  ['UPDATE aircraft_type SET retractable_gear = NULL', /landing gear/],
  ['UPDATE aircraft_type SET fuel_tanks = NULL', /fuel tanks/],
  ['UPDATE aircraft_type SET seats = NULL', /seats/],
  [`UPDATE paper SET aboard = NULL WHERE kind = 'registration'`, /registration is aboard/],
  [
    `UPDATE paper SET expires = NULL, valid_through = NULL WHERE kind = 'registration'`,
    /registration is valid/,
  ],
  [`DELETE FROM paper WHERE kind = 'airworthiness-certificate'`, /airworthiness certificate/],
  [`DELETE FROM equipment WHERE function = 'airspeed-indicator'`, /airspeed indicator/],
];

test.each(DECIDING)('%s gives no go by day and names it', async (sql, names) => {
  await change(sql);
  try {
    const board = valueOf(await readBoard(school.people.dispatcher, {}, { now: NOW }));
    const day = board.rows[0]?.cells.find((cell) => cell.id === 'day-vfr-private');
    expect(day?.outcome).toBe('no-go');
    const lines = await readInOperator(school.operatorId, async (tx) => {
      const row = await readAircraft(tx, school.operatorId, school.aircraftId);
      if (!row) throw new Error('the aircraft is not there');
      return answersByOperation(aircraftFacts(row), basePlace(row.base), '2026-11-25', NOW.toISOString())[0]
        ?.answer.lines;
    });
    const missing = (lines ?? []).flatMap((line) => (line.missing ? [line.missing] : []));
    expect(missing.join('; ').toLowerCase()).toMatch(names);
  } finally {
    await restore();
  }
});

const SAVED = ['aircraft', 'aircraft_type', 'paper', 'equipment'];

async function change(sql: string): Promise<void> {
  await withClient(database.adminUrl, async (client) => {
    for (const table of SAVED) await client.query(`CREATE TABLE saved_${table} AS SELECT * FROM ${table}`);
    await client.query(sql);
  });
}

async function restore(): Promise<void> {
  await withClient(database.adminUrl, async (client) => {
    await client.query('SET session_replication_role = replica');
    for (const table of SAVED) {
      await client.query(`DELETE FROM ${table}`);
      await client.query(`INSERT INTO ${table} SELECT * FROM saved_${table}`);
      await client.query(`DROP TABLE saved_${table}`);
    }
  });
}
