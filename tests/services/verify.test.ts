/**
 * Verification names every signed row that was changed, and the column. Sources: issue 4, "verify shows any row changed
 * since"; RFC 8785 for the hash; AC 120-78B points 6 and 10 (from memory). Somebody who is superuser and has switched the
 * triggers off is the one it has to notice.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { signInspection } from '@/lib/inspections/sign-inspection';
import { startRequirementWork } from '@/lib/inspections/start-requirement-work';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withClient } from '@/lib/operate/connection';
import { contentHash } from '@/lib/records/canonical';
import { addAircraft } from '@/lib/aircraft/add-aircraft';
import { enterLine } from '@/lib/equipment/enter-line';
import { removeLine } from '@/lib/equipment/remove-line';
import { addType } from '@/lib/types/add-type';
import { enterWork } from '@/lib/work/enter-work';
import { signWork } from '@/lib/work/sign-work';
import { entryOf, signatureOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { certify, partSignature, requirementsOf } from '../fixtures/inspections';
import { aircraftOf, enterOf, lineOf, typeOf } from '../fixtures/fleet-office';
import { closeSchools, NOW, openSchools, PASSWORD, PEOPLE, type School } from '../fixtures/school';
import { signEverything, type SignedThings } from '../fixtures/signed-school';

let database: FreshDatabase;
let school: School;
let other: School;
let things: SignedThings;

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  things = await signEverything(school, database);
  await completeTheInspection();
  await answerByWork();
  await vouchForTheFleet();
});
afterAll(() => closeSchools(database));

const later = (minutes: number) => ({ now: new Date(NOW.getTime() + minutes * 60_000) });

/** The last two parts are signed: the annual and the 100-hour have their records. */
async function completeTheInspection(): Promise<void> {
  for (const part of ['powerplant', 'propeller'] as const) {
    const signature = await partSignature(things.inspector, things.inspectionId, part, false);
    valueOf(await signInspection(things.inspector, signature, later(6)));
  }
}

/** An altimeter test by a repair station, which is a record as well. */
async function answerByWork(): Promise<void> {
  const who = things.inspector;
  await certify(school, who, { kind: 'repair-station', number: 'R-1', ratings: ['radio', 'instrument'] });
  const due = await requirementsOf(school);
  const begin = {
    requestId: randomUUID(),
    requirementId: due.get('static-and-altimeter'),
    title: 'Test the altimeter',
    workKind: null,
    preventiveItem: null,
    jasc: null,
    swapOnly: null,
  };
  const { workId } = valueOf(await startRequirementWork(who, begin, later(7)));
  const entry = {
    ...entryOf(workId, PEOPLE.uncertificated.name),
    majorAnswers: {},
    outcome: undefined,
    tests: { staticOpened: false, altitudeError: false, transponderError: false },
    details: { testedToFt: 18_000 },
  };
  const { entryHash } = valueOf(await enterWork(who, entry, later(8)));
  valueOf(await signWork(who, signatureOf(workId, entryHash), later(9)));
}

/** A type, an aircraft and two lines of its equipment list, of which one is taken off again. */
async function vouchForTheFleet(): Promise<void> {
  const { manager } = school.people;
  const { typeId } = valueOf(await addType(manager, typeOf(), later(20)));
  const aircraft = aircraftOf({ typeId, baseId: school.baseId });
  const { aircraftId } = valueOf(await addAircraft(manager, aircraft, later(21)));
  valueOf(await enterLine(manager, enterOf(aircraftId), later(22)));
  const second = enterOf(aircraftId, lineOf({ name: 'Second detector' }));
  const { equipmentId } = valueOf(await enterLine(manager, second, later(23)));
  const gone = {
    requestId: randomUUID(),
    equipmentId,
    why: 'Taken out.',
    source: 'List C',
    password: PASSWORD,
  };
  valueOf(await removeLine(manager, gone, later(24)));
}

const asOwner = (sql: string, values: unknown[] = []) =>
  withClient(database.adminUrl, async (client) => {
    await client.query('BEGIN');
    await client.query('SET LOCAL session_replication_role = replica');
    const result = await client.query(sql, values);
    await client.query('COMMIT');
    return result;
  });
const reportOf = async (operatorId: string) =>
  (await verifyAudit(database.adminUrl)).find((report) => report.operatorId === operatorId);
const faults = async () => (await reportOf(school.operatorId))?.faults ?? ['no report'];

test('what nobody touched has no fault, and every kind of signature was looked at', async () => {
  expect(await faults()).toEqual([]);
  expect((await reportOf(other.operatorId))?.faults).toEqual([]);
  for (const table of [
    'sign_off',
    'check_flight',
    'determination',
    'discrepancy_list',
    'mel_extension',
    'special_flight_permit',
    'permit_inspection',
    'release',
    'flight_acceptance',
    'vouching',
  ]) {
    const { rowCount } = await asOwner(`SELECT 1 FROM ${table} WHERE operator_id = $1`, [school.operatorId]);
    expect({ table, rows: rowCount }).toEqual({ table, rows: expect.any(Number) });
    expect(rowCount).toBeGreaterThan(0);
  }
  expect((await reportOf(school.operatorId))?.signatures).toBeGreaterThanOrEqual(10);
});

/** Table, what is set, which rows, and how the fault begins and names the column. */
const CHANGES: readonly (readonly [string, string, string, RegExp])[] = [
  ['sign_off', `certificate_number = 'M-OTHER'`, 'list_id IS NULL', /^sign-off .*: certificate_number /],
  ['sign_off', `person_name = 'Somebody Else'`, 'list_id IS NULL', /^sign-off .*: person_name /],
  ['sign_off', `certificate_kind = 'pilot'`, 'list_id IS NULL', /^sign-off .*: certificate_kind /],
  ['sign_off', `statement = 'I approve everything.'`, 'list_id IS NULL', /^sign-off .*: statement /],
  ['sign_off', `signed_on = '2026-11-01'`, 'list_id IS NULL', /^sign-off .*: signed_on /],
  ['sign_off', `airworthy = true`, 'list_id IS NOT NULL', /^sign-off .*: airworthy /],
  ['sign_off', `list_id = NULL`, 'list_id IS NOT NULL', /^sign-off .*: list_id /],
  [
    'maintenance_action',
    `description = 'Nothing done.'`,
    `state = 'signed'`,
    /^sign-off .*: work\.description /,
  ],
  [
    'maintenance_action',
    `completed_on = '2026-11-20'`,
    `state = 'signed'`,
    /^sign-off .*: work\.completedOn /,
  ],
  ['maintenance_action', `performed_by = 'Somebody'`, `state = 'signed'`, /^sign-off .*: work\.performedBy /],
  ['maintenance_action', `ttis_tenths = 1`, `state = 'signed'`, /^sign-off .*: work\.ttisTenths /],
  ['maintenance_action', `form_337 = 'added later'`, `state = 'signed'`, /^sign-off .*: work\.form337 /],
  ['maintenance_action', `outcome = NULL`, `state = 'signed'`, /^sign-off .*: work\.outcome /],
  ['inspection', `extent = 'Half of it.'`, 'true', /^sign-off .*: inspection\.extent /],
  ['check_flight', `words = 'Flew badly.'`, 'true', /^check flight .*: words /],
  ['check_flight', `flown_on = '2026-11-26'`, 'true', /^check flight .*: flown_on /],
  ['determination', `measured = '0.001 in'`, `kind = 'within-limits'`, /^determination .*: measured /],
  ['determination', `limit_text = '9 in'`, `kind = 'within-limits'`, /^determination .*: limit_text /],
  ['determination', `limit_source = 'Hearsay'`, `kind = 'within-limits'`, /^determination .*: limit_source /],
  ['determination', `severity = 'note'`, `kind = 'within-limits'`, /^determination .*: severity /],
  ['determination', `statement = 'Fine.'`, `kind = 'no-hazard'`, /^determination .*: statement /],
  ['deferral', `method_words = 'Left as it was.'`, 'true', /^determination .*: deferral\.method_words /],
  ['placard', `wording = 'ALL WELL'`, 'true', /^determination .*: placard\.wording /],
  ['discrepancy_list', `items = '[]'`, 'true', /^discrepancy list .*: items /],
  ['discrepancy_list', `dated = '2026-11-01'`, 'true', /^discrepancy list .*: dated /],
  ['mel_extension', `until_on = '2027-12-15'`, 'true', /^extension .*: until_on /],
  ['mel_extension', `reason = 'None.'`, 'true', /^extension .*: reason /],
  ['special_flight_permit', `limits = '[]'`, 'true', /^special flight permit .*: limits /],
  [
    'special_flight_permit',
    `good_through = '2027-01-01'`,
    'true',
    /^special flight permit .*: good_through /,
  ],
  ['permit_inspection', `statement = 'Not looked at.'`, 'true', /^permit inspection .*: statement /],
  ['compliance', `done_on = '2026-11-26'`, 'hash IS NOT NULL', /^record of compliance .*: done_on /],
  ['compliance', `ttis_tenths = 1`, 'hash IS NOT NULL', /^record of compliance .*: ttis_tenths /],
  ['compliance', `details = '{}'`, 'hash IS NOT NULL', /^record of compliance .*: details /],
  [
    'compliance',
    `was_due_tenths = 1`,
    'inspection_id IS NOT NULL',
    /^record of compliance .*: was_due_tenths /,
  ],
  ['compliance', `ttis_tenths = 1`, 'inspection_id IS NOT NULL', /^record of compliance .*: ttis_tenths /],
  [
    'compliance',
    `new_expiry = '2039-01-01'`,
    'inspection_id IS NOT NULL',
    /^record of compliance .*: new_expiry /,
  ],
  ['compliance', `sign_off_id = NULL`, 'sign_off_id IS NOT NULL', /^record of compliance .*: sign_off_id /],
  ['compliance', `work_id = NULL`, 'work_id IS NOT NULL', /^record of compliance .*: work_id /],
  ['compliance', `done_on = '2026-11-26'`, 'work_id IS NOT NULL', /^record of compliance .*: done_on /],
  ['compliance', `tested_to_ft = 30000`, 'work_id IS NOT NULL', /^record of compliance .*: tested_to_ft /],
  ['deferral', `recorded_on = '2026-11-28'`, 'true', /^determination .*: deferral\.recorded_on /],
  ['deferral', `mel_item_id = NULL`, 'true', /^determination .*: deferral\.mel_item_id /],
  ['deferral', `basis = '91.213(d)'`, 'true', /^determination .*: deferral\.basis /],
  [
    'release',
    `permit_id = (SELECT id FROM special_flight_permit LIMIT 1)`,
    'true',
    /^release .*: permit_id /,
  ],
  ['flight_acceptance', `statement = 'Fine.'`, 'true', /^acceptance .*: statement /],
  ['flight_acceptance', `person_name = 'Somebody Else'`, 'true', /^acceptance .*: person_name /],
  ['flight_acceptance', `certificate_kind = 'student pilot'`, 'true', /^acceptance .*: certificate_kind /],
  ['flight_acceptance', `certificate_number = 'P-OTHER'`, 'true', /^acceptance .*: certificate_number /],
  ['flight_acceptance', `signed_on = '2026-11-01'`, 'true', /^acceptance .*: signed_on /],
  ['flight_acceptance', `signed_at = signed_at + interval '1 minute'`, 'true', /^acceptance .*: signed_at /],
  ['vouching', `statement = 'All fine.'`, 'true', /^record vouched for .*: statement /],
  ['vouching', `source = 'Hearsay'`, 'true', /^record vouched for .*: source /],
  ['vouching', `person_name = 'Somebody Else'`, 'true', /^record vouched for .*: person_name /],
  [
    'vouching',
    `subject_kind = 'paper'`,
    `subject_kind = 'aircraft-type'`,
    /^record vouched for .*: subject_kind /,
  ],
  ['vouching', `signed_on = '2026-11-01'`, 'true', /^record vouched for .*: signed_on /],
  [
    'equipment',
    `installed = 9`,
    'vouching_id IS NOT NULL AND removed_on IS NULL',
    /^record vouched for .*: equipment\.installed /,
  ],
  [
    'equipment',
    `vfr_day_type_design = true`,
    'vouching_id IS NOT NULL AND removed_on IS NULL',
    /^record vouched for .*: equipment\.vfrDayTypeDesign /,
  ],
  [
    'equipment',
    `authority = '{mel}'`,
    'vouching_id IS NOT NULL',
    /^record vouched for .*: equipment\.authority /,
  ],
  [
    'equipment',
    `removed_why = 'Lost.'`,
    'removed_on IS NOT NULL',
    /^record vouched for .*: equipment\.removedWhy /,
  ],
  [
    'aircraft',
    `manufactured_on = '2001-01-01'`,
    'added_at IS NOT NULL',
    /^record vouched for .*: aircraft\.manufacturedOn /,
  ],
  [
    'aircraft',
    `standard_category = false`,
    'added_at IS NOT NULL',
    /^record vouched for .*: aircraft\.standardCategory /,
  ],
  [
    'aircraft_type',
    `certificated_on = '1999-01-01'`,
    'added_at IS NOT NULL',
    /^record vouched for .*: aircraft-type\.certificatedOn /,
  ],
  ['aircraft_type', `seats = 1`, 'added_at IS NOT NULL', /^record vouched for .*: aircraft-type\.seats /],
  ['release', `outcome = 'go-with-limits'`, 'true', /^release .*: outcome /],
  ['release', `arrive_at = arrive_at + interval '1 hour'`, 'true', /^release .*: arrive_at /],
];

describe('one column of one signed table is changed', () => {
  test.each(CHANGES)('%s: %s (%#)', async (table, change, rows, fault) => {
    const column = change.split(' = ')[0] ?? '';
    const where = `operator_id = $1 AND ${rows}`;
    const before = await asOwner(`SELECT id, ${column}::text AS was FROM ${table} WHERE ${where}`, [
      school.operatorId,
    ]);
    expect(before.rowCount).toBeGreaterThan(0);
    await asOwner(`UPDATE ${table} SET ${change} WHERE ${where}`, [school.operatorId]);
    const found = await faults();
    expect(found).toContainEqual(expect.stringMatching(fault));
    expect(found.every((one) => one.includes('is not what was'))).toBe(true);
    // Put back, so that each change is seen for itself.
    const { rows: columns } = await asOwner(
      `SELECT format_type(atttypid, atttypmod) AS type FROM pg_attribute WHERE attrelid = '${table}'::regclass AND attname = '${column}'`,
    );
    for (const { id, was } of before.rows as { id: string; was: string | null }[]) {
      const { type } = columns[0] as { type: string };
      await asOwner(`UPDATE ${table} SET ${column} = $1::text::${type} WHERE id = $2`, [was, id]);
    }
    expect(await faults()).toEqual([]);
  });
});

describe('who hides a change', () => {
  test('by a new hash over the new content is found out by the audit chain', async () => {
    const { rows } = await asOwner(`SELECT id, content, hash FROM sign_off WHERE work_id = $1`, [
      things.workId,
    ]);
    const [row] = rows as { id: string; content: Record<string, unknown>; hash: string }[];
    const forged = { ...row?.content, statement: 'I approve everything.' };
    await asOwner(`UPDATE sign_off SET content = $1, hash = $2, statement = $3 WHERE id = $4`, [
      JSON.stringify(forged),
      contentHash(forged),
      'I approve everything.',
      row?.id,
    ]);
    expect(await faults()).toContainEqual(
      expect.stringMatching(`^sign-off ${row?.id} is not in the audit chain with this content$`),
    );
    await asOwner(`UPDATE sign_off SET content = $1, hash = $2, statement = $3 WHERE id = $4`, [
      JSON.stringify(row?.content),
      row?.hash,
      row?.content['statement'],
      row?.id,
    ]);
    expect(await faults()).toEqual([]);
  });

  test('by giving the signature to another person is found out by the audit chain', async () => {
    await asOwner(`UPDATE sign_off SET person_id = $1 WHERE work_id = $2`, [
      school.people.airframe.personId,
      things.workId,
    ]);
    expect(await faults()).toEqual([expect.stringMatching(/^sign-off .*: person_id is not who signed$/)]);
    await asOwner(`UPDATE sign_off SET person_id = $1 WHERE work_id = $2`, [
      school.people.powerplant.personId,
      things.workId,
    ]);
  });

  test('by another moment for a check flight is found out by the audit chain', async () => {
    await asOwner(`UPDATE check_flight SET signed_at = signed_at + interval '1 minute' WHERE work_id = $1`, [
      things.workId,
    ]);
    expect(await faults()).toEqual([
      expect.stringMatching(/^check flight .*: its moment is not that of the audit/),
    ]);
    await asOwner(`UPDATE check_flight SET signed_at = signed_at - interval '1 minute' WHERE work_id = $1`, [
      things.workId,
    ]);
  });

  test('a changed content is named by itself: its columns prove nothing any more', async () => {
    await asOwner(`UPDATE determination SET content = content || '{"by": "X"}' WHERE kind = 'no-hazard'`);
    expect(await faults()).toEqual([
      expect.stringMatching(/^determination .* was changed after it was signed$/),
    ]);
    expect((await reportOf(other.operatorId))?.faults).toEqual([]);
  });
});
