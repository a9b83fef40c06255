/**
 * One clock dates what is written: the database's, which all servers share. A server whose own clock jumped must not date a
 * signature into another day, nor give a deferral days more (issue 7, "clock jump"). Common practice, no source.
 */
import type pg from 'pg';
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest';
import { withClient } from '@/lib/operate/connection';
import { reportFinding } from '@/lib/findings/report-finding';
import { nickedPropeller, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;

beforeAll(async () => {
  ({ database, school } = await openSchools());
});
afterEach(() => {
  vi.useRealTimers();
});
afterAll(() => closeSchools(database));

const asked = <T extends pg.QueryResultRow>(sql: string, values: unknown[] = []) =>
  withClient(database.adminUrl, async (client) => (await client.query<T>(sql, values)).rows);
const databaseTime = async () =>
  (await asked<{ at: Date }>('SELECT clock_timestamp() AS at'))[0]!.at.getTime();

test.each([26, -26, 73, -400])(
  'a server %s hours off writes down the time of the database',
  async (hours) => {
    const input = nickedPropeller(school);
    const before = await databaseTime();
    vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + hours * 3_600_000 });
    valueOf(await reportFinding(school.people.renter, input));
    vi.useRealTimers();
    const rows = await asked<{ at: Date; opened: Date; received: Date }>(
      `SELECT a.at, d.opened_at AS opened, f.received_at AS received FROM audit_row a
       JOIN finding f ON f.id = a.request_id JOIN discrepancy d ON d.finding_id = f.id WHERE a.request_id = $1`,
      [input.requestId],
    );
    const [written] = rows;
    expect(rows).toHaveLength(1);
    // The columns keep whole milliseconds.
    expect(written!.at.getTime()).toBeGreaterThanOrEqual(before - 1);
    expect(written!.at.getTime()).toBeLessThanOrEqual(await databaseTime());
    expect([written!.opened, written!.received]).toEqual([written!.at, written!.at]);
  },
);

test('no row of the audit chain is dated before the one it follows, many writers at once', async () => {
  const inputs = Array.from({ length: 12 }, () => nickedPropeller(school));
  for (const result of await Promise.all(inputs.map((input) => reportFinding(school.people.renter, input)))) {
    valueOf(result);
  }
  const rows = await asked<{ at: Date }>('SELECT at FROM audit_row WHERE operator_id = $1 ORDER BY seq', [
    school.operatorId,
  ]);
  const times = rows.map(({ at }) => at.getTime());
  expect(times.length).toBeGreaterThanOrEqual(inputs.length);
  expect(times).toEqual([...times].sort((a, b) => a - b));
});
