/**
 * Papers out of the database, read back with pdftotext. Sources: 14 CFR 43.9(a), 43.11(a) and (b), 91.213(d)(3); issue 4,
 * "Papers". How they look is tested in paper-sheets.test.ts.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readDeferralList } from '@/lib/papers/read-deferrals';
import { readEntryPaper } from '@/lib/papers/read-entry';
import { readInspectionPaper } from '@/lib/papers/read-inspection';
import { readListPaper } from '@/lib/papers/read-list';
import { readMalfunction } from '@/lib/papers/read-malfunction';
import { readPlacards } from '@/lib/papers/read-placards';
import { deferralList } from '@/lib/papers/deferral-list';
import { discrepancyList } from '@/lib/papers/discrepancy-list';
import { inspectionEntries } from '@/lib/papers/inspection-entries';
import { logbookEntry } from '@/lib/papers/logbook-entry';
import { malfunctionFacts } from '@/lib/papers/malfunction-facts';
import { placardSheet } from '@/lib/papers/placards';
import { beginInspection } from '@/lib/inspections/begin-inspection';
import { startWork } from '@/lib/work/start-work';
import { entryOf, problemOf, startOf, valueOf } from '../fixtures/acts';
import type { FreshDatabase } from '../fixtures/database';
import { beginOf, requirementsOf } from '../fixtures/inspections';
import { textOf } from '../fixtures/pdf';
import { closeSchools, NOW, openSchools, PEOPLE, type School } from '../fixtures/school';
import { signEverything, type SignedThings } from '../fixtures/signed-school';

let database: FreshDatabase;
let school: School;
let other: School;
let things: SignedThings;
const now = { now: NOW };

beforeAll(async () => {
  ({ database, school, other } = await openSchools());
  things = await signEverything(school, database);
});
afterAll(() => closeSchools(database));

const expectAll = (text: string, words: readonly string[]) => {
  for (const one of words) expect(text).toContain(one);
};

test('the entry of signed work (43.9(a)), with its check flight (91.407(b))', async () => {
  const view = valueOf(await readEntryPaper(school.people.renter, { workId: things.workId }, now));
  expect(view.signature.changes).toEqual([]);
  expect(view.fileName).toMatch(/^[A-Za-z0-9-]+\.pdf$/);
  expectAll(await textOf(await logbookEntry(view)), [
    entryOf('', '').description,
    'Invented propeller manual, section 4',
    '25 Nov 2026',
    PEOPLE.powerplant.name,
    'M-airframepowerplant',
    'no other (14 CFR 43.9).',
    'Smooth up to red line.',
    view.signature.hash.slice(0, 16),
  ]);
});

test('work that nobody signed has no entry to print', async () => {
  const { workId } = valueOf(await startWork(school.people.powerplant, startOf(things.watchId), now));
  expect(problemOf(await readEntryPaper(school.people.renter, { workId }, now)).code).toBe('conflict');
});

test('the entries of an inspection (43.11(a)): the signed part, and that others are not signed', async () => {
  const view = valueOf(
    await readInspectionPaper(school.people.renter, { inspectionId: things.inspectionId }, now),
  );
  expect(view.parts.map(({ part }) => part)).toEqual(['airframe']);
  expect(view.parts[0]?.signature.changes).toEqual([]);
  expectAll(await textOf(await inspectionEntries(view)), [
    'Annual inspection',
    'The whole aircraft by Appendix D and the maker’s checklist.',
    'Invented maker’s checklist, revision 7',
    'Static rpm: satisfactory, Static rpm: as the manual says',
    '4512.3 h',
    '25 Nov 2026',
    PEOPLE.uncertificated.name,
    'Not signed yet: engine, propeller',
    'Not approved for return to service',
    view.parts[0]?.signature.statement.slice(0, 40) ?? 'no statement',
  ]);
});

test('the list of 43.11(b): signed, dated, given to the owner or operator, placards named', async () => {
  const view = valueOf(await readListPaper(school.people.renter, { listId: things.listId }, now));
  expect(view.signature.changes).toEqual([]);
  expectAll(await textOf(await discrepancyList(view)), [
    'Dated 25 Nov 2026',
    'Invented school first, owner or operator',
    'Unairworthy',
    'LANDING LIGHT INOPERATIVE',
    PEOPLE.uncertificated.name,
  ]);
});

test('placards of live deferrals, all or the one asked for; one of another aircraft is not found', async () => {
  const ask = { aircraftId: school.aircraftId };
  const all = valueOf(await readPlacards(school.people.renter, ask, now));
  expect(all.placards.map(({ wording }) => wording)).toEqual(['LANDING LIGHT INOPERATIVE']);
  expectAll(await textOf(await placardSheet(all)), [
    'LANDING LIGHT INOPERATIVE',
    'Beside the landing light switch',
  ]);
  const one = await readPlacards(school.people.renter, { ...ask, placardIds: [things.placardId] }, now);
  expect(valueOf(one).placards).toHaveLength(1);
  const strange = await readPlacards(school.people.renter, { ...ask, placardIds: [randomUUID()] }, now);
  expect(problemOf(strange).code).toBe('not_found');
});

test('the list to carry aboard asks the rules anew: basis, what is barred, when it ends, who signed', async () => {
  const view = valueOf(await readDeferralList(school.people.renter, { aircraftId: school.aircraftId }, now));
  expect(view.deferrals).toHaveLength(1);
  expectAll(await textOf(await deferralList(view)), [
    'LANDING LIGHT INOPERATIVE',
    'minimum equipment list Invented list, item Landing light, category C',
    'proviso: Not for a night flight for hire. (14 CFR 91.213(a)(5))',
    'operating procedure (O): Brief every pilot.',
    'Maintenance procedure (M): Collar the breaker.',
    'Night VFR, for hire',
    'Extended once, through 15 Dec 2026',
    PEOPLE.airframe.name,
    '0.010 in deep, depth gauge',
    'not more than 0.031 in',
    'Nobody has judged it: it grounds.',
  ]);
});

test('facts of a malfunction fit their form; what the records do not hold is said', async () => {
  const { facts } = valueOf(
    await readMalfunction(school.people.renter, { discrepancyId: things.lightId }, now),
  );
  expect(malfunctionFacts.parse(facts)).toEqual(facts);
  expect(facts).toMatchObject({
    foundOn: '2026-11-25',
    system: { code: expect.stringMatching(/^\d{4}$/) },
    submitter: { name: PEOPLE.renter.name },
  });
  expect(facts.notStated).toEqual(expect.arrayContaining(['engine', 'propeller', 'part.totalTimeHours']));
});

test('another operator finds none of them', async () => {
  const stranger = other.people.manager;
  for (const result of [
    await readEntryPaper(stranger, { workId: things.workId }, now),
    await readInspectionPaper(stranger, { inspectionId: things.inspectionId }, now),
    await readListPaper(stranger, { listId: things.listId }, now),
    await readPlacards(stranger, { aircraftId: school.aircraftId }, now),
    await readDeferralList(stranger, { aircraftId: school.aircraftId }, now),
    await readMalfunction(stranger, { discrepancyId: things.lightId }, now),
  ]) {
    expect(problemOf(result).code).toBe('not_found');
  }
});

test('an inspection of which nothing is signed has no entry to print', async () => {
  const due = await requirementsOf(other);
  const begun = await beginInspection(
    other.people.powerplant,
    beginOf(other, 'hundred-hour', [due.get('hundred-hour') ?? '']),
    now,
  );
  const { inspectionId } = valueOf(begun);
  expect(problemOf(await readInspectionPaper(other.people.renter, { inspectionId }, now)).code).toBe(
    'conflict',
  );
});
