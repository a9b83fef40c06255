/**
 * History carried over from paper, on a real PostgreSQL. The engine judges it as anything else: sources are 14 CFR 91.213, 91.405(c),
 * 91.409, 65.83 beside the checks, read as lib/rules/law says; that a record carried over never says more than the same one made
 * here is issue 6 and our own design.
 */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { carryOverLastDone } from '@/lib/carry-over/carry-over-last-done';
import { carryOverWriteUp } from '@/lib/carry-over/carry-over-write-up';
import { readAircraftHistory } from '@/lib/carry-over/read-aircraft-history';
import { readHistory } from '@/lib/carry-over/read-history';
import { beginDeferral } from '@/lib/determinations/begin-deferral';
import { placePlacard } from '@/lib/determinations/place-placard';
import { readWriteUp } from '@/lib/determinations/read-write-up';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { reportFinding } from '@/lib/findings/report-finding';
import { aircraftFacts, readAircraft } from '@/lib/fleet/facts';
import { readBoard } from '@/lib/fleet/read-board';
import { withClient } from '@/lib/operate/connection';
import { disposeDeferral } from '@/lib/inspections/dispose-deferral';
import { verifyOperator } from '@/lib/records/verify';
import { deadLandingLight, deferralOf, problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { deferredLight, lastDoneOnPaper, writeUpOnPaper } from '../fixtures/history';
import { disposalOf, requirementsOf } from '../fixtures/inspections';
import {
  closeSchools,
  foundSchool,
  NOW,
  openSchools,
  PASSWORD,
  PEOPLE,
  type School,
} from '../fixtures/school';

const now = { now: NOW };
let database: FreshDatabase;
let school: School;
let founded = 0;

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`history-${(founded += 1)}`, trainer());
});

type Texts = Readonly<Record<string, string>>;
const sent = (texts: Texts) => ({
  requestId: randomUUID(),
  aircraftId: school.aircraftId,
  ...texts,
  password: PASSWORD,
});
const carry = (texts: Texts, who = school.people.manager) => carryOverWriteUp(who, sent(texts), now);
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
const deferralNow = async () => (await facts()).discrepancies[0]?.deferral;
const faults = () =>
  readInOperator(school.operatorId, async (tx) => (await verifyOperator(tx, school.operatorId)).faults);
const asOwner = (sql: string, values: unknown[] = []) =>
  withClient(database.adminUrl, async (client) => {
    await client.query('BEGIN');
    await client.query('SET LOCAL session_replication_role = replica');
    await client.query(sql, values);
    await client.query('COMMIT');
  });

describe('an open write-up carried over', () => {
  test('counts as one reported here, since the day of the paper, with who vouches for it', async () => {
    const kept = valueOf(
      await carry(writeUpOnPaper({ kind: 'damage', jasc: '6111', severity: 'grounding', words: 'Nick.' })),
    );
    expect(kept).toMatchObject({ severity: 'grounding', deferral: null });
    expect(await outcome()).toBe('no-go');
    const [one] = (await facts()).discrepancies;
    // 2026-11-02 begins at the base (America/Chicago, UTC-6 in November) at 06:00 UTC.
    expect(one).toMatchObject({ reportedAt: '2026-11-02T06:00:00.000Z', kind: 'damage', jasc: '6111' });
    const view = valueOf(
      await readAircraftHistory(school.people.manager, { aircraftId: school.aircraftId }, now),
    );
    expect(view.writeUps).toMatchObject([
      {
        number: kept.number,
        state: 'open',
        deferred: false,
        mark: { by: PEOPLE.manager.name, on: '2026-11-25', source: 'Squawk sheet 41' },
      },
    ]);
    expect(await faults()).toEqual([]);
  });

  test.each([
    // The paper may be stricter than triage, never looser: 91.7(a), our own design.
    ['looks, on paper and by triage', { kind: 'cosmetic', jasc: '5300', severity: 'note' }, 'note', 'go'],
    [
      'looks, but the paper grounds it',
      { kind: 'cosmetic', jasc: '5300', severity: 'grounding' },
      'grounding',
      'no-go',
    ],
    [
      'looks on the propeller are not taken on trust',
      { kind: 'cosmetic', jasc: '6111', severity: 'note' },
      null,
      'no-go',
    ],
    [
      'the paper does not say how severe',
      { kind: 'cosmetic', jasc: '5300', severity: 'not known' },
      null,
      'no-go',
    ],
    [
      'wear is undecided until a mechanic looks',
      { kind: 'wear', jasc: '3244', severity: 'not known' },
      null,
      'no-go',
    ],
  ] as const)('%s', async (_what, change, severity, answer) => {
    expect(valueOf(await carry(writeUpOnPaper(change))).severity).toBe(severity);
    expect(await outcome()).toBe(answer);
  });

  test.each([
    ['found_on', { found_on: '2026-11-26' }, 'not come yet'],
    ['jasc', { jasc: '9999' }, 'no such JASC'],
    ['severity', { kind: 'damage', severity: 'note' }, 'cosmetic'],
    ['severity', { kind: 'wear', severity: 'limiting' }, 'equipment that does not work'],
    ['equipment', { equipment: 'Sun roof' }, 'no line of this name'],
    [
      'how_many',
      { kind: 'inoperative', jasc: '3340', severity: 'limiting', equipment: 'Landing light', how_many: '2' },
      'Only 1',
    ],
    ['document', { document: ' ' }, 'document'],
    ['words', { words: '' }, 'words'],
  ] as const)('refused by %s: %s', async (field, change, words) => {
    const { code, fields } = problemOf(await carry(writeUpOnPaper(change)));
    expect(code).toBe('invalid');
    expect(Object.keys(fields ?? {})).toEqual([field]);
    expect(fields?.[field]?.join()).toContain(words);
    expect((await facts()).discrepancies).toEqual([]);
  });

  test('sent twice it stands once; a wrong password signs nothing; a pilot may not', async () => {
    const input = sent(writeUpOnPaper());
    const first = valueOf(await carryOverWriteUp(school.people.manager, input, now));
    expect(valueOf(await carryOverWriteUp(school.people.manager, input, now))).toEqual(first);
    expect((await facts()).discrepancies).toHaveLength(1);
    const wrong = { ...sent(writeUpOnPaper()), password: 'not this one' };
    expect(problemOf(await carryOverWriteUp(school.people.manager, wrong, now)).code).toBe('wrong_password');
    expect(problemOf(await carry(writeUpOnPaper(), school.people.renter)).code).toBe('not_allowed');
  });
});

describe('a deferral that stands on paper', () => {
  test('with everything told it flies by day with limits, and counts since the day of the paper', async () => {
    expect(await outcome()).toBe('go');
    const kept = valueOf(await carry(deferredLight()));
    expect(kept.deferral).toMatchObject({ placardPlaced: true, missing: null, recordOwed: false });
    expect(await outcome()).toBe('go-with-limits');
    // 91.205(c)(4): at night for hire the landing light has to work, deferred or not.
    expect(await outcome('night-vfr-hire')).toBe('no-go');
    expect(await deferralNow()).toMatchObject({
      basis: '91.213(d)',
      recordedOn: '2026-11-02',
      determination: { known: true, value: { by: { name: 'Otto Birkmoor' }, on: '2026-11-03' } },
    });
    expect(await faults()).toEqual([]);
  });

  test.each([
    // 91.213(d)(4): who determined, when, that it is no hazard, and with what else.
    ['nobody is named', { determined_by: '' }],
    ['the day is not known', { determined_on: '' }],
    ['the certificate is not known', { certificate: 'not known' }],
    ['its number is not known', { certificate_number: '' }],
    ['a mechanic without a rating', { mechanic_ratings: '' }],
    // 65.83.
    ['recent experience not known', { mechanic_recent: '' }],
    ['no recent experience', { mechanic_recent: 'no' }],
    ['a student pilot', { certificate: 'pilot', pilot_grade: 'student', pilot_rated: 'yes' }],
    ['a pilot of a grade not known', { certificate: 'pilot', pilot_grade: '', pilot_rated: 'yes' }],
    ['a pilot rated for something else', { certificate: 'pilot', pilot_grade: 'private', pilot_rated: 'no' }],
    ['a pilot, rating not known', { certificate: 'pilot', pilot_grade: 'private', pilot_rated: '' }],
    ['a repair station, authority not known', { certificate: 'repair station', station_authorised: '' }],
    ['another certificate', { certificate: 'other' }],
    ['the paper does not say that it is no hazard', { no_hazard: '' }],
    ['the paper says that it is a hazard', { no_hazard: 'no' }],
    // 91.213(d)(4) comes after the write-up it is about.
    ['determined before it was recorded', { determined_on: '2026-11-01' }],
    // 91.213(d)(3).
    ['no placard', { placard_in_place: 'no' }],
    ['placard not known', { placard_in_place: '' }],
    ['deactivating was maintenance, and the record is not known', { is_maintenance: 'yes' }],
    ['whether it was maintenance is not known', { is_maintenance: '' }],
    [
      'removed, and the record is signed by nobody known',
      { method: 'removed', record_signed: 'yes', record_authorised: 'yes' },
    ],
    [
      'removed, and whether the signer could is not known',
      { method: 'removed', record_signed: 'yes', record_by: 'Otto Birkmoor, mechanic 1234567' },
    ],
  ] as const)('no go: %s', async (_what, change) => {
    valueOf(await carry(deferredLight(change)));
    expect(await outcome()).toBe('no-go');
  });

  test.each([
    [
      'a private pilot, rated',
      { certificate: 'pilot', pilot_grade: 'private', pilot_rated: 'yes', mechanic_ratings: '' },
    ],
    [
      'a repair station, authorized',
      { certificate: 'repair station', station_authorised: 'yes', mechanic_ratings: '' },
    ],
    [
      'removed, the record signed by somebody who could',
      {
        method: 'removed',
        record_signed: 'yes',
        record_by: 'Otto Birkmoor, mechanic 1234567',
        record_authorised: 'yes',
      },
    ],
    ['alone, so that nothing else had to be counted', { counted_together: '' }],
    ['determined on the day it was recorded', { determined_on: '2026-11-02' }],
  ] as const)('flies with limits: %s', async (_what, change) => {
    valueOf(await carry(deferredLight(change)));
    expect(await outcome()).toBe('go-with-limits');
  });

  test('what the engine says cannot be deferred stays no go, whatever the paper says (91.213(d)(2)(i))', async () => {
    const gauge = { words: 'Oil pressure reads nothing.', jasc: '7931', equipment: 'Oil pressure gauge' };
    valueOf(await carry(deferredLight(gauge)));
    expect(await outcome()).toBe('no-go');
  });

  test.each([
    ['kind', { kind: 'damage', severity: 'grounding' }, ['kind', 'severity']],
    ['severity', { severity: 'grounding' }, ['severity']],
    ['severity not known', { severity: 'not known' }, ['severity']],
    ['equipment', { equipment: '' }, ['equipment']],
    ['how many', { how_many: '' }, ['how_many']],
    [
      'basis, method, words, placard',
      { basis: '', method: '', method_words: '', placard_words: '', placard_location: '' },
      ['basis', 'method', 'method_words', 'placard_words', 'placard_location'],
    ],
    [
      'days to come',
      { determined_on: '2026-11-26', recorded_on: '2026-11-26' },
      ['recorded_on', 'determined_on'],
    ],
    ['recorded before it was found', { recorded_on: '2026-11-01' }, ['recorded_on']],
    ['an item of a list that is not there', { basis: 'mel', mel_item: 'Landing light' }, ['mel_item']],
  ] as const)('refused, nothing kept: %s', async (_what, change, wrong) => {
    const { fields } = problemOf(await carry(deferredLight(change)));
    expect(Object.keys(fields ?? {}).sort()).toEqual([...wrong].sort());
    expect((await facts()).discrepancies).toEqual([]);
  });

  test('the placard counts only where the voucher or the determiner may place one', async () => {
    // A recreational pilot may determine (no student), and is not of the circle that places placards (our strict reading).
    const recreational = {
      certificate: 'pilot',
      pilot_grade: 'recreational',
      pilot_rated: 'yes',
      mechanic_ratings: '',
    };
    const kept = valueOf(await carry(deferredLight(recreational)));
    expect(kept.deferral).toMatchObject({ placardPlaced: false, missing: null });
    expect(await outcome()).toBe('no-go');
    const placard = await readInOperator(school.operatorId, (tx) => tx.placard.findFirstOrThrow({}));
    valueOf(
      await placePlacard(school.people.renter, { requestId: randomUUID(), placardId: placard.id }, now),
    );
    expect(await outcome()).toBe('go-with-limits');
    const other = await foundSchool(`history-placard-${founded}`, trainer());
    school = other;
    expect(
      valueOf(await carry(deferredLight(recreational), school.people.airframe)).deferral?.placardPlaced,
    ).toBe(true);
  });

  describe('deferred anew', () => {
    const discrepancyId = async () => (await facts()).discrepancies[0]?.id ?? '';
    const anew = async (who = school.people.airframe) =>
      beginDeferral(who, deferralOf(await discrepancyId()), now);
    const ends = () => readInOperator(school.operatorId, (tx) => tx.deferralEnd.findMany({}));

    test('refused while the one carried over counts', async () => {
      valueOf(await carry(deferredLight()));
      const { code, say } = problemOf(await anew());
      expect([code, say]).toEqual(['conflict', expect.stringContaining('is deferred already')]);
      expect(await ends()).toEqual([]);
      expect(await outcome()).toBe('go-with-limits');
    });

    test('refused while only its placard is owed: that is placed, not deferred anew', async () => {
      valueOf(await carry(deferredLight({ placard_in_place: 'no' })));
      expect(await outcome()).toBe('no-go');
      expect(problemOf(await anew()).code).toBe('conflict');
      expect(await ends()).toEqual([]);
    });

    test.each([
      ['nobody is named on the paper (91.213(d)(4))', { determined_by: '' }],
      ['no recent experience (65.83)', { mechanic_recent: 'no' }],
      ['no hazard is not told', { no_hazard: '' }],
    ] as const)('%s: the new one begins, the old one is ended with the reason', async (_what, change) => {
      const kept = valueOf(await carry(deferredLight(change)));
      const old = kept.deferral?.deferralId;
      const { deferralId, placardId } = valueOf(await anew());
      expect(await outcome()).toBe('no-go');
      valueOf(await placePlacard(school.people.renter, { requestId: randomUUID(), placardId }, now));
      expect(await outcome()).toBe('go-with-limits');
      // 91.213: the clock runs from the write-up, as before.
      expect(await deferralNow()).toMatchObject({ id: deferralId, recordedOn: '2026-11-02' });
      expect(await ends()).toMatchObject([{ deferralId: old, how: 'does-not-count' }]);
      const view = valueOf(
        await readWriteUp(school.people.airframe, { discrepancyId: await discrepancyId() }, now),
      );
      expect(view.pastDeferrals).toMatchObject([
        { id: old, how: 'does-not-count', words: expect.stringContaining('no hazard') },
      ]);
      const audit = await readInOperator(school.operatorId, (tx) =>
        tx.auditRow.findFirst({ where: { verb: 'deferral.begin' } }),
      );
      expect(audit?.detail).toMatchObject({ deferralId, endedCarriedOver: { deferralId: old } });
      expect(await faults()).toEqual([]);
      // The new one was made here: it is never put aside.
      expect(problemOf(await anew()).code).toBe('conflict');
    });

    test('a refusal of the new one leaves the old one as it was', async () => {
      valueOf(await carry(deferredLight({ determined_by: '' })));
      expect(problemOf(await anew(school.people.stale)).code).toBe('signature_refused');
      expect(await ends()).toEqual([]);
      expect((await deferralNow())?.id).toBeDefined();
    });
  });

  test('two on paper: one of them has to have counted the other', async () => {
    const taxi = {
      words: 'Taxi light is dark.',
      equipment: 'Taxi light',
      document: 'Squawk sheet 43',
      placard_words: 'TAXI LIGHT INOPERATIVE',
    };
    valueOf(await carry(deferredLight({ counted_together: '' })));
    expect(await outcome()).toBe('go-with-limits');
    valueOf(await carry(deferredLight({ ...taxi, counted_together: '' })));
    expect(await outcome()).toBe('no-go');
  });

  test('the later one counted everything that was out', async () => {
    const taxi = {
      words: 'Taxi light is dark.',
      equipment: 'Taxi light',
      document: 'Squawk sheet 43',
      placard_words: 'TAXI LIGHT INOPERATIVE',
    };
    valueOf(await carry(deferredLight({ counted_together: '' })));
    valueOf(await carry(deferredLight({ ...taxi, counted_together: 'yes', determined_on: '2026-11-04' })));
    expect(await outcome()).toBe('go-with-limits');
  });

  test('one of before that was found after the paper’s day is not counted by it; one deferred here since is', async () => {
    const taxi = {
      words: 'Taxi light is dark.',
      equipment: 'Taxi light',
      document: 'Squawk sheet 43',
      placard_words: 'TAXI LIGHT INOPERATIVE',
    };
    valueOf(await carry(deferredLight({ counted_together: 'yes' })));
    valueOf(
      await carry(
        deferredLight({
          ...taxi,
          found_on: '2026-11-10',
          determined_on: '2026-11-10',
          counted_together: 'no',
        }),
      ),
    );
    expect(await outcome()).toBe('no-go');
  });

  test('deferred here before it came: the paper cannot have counted it', async () => {
    const light = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), now));
    const { placardId } = valueOf(
      await beginDeferral(school.people.airframe, deferralOf(light.discrepancyId), now),
    );
    valueOf(await placePlacard(school.people.airframe, { requestId: randomUUID(), placardId }, now));
    expect(await outcome()).toBe('go-with-limits');
    const taxi = {
      words: 'Taxi light is dark.',
      equipment: 'Taxi light',
      placard_words: 'TAXI LIGHT INOPERATIVE',
    };
    valueOf(
      await carryOverWriteUp(school.people.manager, sent(deferredLight(taxi)), {
        now: new Date(NOW.getTime() + 60_000),
      }),
    );
    expect(await outcome()).toBe('no-go');
  });

  test('deferred here after it came: the door asked for both together', async () => {
    valueOf(
      await carry(
        deferredLight({
          words: 'Taxi light is dark.',
          equipment: 'Taxi light',
          placard_words: 'TAXI LIGHT INOPERATIVE',
        }),
      ),
    );
    const later = { now: new Date(NOW.getTime() + 60_000) };
    const light = valueOf(await reportFinding(school.people.renter, deadLandingLight(school), later));
    const alone = await beginDeferral(school.people.airframe, deferralOf(light.discrepancyId), later);
    expect(Object.keys(problemOf(alone).fields ?? {})).toEqual(['together']);
    const both = { ...deferralOf(light.discrepancyId), together: true };
    const { placardId } = valueOf(await beginDeferral(school.people.airframe, both, later));
    valueOf(await placePlacard(school.people.airframe, { requestId: randomUUID(), placardId }, later));
    expect(await outcome()).toBe('go-with-limits');
  });
});

describe('an inspection last done, carried over', () => {
  const carryDone = async (kind: string, texts: Texts, who = school.people.manager) =>
    carryOverLastDone(
      who,
      {
        requestId: randomUUID(),
        requirementId: (await requirementsOf(school)).get(kind),
        ...texts,
        password: PASSWORD,
      },
      now,
    );

  test('takes the place of what stood, with who vouches for it and from which document', async () => {
    valueOf(await carryDone('annual', lastDoneOnPaper()));
    const view = valueOf(
      await readAircraftHistory(school.people.manager, { aircraftId: school.aircraftId }, now),
    );
    expect(view.requirements.find(({ kind }) => kind === 'annual')?.last).toMatchObject({
      on: '2026-11-21',
      ttisTenths: 45_000,
      approvedBy: 'Otto Birkmoor, inspection authorization 1234567',
      authorised: true,
      mark: { by: PEOPLE.manager.name, source: 'Airframe logbook, page 41' },
    });
    expect(await outcome()).toBe('go');
    expect(await faults()).toEqual([]);
  });

  test.each([
    // 43.3, 91.409(a)(1): it counts only when whoever approved it could.
    ['yes', 'go'],
    ['no', 'no-go'],
    ['not known', 'no-go'],
    ['', 'no-go'],
  ] as const)('authorized: "%s" is %s', async (authorised, answer) => {
    valueOf(await carryDone('annual', lastDoneOnPaper({ authorised })));
    expect(await outcome()).toBe(answer);
  });

  test.each([
    ['done_on', 'annual', { done_on: '2026-11-26' }],
    // The fixtures' trainer has 4512.3 h.
    ['hours', 'annual', { hours: '4512.4' }],
    ['hours', 'annual', { hours: 'many' }],
    ['tested_to_ft', 'static-and-altimeter', {}],
    ['new_expiry', 'elt-battery', {}],
    ['new_expiry', 'elt-battery', { new_expiry: '2026-11-21' }],
    ['document', 'annual', { document: '' }],
  ] as const)('refused by %s of %s', async (field, kind, change) => {
    const { fields } = problemOf(await carryDone(kind, lastDoneOnPaper(change)));
    expect(Object.keys(fields ?? {})).toEqual([field]);
  });

  test('a VOR check is made, not carried over (91.171(d): whoever makes it signs it)', async () => {
    expect(problemOf(await carryDone('vor-check', lastDoneOnPaper())).code).toBe('conflict');
  });

  test('an annual done since the deferral of the paper ends it, until it is said what became of it (91.405(c))', async () => {
    const kept = valueOf(await carry(deferredLight()));
    expect(await outcome()).toBe('go-with-limits');
    const { complianceId } = valueOf(await carryDone('annual', lastDoneOnPaper({ done_on: '2026-11-20' })));
    expect(await outcome()).toBe('no-go');
    const disposal = disposalOf(kept.deferral?.deferralId ?? '', { complianceId });
    valueOf(await disposeDeferral(school.people.powerplant, disposal, now));
    expect(await outcome()).toBe('go-with-limits');
  });

  test('one done before the deferral of the paper says nothing of it, whichever is entered first', async () => {
    valueOf(await carryDone('annual', lastDoneOnPaper({ done_on: '2026-11-02', hours: '4490.0' })));
    valueOf(await carry(deferredLight({ determined_on: '2026-11-03' })));
    expect(await outcome()).toBe('go-with-limits');
  });

  test('one done on the very day of it does (strict: which came first is not known)', async () => {
    valueOf(await carryDone('annual', lastDoneOnPaper({ done_on: '2026-11-03', hours: '4490.0' })));
    valueOf(await carry(deferredLight({ determined_on: '2026-11-03' })));
    expect(await outcome()).toBe('no-go');
  });
});

describe('verification', () => {
  test.each([
    ['finding', `words = 'All well.'`, /discrepancy\.words/],
    ['discrepancy', 'vouching_id = NULL', /discrepancy\.vouching_id/],
    ['determination', 'vouching_id = NULL', /vouching_id/],
    ['determination', `person_name = 'Somebody Else'`, /person_name/],
    ['deferral', `recorded_on = '2026-11-20'`, /recorded_on|recordedOn/],
    ['deferral', `basis = 'mel'`, /basis/],
    ['deferral', 'deactivation_is_maintenance = true', /is_maintenance|isMaintenance/],
    ['deferral', 'vouching_id = NULL', /deferral\.vouching_id/],
    ['compliance', `done_on = '2026-11-22'`, /doneOn|done_on/],
    ['compliance', 'vouching_id = NULL', /compliance\.vouching_id/],
    ['vouching', `source = 'Another paper'`, /source/],
  ] as const)('%s: %s is told', async (table, change, names) => {
    valueOf(await carry(deferredLight()));
    const due = await requirementsOf(school);
    valueOf(
      await carryOverLastDone(
        school.people.manager,
        {
          requestId: randomUUID(),
          requirementId: due.get('transponder'),
          ...lastDoneOnPaper(),
          password: PASSWORD,
        },
        now,
      ),
    );
    expect(await faults()).toEqual([]);
    const only = table === 'compliance' ? ' AND vouching_id IS NOT NULL' : '';
    await asOwner(`UPDATE ${table} SET ${change} WHERE operator_id = $1${only}`, [school.operatorId]);
    expect((await faults()).join('\n')).toMatch(names);
  });
});

test('the list of aircraft tells what is lacking', async () => {
  await writeInOperator(school.operatorId, (tx) =>
    tx.aircraft.updateMany({ where: { operatorId: school.operatorId }, data: { withoutMel: null } }),
  );
  valueOf(await carry(writeUpOnPaper()));
  expect(valueOf(await readHistory(school.people.manager, {}, now))).toMatchObject([
    {
      registration: trainer().registration,
      papersMissing: [],
      mel: null,
      carriedOver: 1,
      carriedOpen: 1,
      neverRecorded: 0,
    },
  ]);
});
