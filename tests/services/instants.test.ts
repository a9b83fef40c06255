/**
 * Instants and dates reach the database as they are, on a server whose own zone is far from UTC (the test server runs
 * in Pacific/Chatham). A write-read round trip would hide the fault of the driver adapter (it writes instants without
 * an offset), so the text in the column is read with SQL. Source: ../shared/style-anchors.md, section 8.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { reportFinding } from '@/lib/findings/report-finding';
import { withClient } from '@/lib/operate/connection';
import { nickedPropeller, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, openSchools, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;

beforeAll(async () => {
  ({ database, school } = await openSchools());
});
afterAll(() => closeSchools(database));

/** What a new session of this account starts with, whatever the helper that connects has set since. */
const zoneAtStart = (url: string) =>
  withClient(url, async (client) => {
    const { rows } = await client.query<{ zone: string }>(
      `SELECT reset_val AS zone FROM pg_settings WHERE name = 'TimeZone'`,
    );
    return rows[0]?.zone;
  });

test.skipIf(process.env['DATABASE_URL'])('the test server really runs in another zone', async () => {
  expect(await zoneAtStart(database.adminUrl)).toBe('Pacific/Chatham');
});

test('the app role starts in UTC on any server', async () => {
  expect(await zoneAtStart(database.appUrl)).toBe('UTC');
});

test('col::text is the instant that was meant', async () => {
  const now = new Date('2026-07-01T03:04:05.678Z');
  const input = { ...nickedPropeller(school), foundAt: '2026-06-30T22:04:05.678-05:00' };
  const { findingId } = valueOf(await reportFinding(school.people.renter, input, { now }));
  const { rows } = await withClient(database.adminUrl, async (client) => {
    await client.query(`SET TimeZone = 'UTC'`);
    return client.query<{ found: string; received: string }>(
      'SELECT found_at::text AS found, received_at::text AS received FROM finding WHERE id = $1',
      [findingId],
    );
  });
  expect(rows[0]).toEqual({ found: '2026-07-01 03:04:05.678+00', received: '2026-07-01 03:04:05.678+00' });
});

test('a date column is the date that was meant', async () => {
  const { rows } = await withClient(database.adminUrl, (client) =>
    client.query<{ made: string }>('SELECT manufactured_on::text AS made FROM aircraft WHERE id = $1', [
      school.aircraftId,
    ]),
  );
  expect(rows[0]?.made).toBe('2001-04-09');
});
