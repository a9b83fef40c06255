/**
 * Signed rows are append-only in the database itself (issue 2; AC 120-78B points 6 and 10, from memory): neither the
 * application's role nor the owner of the tables can change, delete or truncate them, and verification notices what was
 * changed by somebody who switched the guards off.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { randomUUID } from 'node:crypto';
import { reviewDirectives } from '@/lib/directives/review-directives';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { placePlacard } from '@/lib/determinations/place-placard';
import { reportFinding } from '@/lib/findings/report-finding';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withClient } from '@/lib/operate/connection';
import { answerFlight } from '@/lib/releases/answer-flight';
import { releaseFlight } from '@/lib/releases/release-flight';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import {
  dayLesson,
  deadLandingLight,
  deferralOf,
  entryOf,
  nickedPropeller,
  signatureOf,
  startOf,
  valueOf,
} from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, NOW, openSchools, PASSWORD, PEOPLE, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let workId: string;
const now = { now: NOW };

/** Tables whose rows are never changed, and a column somebody might like to change. */
const SIGNED = {
  finding: 'words',
  determination: 'statement',
  deferral: 'method_words',
  sign_off: 'certificate_number',
  release: 'outcome',
  request: 'verb',
  audit_row: 'verb',
  compliance: 'approved_by',
  walkaround_plan: 'why',
  vouching: 'statement',
  house_rule: 'why',
  person_event: 'words',
} as const;

beforeAll(async () => {
  ({ database, school } = await openSchools());
  const { powerplant, renter, airframe, dispatcher } = school.people;
  const light = valueOf(await reportFinding(renter, deadLandingLight(school), now));
  const { placardId } = valueOf(await beginDeferral(airframe, deferralOf(light.discrepancyId), now));
  valueOf(await placePlacard(airframe, { requestId: randomUUID(), placardId }, now));
  const asked = valueOf(await answerFlight(dispatcher, dayLesson(school), now));
  valueOf(
    await releaseFlight(
      dispatcher,
      {
        ...dayLesson(school),
        requestId: randomUUID(),
        factsVersion: asked.factsVersion,
        limitsPassedOn: true,
      },
      now,
    ),
  );
  const nick = valueOf(await reportFinding(renter, nickedPropeller(school), now));
  ({ workId } = valueOf(await startWork(powerplant, startOf(nick.discrepancyId), now)));
  const { entryHash } = valueOf(await enterWork(powerplant, entryOf(workId, PEOPLE.powerplant.name), now));
  valueOf(await signWork(powerplant, signatureOf(workId, entryHash), now));
  await keepWalkaroundPlan();
  await keepOfficeRows();
  const review = { requestId: randomUUID(), password: PASSWORD, aircraftId: school.aircraftId };
  valueOf(
    await reviewDirectives(
      school.people.manager,
      { ...review, reviewedOn: '2026-11-20', document: 'A test' },
      now,
    ),
  );
});
afterAll(() => closeSchools(database));

/** A version of a walkaround list, as a row: what is in it is no matter here. */
const keepWalkaroundPlan = () =>
  withClient(database.adminUrl, (client) =>
    client.query(
      `INSERT INTO walkaround_plan (id, operator_id, type_id, version, content, why, made_by_id, made_at)
       SELECT gen_random_uuid(), operator_id, type_id, 7, '{}', 'A test', $2, now() FROM aircraft WHERE id = $1`,
      [school.aircraftId, school.people.manager.personId],
    ),
  );

/** Rows of the office, likewise. */
const keepOfficeRows = () =>
  withClient(database.adminUrl, async (client) => {
    const { personId, operatorId } = school.people.manager;
    await client.query(
      `INSERT INTO house_rule (id, operator_id, rule_id, version, kind, settings, holds, why, made_by_id, made_by_name, made_at)
       VALUES (gen_random_uuid(), $1, gen_random_uuid(), 1, 'a-test', '{}', false, 'A test', $2, 'A test', now())`,
      [operatorId, personId],
    );
    await client.query(
      `INSERT INTO person_event (id, operator_id, person_id, what, on_date, words, by_id, at)
       VALUES (gen_random_uuid(), $1, $2, 'joined', now(), 'A test', $2, now())`,
      [operatorId, personId],
    );
  });

const asApp = (sql: string) =>
  withClient(database.appUrl, async (client) => {
    await client.query('BEGIN');
    await client.query(`SELECT set_config('app.operator_id', $1, true)`, [school.operatorId]);
    return client.query(sql).finally(() => client.query('ROLLBACK'));
  });
const asOwner = (sql: string) => withClient(database.adminUrl, (client) => client.query(sql));

describe.each(Object.entries(SIGNED))('%s', (table, column) => {
  test('has rows that the app sees', async () => {
    expect((await asApp(`SELECT 1 FROM ${table}`)).rowCount).toBeGreaterThan(0);
  });
  test.each([
    ['update', `UPDATE ${table} SET ${column} = ${column}`],
    ['delete', `DELETE FROM ${table}`],
    ['truncate', `TRUNCATE ${table} CASCADE`],
  ])('the app role cannot %s', async (_, sql) => {
    await expect(asApp(sql)).rejects.toThrow(/permission denied/);
  });
  test.each([
    ['update', `UPDATE ${table} SET ${column} = ${column}`],
    ['delete', `DELETE FROM ${table}`],
    ['truncate', `TRUNCATE ${table} CASCADE`],
  ])('nor can the owner %s', async (_, sql) => {
    await expect(asOwner(sql)).rejects.toThrow(/never changed or deleted/);
  });
});

test.each(['walkaround', 'notice'])('not even the owner can truncate %s', async (table) => {
  await expect(asOwner(`TRUNCATE ${table} CASCADE`)).rejects.toThrow(/never changed or deleted/);
  // Its own trigger, not that of a table it takes along.
  const triggers = await asOwner(`SELECT 1 FROM pg_trigger WHERE tgname = '${table}_no_truncate'`);
  expect(triggers.rowCount).toBe(1);
});

test('signed work is frozen although its table takes updates', async () => {
  await expect(
    asApp(`UPDATE maintenance_action SET description = 'other' WHERE id = '${workId}'`),
  ).rejects.toThrow(/closed and is never changed/);
  await expect(
    asApp(`UPDATE maintenance_action SET state = 'started' WHERE id = '${workId}'`),
  ).rejects.toThrow();
});

test('work cannot be called signed without a sign-off', async () => {
  const id = randomUUID();
  await expect(
    withClient(database.adminUrl, async (client) => {
      await client.query(
        `INSERT INTO maintenance_action (id, operator_id, aircraft_id, title, part, jasc, work_kind, swap_only, state,
           started_by_id, started_at) VALUES ($1, $2, $3, 't', 'airframe', '5700', 'minor', false, 'entered', $1, now())`,
        [id, school.operatorId, school.aircraftId],
      );
      await client.query(`UPDATE maintenance_action SET state = 'signed' WHERE id = $1`, [id]);
    }),
  ).rejects.toThrow(/cannot be signed without its sign-off/);
});

test('a closed write-up stays closed', async () => {
  await expect(
    asApp(
      `UPDATE discrepancy SET state = 'open', closed_at = NULL, closed_how = NULL WHERE state = 'closed'`,
    ),
  ).rejects.toThrow(/is closed/);
});

test('a placed placard keeps its history', async () => {
  await expect(asApp(`UPDATE placard SET placed_at = NULL`)).rejects.toThrow(/history of placard/);
});

test('the audit head moves one step at a time', async () => {
  await expect(asApp(`UPDATE audit_head SET seq = seq - 1`)).rejects.toThrow(/only grows/);
  await expect(asApp(`UPDATE audit_head SET seq = seq + 2`)).rejects.toThrow(/only grows/);
});

describe('somebody switches the guards off and changes rows', () => {
  const tamper = (sql: string) =>
    asOwner(`BEGIN; SET LOCAL session_replication_role = replica; ${sql}; COMMIT`);
  const faults = async () => (await verifyAudit(database.adminUrl)).flatMap((report) => report.faults);

  test('nothing is wrong before', async () => {
    expect(await faults()).toEqual([]);
  });
  test('a changed sign-off is named', async () => {
    await tamper(`UPDATE sign_off SET content = jsonb_set(content, '{signer,name}', '"Somebody Else"')`);
    expect(await faults()).toEqual([expect.stringMatching(/^sign-off .* was changed after it was signed$/)]);
  });
  test('a changed release is named', async () => {
    await tamper(`UPDATE release SET facts_version = facts_version + 1`);
    expect(await faults()).toContainEqual(
      expect.stringMatching(/^release .* was changed after it was given$/),
    );
  });
  test('a changed audit row is named', async () => {
    await tamper(`UPDATE audit_row SET verb = 'nothing.happened' WHERE seq = 2`);
    expect(await faults()).toContain('audit row 2 was changed');
  });
  test('a row taken out is noticed', async () => {
    await tamper(`DELETE FROM audit_row WHERE seq = 3`);
    expect(await faults()).toContain('audit rows 3 to 3 are missing');
  });
  test('rows cut off the end are noticed', async () => {
    await tamper(`DELETE FROM audit_row WHERE seq = (SELECT max(seq) FROM audit_row)`);
    expect(await faults()).toContainEqual(expect.stringMatching(/its head says/));
  });
});
