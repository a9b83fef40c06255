/** History and minimum equipment lists from files, papers, directives and limits, on a real PostgreSQL. Issue 6; paragraphs beside the checks. */
import { randomUUID } from 'node:crypto';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { addUsualSet } from '@/lib/carry-over/add-usual-set';
import { carryOverWriteUp } from '@/lib/carry-over/carry-over-write-up';
import { checkHistory } from '@/lib/carry-over/check-history';
import { importHistory } from '@/lib/carry-over/import-history';
import { readAircraftHistory } from '@/lib/carry-over/read-aircraft-history';
import { historyTemplate } from '@/lib/carry-over/templates';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { addDirective } from '@/lib/directives/add-directive';
import { endDirective } from '@/lib/directives/end-directive';
import { reviewDirectives } from '@/lib/directives/review-directives';
import { aircraftFacts, readAircraft } from '@/lib/fleet/facts';
import { readBoard } from '@/lib/fleet/read-board';
import { addLimit } from '@/lib/limits/add-limit';
import { endLimit } from '@/lib/limits/end-limit';
import { checkMel } from '@/lib/mel/check-mel';
import { endMel } from '@/lib/mel/end-mel';
import { importMel } from '@/lib/mel/import-mel';
import { melLetter } from '@/lib/mel/mel-letter';
import { noMel } from '@/lib/mel/no-mel';
import { withClient } from '@/lib/operate/connection';
import { addProof } from '@/lib/people/add-proof';
import { readProof } from '@/lib/people/read-proof';
import { addPaper } from '@/lib/papers-aboard/add-paper';
import { verifyOperator } from '@/lib/records/verify';
import { problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import {
  deferredLight,
  historyFile,
  lastDoneFile,
  melFile,
  melItemOf,
  writeUpOnPaper,
} from '../fixtures/history';
import { closeSchools, foundSchool, NOW, openSchools, PASSWORD, type School } from '../fixtures/school';

const now = { now: NOW };
let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  process.env['PHOTO_DIR'] = await mkdtemp(path.join(tmpdir(), 'wheelchock-letters-'));
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`history-import-${(founded += 1)}`, trainer());
});

const signed = (input: object) => ({ requestId: randomUUID(), ...input, password: PASSWORD });
const manager = () => school.people.manager;
const outcome = async (kind = 'day-vfr-private') => {
  const board = valueOf(await readBoard(school.people.dispatcher, {}, now));
  return board.rows[0]?.cells.find(({ id }) => id === kind)?.outcome;
};
const facts = () =>
  readInOperator(school.operatorId, async (tx) => {
    const row = await readAircraft(tx, school.operatorId, school.aircraftId);
    if (!row) throw new Error('no aircraft');
    return aircraftFacts(row);
  });
const faults = () =>
  readInOperator(school.operatorId, async (tx) => (await verifyOperator(tx, school.operatorId)).faults);

describe('a file of write-ups', () => {
  const two = () => historyFile([writeUpOnPaper(), deferredLight()]);

  test('a look changes nothing; taken in, every row counts; the same file again adds nothing', async () => {
    const look = valueOf(await checkHistory(manager(), two(), now));
    expect(look.rows.map(({ does }) => does)).toEqual(['add', 'add']);
    expect((await facts()).discrepancies).toEqual([]);
    const done = valueOf(await importHistory(manager(), signed(two()), now));
    expect(done).toMatchObject({ added: 2, unchanged: 0 });
    expect(done.numbers).toHaveLength(2);
    expect(await outcome()).toBe('go-with-limits');
    expect(valueOf(await importHistory(manager(), signed(two()), now))).toMatchObject({
      added: 0,
      unchanged: 2,
    });
    expect((await facts()).discrepancies).toHaveLength(2);
    const view = valueOf(await readAircraftHistory(manager(), { aircraftId: school.aircraftId }, now));
    expect(view.writeUps.map(({ deferred }) => deferred)).toEqual([false, true]);
    expect(await faults()).toEqual([]);
  });

  test('one wrong row, and none goes in; every fault is named by row and column', async () => {
    const rows = [
      writeUpOnPaper(),
      { ...writeUpOnPaper({ words: 'Another.' }), aircraft: 'N0NONE' },
      writeUpOnPaper({ words: 'Third.', found_on: 'yesterday', jasc: '12' }),
      writeUpOnPaper(),
    ];
    const problem = problemOf(await importHistory(manager(), signed(historyFile(rows)), now));
    expect(problem.code).toBe('invalid');
    expect(Object.keys(problem.fields ?? {}).sort()).toEqual([
      'rows.3.aircraft',
      'rows.4.found_on',
      'rows.4.jasc',
      'rows.5.words',
    ]);
    expect((await facts()).discrepancies).toEqual([]);
  });

  test.each([
    ['no rows', 'aircraft,found_on,words,kind,jasc,severity,document\r\n'],
    ['a column is missing', 'aircraft,found_on\r\nN0,2026-11-01\r\n'],
    ['no JSON', '{'],
  ] as const)('refused whole: %s', async (_what, text) => {
    const format = text === '{' ? 'json' : 'csv';
    const { fields } = problemOf(
      await importHistory(manager(), signed({ ...historyFile(), format, text }), now),
    );
    expect(Object.keys(fields ?? {})).toEqual(['text']);
  });

  test('the template is read by the reader, and names what it cannot know', async () => {
    for (const format of ['csv', 'json'] as const) {
      const file = { ...historyFile(), format, text: historyTemplate('write-ups', format) };
      const look = valueOf(await checkHistory(manager(), file, now));
      // The template's aircraft is invented.
      expect(look.errors.map(({ field }) => field)).toEqual(['aircraft']);
    }
  });

  test('closed since, it does not come back with the same file', async () => {
    valueOf(await importHistory(manager(), signed(historyFile()), now));
    await writeInOperator(school.operatorId, (tx) =>
      tx.discrepancy.updateMany({
        where: { operatorId: school.operatorId },
        data: { state: 'closed', closedAt: NOW, closedHow: 'repaired' },
      }),
    );
    expect(valueOf(await importHistory(manager(), signed(historyFile()), now))).toMatchObject({ added: 0 });
  });
});

describe('a file of inspections last done', () => {
  test('by kind or by name; rows are held against each other; again adds nothing', async () => {
    const file = lastDoneFile([
      { inspection: 'annual', done_on: '2026-11-20', hours: '4500.0' },
      { inspection: 'transponder', done_on: '2026-11-20', hours: '4500.0' },
    ]);
    expect(valueOf(await checkHistory(manager(), file, now)).rows.map(({ does }) => does)).toEqual([
      'add',
      'add',
    ]);
    expect(valueOf(await importHistory(manager(), signed(file), now))).toMatchObject({ added: 2 });
    expect(valueOf(await importHistory(manager(), signed(file), now))).toMatchObject({
      added: 0,
      unchanged: 2,
    });
    expect(await faults()).toEqual([]);
  });

  test('hours that run backwards within the file, an unknown name, and a VOR check are refused by row', async () => {
    const file = lastDoneFile([
      { done_on: '2026-11-20', hours: '4500.0' },
      { done_on: '2026-11-21', hours: '4499.9' },
      { inspection: 'wing walk' },
      { inspection: 'vor-check' },
    ]);
    const { fields } = problemOf(await importHistory(manager(), signed(file), now));
    expect(Object.keys(fields ?? {}).sort()).toEqual(['rows.3.hours', 'rows.4.inspection', 'rows.5.row']);
  });
});

describe('a minimum equipment list', () => {
  const take = (rows = [melItemOf()], change: object = {}) =>
    importMel(manager(), signed(melFile(school.aircraftId, rows, change)), now);
  const mel = async () => {
    const { mel: fact } = await facts();
    if (!fact.known || fact.value === null) throw new Error('no list');
    return fact.value;
  };

  test('taken in with its letter it is in force, and the very same again adds nothing (91.213(a)(1), (2))', async () => {
    const look = valueOf(await checkMel(manager(), melFile(school.aircraftId), now));
    expect(look).toMatchObject({ unchanged: false, replaces: null, loses: [], errors: [] });
    const first = valueOf(await take());
    expect(await mel()).toMatchObject({
      reference: 'Invented list 2',
      letterAboard: { known: true, value: true },
      enforceCategories: true,
      items: [{ title: 'Landing light', category: 'C' }],
    });
    expect(valueOf(await take())).toEqual({ ...first, unchanged: true });
    expect(await readInOperator(school.operatorId, (tx) => tx.mel.count())).toBe(1);
    expect(await faults()).toEqual([]);
  });

  test('the letter itself is uploaded, and everybody may see it (91.213(a)(2): aboard)', async () => {
    const { melId } = valueOf(await take());
    const { dispatcher, renter } = school.people;
    const bytes = Buffer.from('%PDF-1.4\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n');
    const letter = { about: 'mel', aboutId: melId, bytes };
    const requestId = randomUUID();
    expect(problemOf(await addProof(dispatcher, { ...letter, requestId }, now)).code).toBe('not_allowed');
    const elsewhere = await foundSchool(`history-letter-${founded}`, trainer());
    expect(problemOf(await addProof(elsewhere.people.manager, { ...letter, requestId }, now)).code).toBe(
      'not_found',
    );
    const { proofId } = valueOf(await addProof(manager(), { ...letter, requestId }, now));
    expect(valueOf(await addProof(manager(), { ...letter, requestId }, now))).toEqual({ proofId });
    const view = valueOf(await readAircraftHistory(manager(), { aircraftId: school.aircraftId }, now));
    expect(view.mel?.proofs).toEqual([
      { id: proofId, fileName: 'letter-of-authorization.pdf', addedAt: NOW.toISOString() },
    ]);
    expect(valueOf(await readProof(renter, { proofId }, now)).bytes).toEqual(Uint8Array.from(bytes));
    // A newer list has its own letter.
    valueOf(await take([melItemOf({ category: 'B' })], { revision: 'revision 3' }));
    const newer = valueOf(await readAircraftHistory(manager(), { aircraftId: school.aircraftId }, now));
    expect(newer.mel?.proofs).toEqual([]);
    expect(await faults()).toEqual([]);
  });

  test('a newer one takes the place of the older, which stays', async () => {
    valueOf(await take());
    valueOf(await take([melItemOf({ category: 'B' })], { revision: 'revision 3' }));
    expect((await mel()).items).toMatchObject([{ category: 'B' }]);
    const lists = await readInOperator(school.operatorId, (tx) =>
      tx.mel.findMany({ orderBy: { addedAt: 'asc' } }),
    );
    expect(lists.map(({ endedAt }) => endedAt !== null).sort()).toEqual([false, true]);
  });

  const underList = (change: Readonly<Record<string, string>> = {}) =>
    deferredLight({
      basis: 'mel',
      mel_item: 'Landing light',
      found_on: '2026-11-20',
      determined_on: '2026-11-20',
      ...change,
    });
  const carry = async (texts: Readonly<Record<string, string>>) =>
    valueOf(await carryOverWriteUp(manager(), signed({ aircraftId: school.aircraftId, ...texts }), now));

  test.each([
    // Repair category C: ten days, the day of recording excluded (lib/rules/advisory, its copy named there).
    ['just within ten days', { found_on: '2026-11-15', determined_on: '2026-11-15' }, 'go-with-limits'],
    ['one day over', { found_on: '2026-11-14', determined_on: '2026-11-14' }, 'no-go'],
    [
      'recorded within, though found before',
      { found_on: '2026-11-14', recorded_on: '2026-11-15', determined_on: '2026-11-15' },
      'go-with-limits',
    ],
  ] as const)('a deferral of before under it: %s', async (_what, change, answer) => {
    valueOf(await take());
    await carry(underList(change));
    expect(await outcome()).toBe(answer);
  });

  test('one of before under (d) does not stand while a list is in force (91.213(a)(5))', async () => {
    valueOf(await take());
    await carry(deferredLight());
    expect(await outcome()).toBe('no-go');
  });

  test('procedures: not known is not done (91.213(a)(5))', async () => {
    valueOf(await take([melItemOf({ maintenance_procedure: 'Collar the breaker.' })]));
    await carry(underList());
    expect(await outcome()).toBe('no-go');
    school = await foundSchool(`history-procedures-${founded}`, trainer());
    valueOf(await take([melItemOf({ maintenance_procedure: 'Collar the breaker.' })]));
    await carry(underList({ procedures_done: 'yes' }));
    expect(await outcome()).toBe('go-with-limits');
  });

  test('a newer list that says the same keeps a deferral, one that says anything else does not', async () => {
    valueOf(await take());
    const { number } = await carry(underList());
    expect(await outcome()).toBe('go-with-limits');
    valueOf(await take([melItemOf()], { revision: 'revision 3' }));
    expect(await outcome()).toBe('go-with-limits');
    const other = [melItemOf({ proviso: 'Not at night.' })];
    const look = valueOf(
      await checkMel(manager(), melFile(school.aircraftId, other, { revision: 'revision 4' }), now),
    );
    expect(look.loses).toEqual([number]);
    valueOf(await take(other, { revision: 'revision 4' }));
    expect(await outcome()).toBe('no-go');
    expect(await faults()).toEqual([]);
  });

  test.each([
    ['rows.2.equipment', [melItemOf({ equipment: 'Sun roof' })]],
    ['rows.2.category', [melItemOf({ category: 'E' })]],
    ['rows.2.days_for_a', [melItemOf({ days_for_a: '3' })]],
    ['rows.2.required_for_dispatch', [melItemOf({ required_for_dispatch: '2' })]],
    ['rows.2.allowed_night', [melItemOf({ allowed_night: '' })]],
    ['rows.3.title', [melItemOf(), melItemOf()]],
  ] as const)('refused by %s, nothing taken in', async (field, rows) => {
    const { fields } = problemOf(await take([...rows]));
    expect(Object.keys(fields ?? {})).toEqual([field]);
    expect(await readInOperator(school.operatorId, (tx) => tx.mel.count())).toBe(0);
  });

  test.each([
    ['enforceCategories', { enforceCategories: '' }],
    ['letterAboard', { letterAboard: '' }],
    ['letterReference', { letterReference: '' }],
    ['letterIssuedOn', { letterIssuedOn: '2026-11-26' }],
    ['extensionReference', { extensionCategories: ['C'] }],
    ['extensionCategories', { extensionReference: 'Paragraph 4' }],
  ] as const)('the head is refused by %s', async (field, change) => {
    expect(Object.keys(problemOf(await take([melItemOf()], change)).fields ?? {})).toEqual([field]);
  });

  test('the letter, the end, and none: each signed, in this order', async () => {
    const { melId } = valueOf(await take([melItemOf()], { letterAboard: 'not-known' }));
    expect((await mel()).letterAboard.known).toBe(false);
    const letter = { melId, letterReference: 'Letter 8', letterIssuedOn: '', letterAboard: 'yes' };
    valueOf(await melLetter(manager(), signed(letter), now));
    expect((await mel()).letterAboard).toEqual({ known: true, value: true });
    const none = { aircraftId: school.aircraftId, source: 'Records' };
    expect(problemOf(await noMel(manager(), signed(none), now)).code).toBe('conflict');
    valueOf(await endMel(manager(), signed({ melId, why: 'Given back.', source: 'Letter 9' }), now));
    // Nobody has said what holds now: both ways of 91.213 are closed.
    expect((await facts()).mel.known).toBe(false);
    expect(problemOf(await melLetter(manager(), signed(letter), now)).code).toBe('conflict');
    valueOf(await noMel(manager(), signed(none), now));
    expect((await facts()).mel).toEqual({ known: true, value: null });
    expect(await faults()).toEqual([]);
  });
});

test.each([
  ['mel', 'letter_aboard = false', /mel\.letter_aboard/],
  ['mel', 'enforce_categories = false', /mel\.enforce_categories/],
  ['mel_item', 'allowed_night = false', /mel\.items/],
] as const)('verification tells %s: %s', async (table, change, names) => {
  valueOf(await importMel(manager(), signed(melFile(school.aircraftId)), now));
  expect(await faults()).toEqual([]);
  await withClient(database.adminUrl, (client) =>
    client.query(`UPDATE ${table} SET ${change} WHERE operator_id = $1`, [school.operatorId]),
  );
  expect((await faults()).join('\n')).toMatch(names);
});

describe('papers, directives, limits, what recurs', () => {
  const clear = (table: 'paper' | 'requirement') =>
    foundSchool(`history-${table}-${founded}`, {
      ...trainer(),
      ...(table === 'paper' ? { papers: [] } : { requirements: [] }),
    });
  const paper = (change: object = {}) =>
    signed({
      aircraftId: school.aircraftId,
      kind: 'registration',
      reference: 'N0 certificate',
      expires: true,
      validThrough: '2030-01-31',
      issuedOn: '2023-01-10',
      aboard: true,
      ...change,
    });

  test('the four papers entered one by one let it go (91.203(a), 91.9(b))', async () => {
    school = await clear('paper');
    expect(await outcome()).toBe('no-go');
    valueOf(await addPaper(manager(), paper(), now));
    const other = { expires: false, validThrough: null, issuedOn: null, reference: 'Invented' };
    for (const kind of ['airworthiness-certificate', 'flight-manual', 'weight-and-balance']) {
      expect(await outcome()).toBe('no-go');
      valueOf(await addPaper(manager(), paper({ ...other, kind }), now));
    }
    expect(await outcome()).toBe('go');
    expect(problemOf(await addPaper(manager(), paper(), now)).code).toBe('conflict');
    expect(await faults()).toEqual([]);
  });

  test.each([
    // 47.40(a): seven years after the last day of the month of issue, 2030-01-31 at most.
    ['validThrough', { validThrough: '2030-02-01' }],
    ['validThrough', { validThrough: null }],
    ['issuedOn', { issuedOn: null }],
    ['issuedOn', { issuedOn: '2026-11-26', validThrough: '2030-01-31' }],
  ] as const)('a registration is refused by %s', async (field, change) => {
    school = await clear('paper');
    expect(Object.keys(problemOf(await addPaper(manager(), paper(change), now)).fields ?? {})).toEqual([
      field,
    ]);
  });

  test('the usual set goes in at once, with the intervals of the regulation, and asks for what is not known', async () => {
    school = await clear('requirement');
    const kinds = ['annual', 'hundred-hour', 'transponder', 'elt-battery'];
    const set = { requestId: randomUUID(), aircraftId: school.aircraftId, kinds, batteryThrough: '' };
    expect(Object.keys(problemOf(await addUsualSet(manager(), set, now)).fields ?? {})).toEqual([
      'batteryThrough',
    ]);
    const whole = { ...set, batteryThrough: '2027-05-31' };
    expect(valueOf(await addUsualSet(manager(), whole, now)).added).toHaveLength(4);
    // 91.409(a): 12 calendar months; 91.409(b): 100 hours; 91.413(a): 24 calendar months; 91.207(c)(2): the date marked.
    expect(
      (await facts()).requirements
        .map(({ kind, intervalMonths, intervalTenths, fixedExpiry }) => [
          kind,
          intervalMonths,
          intervalTenths,
          fixedExpiry,
        ])
        .toSorted(),
    ).toEqual([
      ['annual', 12, null, null],
      ['elt-battery', null, null, '2027-05-31'],
      ['hundred-hour', null, 1000, null],
      ['transponder', 24, null, null],
    ]);
    const again = { ...whole, requestId: randomUUID() };
    expect(Object.keys(problemOf(await addUsualSet(manager(), again, now)).fields ?? {})).toEqual(['kinds']);
  });

  test('directives: nobody has gone through them is no go; signed it is known (39.3, 91.403(a))', async () => {
    await writeInOperator(school.operatorId, (tx) =>
      tx.aircraft.updateMany({
        where: { operatorId: school.operatorId },
        data: { directivesReviewedOn: null },
      }),
    );
    expect((await facts()).directives.known).toBe(false);
    const light = school.equipment.get('landing-light');
    const directive = {
      requestId: randomUUID(),
      aircraftId: school.aircraftId,
      number: 'Invented 1',
      title: 'Light',
      equipmentId: light,
      requiresOperable: true,
    };
    valueOf(await addDirective(school.people.airframe, directive, now));
    const twice = { ...directive, requestId: randomUUID() };
    expect(
      Object.keys(problemOf(await addDirective(school.people.airframe, twice, now)).fields ?? {}),
    ).toEqual(['number']);
    const none = { ...directive, requestId: randomUUID(), number: 'Invented 2', equipmentId: null };
    expect(
      Object.keys(problemOf(await addDirective(school.people.airframe, none, now)).fields ?? {}),
    ).toEqual(['equipmentId']);
    const review = {
      aircraftId: school.aircraftId,
      reviewedOn: '2026-11-26',
      document: 'List of directives',
    };
    expect(
      Object.keys(problemOf(await reviewDirectives(manager(), signed(review), now)).fields ?? {}),
    ).toEqual(['reviewedOn']);
    valueOf(await reviewDirectives(manager(), signed({ ...review, reviewedOn: '2026-11-25' }), now));
    expect((await facts()).directives).toMatchObject({ known: true, value: [{ number: 'Invented 1' }] });
    // 91.213(d)(2)(iv): what a directive requires to work cannot be deferred, on paper or here.
    valueOf(
      await carryOverWriteUp(manager(), signed({ aircraftId: school.aircraftId, ...deferredLight() }), now),
    );
    expect(await outcome()).toBe('no-go');
    const end = signed({ directiveId: directive.requestId, why: 'Superseded.', reference: 'Invented 3' });
    valueOf(await endDirective(school.people.airframe, end, now));
    expect(await outcome()).toBe('go-with-limits');
    expect(await faults()).toEqual([]);
  });

  test('limits: digits are moved, never calculated; ended they judge no more and stay', async () => {
    const limit = {
      requestId: randomUUID(),
      aircraftId: school.aircraftId,
      measurement: 'propeller-nick-depth',
      min: '',
      max: '0.031',
      source: 'Propeller manual, chapter 4',
      sourceDate: '2026-01-01',
    };
    for (const [field, change] of [
      ['max', { max: '' }],
      ['max', { max: '0.0314' }],
      ['max', { min: '0.040' }],
      ['measurement', { measurement: 'length of the day' }],
      ['sourceDate', { sourceDate: '2026-11-26' }],
      ['source', { source: '' }],
    ] as const) {
      const wrong = await addLimit(manager(), { ...limit, ...change, requestId: randomUUID() }, now);
      expect(Object.keys(problemOf(wrong).fields ?? {})).toEqual([field]);
    }
    const { limitId } = valueOf(await addLimit(manager(), limit, now));
    const row = () =>
      readInOperator(school.operatorId, (tx) => tx.storedLimit.findFirstOrThrow({ where: { id: limitId } }));
    expect(await row()).toMatchObject({ unit: 'thousandth-inch', min: null, max: 31, endedAt: null });
    valueOf(await endLimit(manager(), signed({ limitId, why: 'Newer manual.' }), now));
    expect((await row()).endedAt).toEqual(NOW);
    const view = valueOf(await readAircraftHistory(manager(), { aircraftId: school.aircraftId }, now));
    expect(view.limits).toEqual([]);
    expect(problemOf(await endLimit(manager(), signed({ limitId, why: 'Again.' }), now)).code).toBe(
      'conflict',
    );
  });
});
