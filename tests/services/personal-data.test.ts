/**
 * A copy of one's data, erasing what the law lets be erased, and traces with their time. Source: issue 6 ("Personal data:
 * export and erase what law lets be erased, retention per 91.417"); 14 CFR 43.9(a)(4) for what stays in an entry.
 */
import { randomUUID } from 'node:crypto';
import { mkdtemp, readdir, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { readInOperator, writeInOperator } from '@/lib/db/scope';
import { operatorsToSweep } from '@/lib/db/operators-to-sweep';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withClient } from '@/lib/operate/connection';
import { addProof } from '@/lib/people/add-proof';
import { choosePasswordByLink } from '@/lib/people/by-link';
import { erasePerson } from '@/lib/people/erase-person';
import { exportPersonalData } from '@/lib/people/export-personal';
import { invitePerson } from '@/lib/people/invite-person';
import { leavePerson, returnPerson } from '@/lib/people/leave-and-return';
import { readPeople } from '@/lib/people/read-people';
import { readPerson } from '@/lib/people/read-person';
import { readProof } from '@/lib/people/read-proof';
import { sweepTraces, TRACE_DAYS } from '@/lib/people/sweep-traces';
import { TABLES_OF_PERSON } from '@/lib/people/tables-of-person';
import { problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import {
  closeSchools,
  foundSchool,
  NOW,
  openSchools,
  PASSWORD,
  PEOPLE,
  type School,
} from '../fixtures/school';
import { signEverything } from '../fixtures/signed-school';

let database: FreshDatabase;
let signed: School;
let school: School;
let other: School;
let schools = 0;
const now = { now: NOW };
const DAY = 86_400_000;
const later = (ms: number) => new Date(NOW.getTime() + ms);

beforeAll(async () => {
  process.env['PHOTO_DIR'] = await mkdtemp(path.join(tmpdir(), 'wheelchock-personal-'));
  process.env['NEXTAUTH_SECRET'] ??= 'a secret for tests only, of enough characters';
  ({ database, school: signed, other } = await openSchools());
  await signEverything(signed, database);
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  schools += 1;
  school = await foundSchool(`personal-${schools}`, trainer());
});

const asOwner = async (sql: string, values: unknown[] = []) =>
  (await withClient(database.adminUrl, (client) => client.query<Record<string, unknown>>(sql, values))).rows;
const leave = async (personId: string, of = school) =>
  valueOf(
    await leavePerson(
      of.people.manager,
      { requestId: randomUUID(), personId, leftOn: '2026-11-25' },
      { now: later(3_600_000) },
    ),
  );
const erasureOf = (personId: string, some: object = {}) => ({
  requestId: randomUUID(),
  personId,
  askedOn: '2026-11-25',
  words: 'Asked by letter.',
  understood: true,
  password: PASSWORD,
  ...some,
});

describe('which tables say who', () => {
  test('every column that names a person is in the list, so that a copy and an erasure forget none', async () => {
    const schema = await readFile('prisma/schema.prisma', 'utf8');
    const found: string[] = [];
    for (const [, model = '', body = ''] of schema.matchAll(/^model (\w+) \{\n([\s\S]*?)^\}/gm)) {
      for (const [, field = ''] of body.matchAll(/^ {2}(\w+) +String\?? .*@db\.Uuid/gm)) {
        if (/(^by|By|^person|^pilot|^dispatcher)Id$/.test(field)) found.push(`${model}.${field}`);
      }
    }
    const listed = TABLES_OF_PERSON.flatMap(({ model, about = [], acted = [] }) =>
      [...about, ...acted].map((field) => `${model}.${field}`),
    );
    expect(listed.sort()).toEqual(found.sort());
    expect(found.length).toBeGreaterThan(60);
  });

  test('and each can be read and counted', async () => {
    valueOf(await exportPersonalData(school.people.manager, {}, now));
  });
});

describe('a copy', () => {
  test('of one’s own: whole rows, without what guards the way in', async () => {
    const { powerplant } = signed.people;
    const copy = valueOf(await exportPersonalData(powerplant, {}, now));
    expect(copy.person).toMatchObject({ name: PEOPLE.powerplant.name, email: 'powerplant@first.example' });
    expect(copy.about['SignOff']?.rows.length).toBeGreaterThan(0);
    expect(copy.about['Certificate']?.rows).toHaveLength(1);
    expect(copy.about['AuditRow']?.rows.length).toBeGreaterThan(0);
    const [{ hash } = {}] = await asOwner('SELECT password_hash AS hash FROM person WHERE id = $1', [
      powerplant.personId,
    ]);
    const text = JSON.stringify(copy);
    expect(text).not.toContain(String(hash));
    expect(text).not.toMatch(/sealed|sha256.*token|passwordHash/i);
  });

  test('with a passkey, whose counter is no number of JSON’s', async () => {
    const { renter } = school.people;
    await writeInOperator(school.operatorId, (tx) =>
      tx.secondFactor.create({
        data: {
          id: randomUUID(),
          operatorId: school.operatorId,
          personId: renter.personId,
          kind: 'passkey',
          name: 'Phone',
          credentialId: randomUUID(),
          publicKey: 'key',
          signCount: 7n,
          addedAt: NOW,
        },
      }),
    );
    const copy = valueOf(await exportPersonalData(renter, {}, now));
    expect(copy.about['SecondFactor']?.rows[0]).toMatchObject({ name: 'Phone', signCount: 7 });
    expect(JSON.stringify(copy)).not.toContain('credentialId');
  });

  test('of somebody else only for a manager, and of no other school', async () => {
    const { renter, manager, student } = school.people;
    expect(valueOf(await exportPersonalData(renter, { personId: renter.personId }, now)).person['name']).toBe(
      PEOPLE.renter.name,
    );
    expect(problemOf(await exportPersonalData(renter, { personId: student.personId }, now)).code).toBe(
      'not_allowed',
    );
    expect(
      valueOf(await exportPersonalData(manager, { personId: renter.personId }, now)).person['name'],
    ).toBe(PEOPLE.renter.name);
    const theirs = { personId: other.people.renter.personId };
    expect(problemOf(await exportPersonalData(manager, theirs, now)).code).toBe('not_found');
  });
});

describe('erasing', () => {
  test('of a mechanic who signed: the row is nameless, the entries keep the name and verify', async () => {
    const { powerplant, manager } = signed.people;
    const { personId } = powerplant;
    await leave(personId, signed);
    const before = valueOf(await readPerson(manager, { personId }, { now: later(3_600_000) }));
    expect(before.erasure?.signed.records).toBeGreaterThan(0);
    expect(before.erasure?.kept.map(({ cite }) => cite)).toContain('14cfr43.9(a)(4)');

    valueOf(await erasePerson(manager, erasureOf(personId), { now: later(3_600_000) }));

    const [row] = await asOwner(
      'SELECT name, email, roles, password_set_at, home_base_id, left_on IS NOT NULL AS left FROM person WHERE id = $1',
      [personId],
    );
    expect(row).toEqual({
      name: 'Erased person',
      email: `erased-${personId}@erased.invalid`,
      roles: [],
      password_set_at: null,
      home_base_id: null,
      left: true,
    });
    const entries = await asOwner(
      'SELECT DISTINCT person_name, certificate_number FROM sign_off WHERE person_id = $1',
      [personId],
    );
    expect(entries).toEqual([
      { person_name: PEOPLE.powerplant.name, certificate_number: 'M-airframepowerplant' },
    ]);
    // The number stands in signed entries, so it stays on the certificate as well.
    expect(await asOwner('SELECT number FROM certificate WHERE person_id = $1', [personId])).toEqual([
      { number: 'M-airframepowerplant' },
    ]);
    expect((await verifyAudit(database.adminUrl)).flatMap(({ faults }) => faults)).toEqual([]);
    const [kept] = await asOwner('SELECT kept, erased, words FROM personal_erasure WHERE person_id = $1', [
      personId,
    ]);
    expect(kept?.['kept']).toContainEqual(
      expect.objectContaining({ table: 'SignOff', cite: '14cfr43.9(a)(4)' }),
    );
    expect(JSON.stringify(kept)).not.toContain(PEOPLE.powerplant.name);
    const listed = valueOf(await readPeople(manager, {}, now)).people.find(({ id }) => id === personId);
    expect(listed).toMatchObject({ state: 'erased', name: 'Erased person' });
  });

  test('of one who signed nothing: name, address, secrets, letters and proofs are nowhere any more', async () => {
    const { manager } = school.people;
    const folder = await mkdtemp(path.join(tmpdir(), 'wheelchock-personal-mail-'));
    process.env['MAIL_OUTBOX_DIR'] = folder;
    process.env['NEXTAUTH_URL'] = 'https://wheelchock.school.example';
    const invited = valueOf(
      await invitePerson(
        manager,
        {
          requestId: randomUUID(),
          name: 'Perpetua Vanishby',
          email: 'perpetua@vanishby.example',
          roles: ['pilot'],
          homeBaseId: '',
          handedOver: 'mail',
        },
        now,
      ),
    );
    delete process.env['MAIL_OUTBOX_DIR'];
    const { personId } = invited;
    const { operatorId } = school;
    const certificateId = randomUUID();
    await writeInOperator(operatorId, async (tx) => {
      await tx.certificate.create({
        data: {
          id: certificateId,
          operatorId,
          personId,
          kind: 'pilot',
          number: 'VANISH-77',
          grade: 'private',
          ratings: [],
        },
      });
      await tx.secondFactor.create({
        data: {
          id: randomUUID(),
          operatorId,
          personId,
          kind: 'totp',
          name: 'Phone',
          sealedSecret: 'v1.vanish',
          addedAt: NOW,
          confirmedAt: NOW,
        },
      });
      await tx.recoveryCode.create({
        data: { id: randomUUID(), operatorId, personId, codeSha256: 'x'.repeat(64), madeAt: NOW },
      });
      await tx.session.create({
        data: {
          id: randomUUID(),
          operatorId,
          personId,
          beganAt: NOW,
          lastSeenAt: NOW,
          expiresAt: later(DAY),
          device: 'Vanish browser',
          secondFactor: 'none',
        },
      });
    });
    const PDF = Buffer.from('%PDF-1.4\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n');
    const { proofId } = valueOf(
      await addProof(
        manager,
        { requestId: randomUUID(), about: 'certificate', aboutId: certificateId, bytes: PDF },
        now,
      ),
    );
    await leave(personId);
    const files = async () =>
      (await readdir(process.env['PHOTO_DIR'] ?? '', { recursive: true })).filter(
        (name) => name.includes(proofId) && name.endsWith('.pdf'),
      );
    expect(await files()).toHaveLength(1);

    valueOf(await erasePerson(manager, erasureOf(personId), { now: later(3_600_000) }));

    expect(await files()).toEqual([]);
    expect(problemOf(await readProof(manager, { proofId }, now)).code).toBe('not_found');
    const tables = await asOwner(
      `SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE'`,
    );
    expect(tables.length).toBeGreaterThan(40);
    for (const { name } of tables) {
      const rows = await asOwner(
        `SELECT count(*)::int AS found FROM "${String(name)}" t WHERE t::text ~* 'vanish'`,
      );
      expect({ name, ...rows[0] }).toEqual({ name, found: 0 });
    }
  });

  test.each([
    ['somebody who is here', {}, false, 'conflict'],
    ['without the tick', { understood: false }, true, 'invalid'],
    ['with a wrong password', { password: 'not it at all' }, true, 'wrong_password'],
    ['asked for tomorrow', { askedOn: '2026-11-26' }, true, 'invalid'],
  ])('refuses %s', async (_, some, hasLeft, code) => {
    const { renter, manager } = school.people;
    if (hasLeft) await leave(renter.personId);
    expect(problemOf(await erasePerson(manager, erasureOf(renter.personId, some), now)).code).toBe(code);
    expect(await asOwner('SELECT name FROM person WHERE id = $1', [renter.personId])).toEqual([
      { name: PEOPLE.renter.name },
    ]);
  });

  test('refuses another school’s person, and whoever was erased can neither return nor be erased again', async () => {
    const { manager, gone } = school.people;
    expect(problemOf(await erasePerson(manager, erasureOf(other.people.gone.personId), now)).code).toBe(
      'not_found',
    );
    valueOf(await erasePerson(manager, erasureOf(gone.personId), now));
    expect(problemOf(await erasePerson(manager, erasureOf(gone.personId), now)).code).toBe('conflict');
    const back = { requestId: randomUUID(), personId: gone.personId };
    expect(problemOf(await returnPerson(manager, back, now)).code).toBe('conflict');
  });

  test('nothing of the chain says a name: rows of audit and requests hold numbers (but for words people typed)', async () => {
    const rows = await asOwner(
      `SELECT verb FROM audit_row WHERE detail::text LIKE ANY ($1) AND verb LIKE ANY (ARRAY['person.%', 'certificate.%', 'personal-data.%', 'preventive.%', 'proof.%'])`,
      [Object.values(PEOPLE).map(({ name }) => `%${name}%`)],
    );
    expect(rows).toEqual([]);
  });
});

describe('traces', () => {
  const { session, recoveryCode, challenge, letter } = TRACE_DAYS;
  async function left() {
    const { operatorId } = school;
    const { personId } = school.people.renter;
    const base = { operatorId, personId };
    await writeInOperator(operatorId, async (tx) => {
      const row = { ...base, beganAt: NOW, lastSeenAt: NOW, device: 'x', secondFactor: 'none' };
      await tx.session.create({ data: { ...row, id: randomUUID(), expiresAt: later(DAY), endedAt: NOW } });
      await tx.session.create({ data: { ...row, id: randomUUID(), expiresAt: NOW } });
      await tx.recoveryCode.create({
        data: { ...base, id: randomUUID(), codeSha256: 'a', madeAt: NOW, usedAt: NOW },
      });
      await tx.recoveryCode.create({ data: { ...base, id: randomUUID(), codeSha256: 'b', madeAt: NOW } });
      await tx.challenge.create({
        data: { ...base, id: randomUUID(), purpose: 'sign-in', challenge: 'c', madeAt: NOW, expiresAt: NOW },
      });
      const linkId = randomUUID();
      await tx.personLink.create({
        data: {
          ...base,
          id: linkId,
          kind: 'invitation',
          tokenSha256: randomUUID(),
          sealedToken: 'v1.x',
          handedOver: 'mail',
          madeAt: NOW,
          expiresAt: NOW,
        },
      });
      await tx.letter.create({
        data: {
          id: randomUUID(),
          operatorId,
          linkId,
          toAddress: 'a@b.example',
          subject: 'S',
          body: 'B',
          state: 'sent',
          sentAt: NOW,
          nextTryAt: NOW,
        },
      });
    });
  }
  const sweepAt = (ms: number) => sweepTraces(school.operatorId, later(ms));

  // Just under, on, just over each time (our choice, no source).
  test.each([
    ['sessions', session, 2],
    ['recoveryCodes', recoveryCode, 1],
    ['challenges', challenge, 1],
    ['letters', letter, 1],
  ] as const)('%s go after %s days', async (kind, days, count) => {
    await left();
    expect((await sweepAt(days * DAY - 1))[kind]).toBe(0);
    expect((await sweepAt(days * DAY))[kind]).toBe(0);
    expect((await sweepAt(days * DAY + 1))[kind]).toBe(count);
    expect((await sweepAt(days * DAY + 2))[kind]).toBe(0);
  });

  test('a letter leaves behind that it was sent, a link that is over no token', async () => {
    await left();
    expect((await sweepAt(0)).links).toBe(1);
    await sweepAt(letter * DAY + 1);
    const [row] = await asOwner(
      'SELECT to_address, body, state, subject FROM letter WHERE operator_id = $1',
      [school.operatorId],
    );
    expect(row).toEqual({ to_address: '', body: '', state: 'sent', subject: 'S' });
  });

  test('what is still of use stays, and no record is touched', async () => {
    await left();
    await sweepAt(400 * DAY);
    const { operatorId } = school;
    const codes = await readInOperator(operatorId, (tx) => tx.recoveryCode.count({ where: { operatorId } }));
    expect(codes).toBe(1);
    expect((await verifyAudit(database.adminUrl)).flatMap(({ faults }) => faults)).toEqual([]);
    expect(await operatorsToSweep()).toContain(operatorId);
  });

  test('docs/personal-data.md names the same times', async () => {
    const text = (await readFile('docs/personal-data.md', 'utf8')).replace(/ +/g, ' ');
    expect(text).toContain(`| a session | ${session} days after`);
    expect(text).toContain(`| a recovery code | ${recoveryCode} days after`);
    expect(text).toContain(`| what a browser was asked to prove | ${challenge} day after`);
    expect(text).toContain(`| address and text of a letter | ${letter} days after`);
    expect(text).toContain(`for ${TRACE_DAYS.erasedProof} days, should the store`);
  });
});

test('somebody invited who never came can be let go and erased', async () => {
  const { manager } = school.people;
  const made = valueOf(
    await invitePerson(
      manager,
      {
        requestId: randomUUID(),
        name: 'Nobody Came',
        email: 'never@personal.example',
        roles: ['pilot'],
        homeBaseId: '',
        handedOver: 'printed',
      },
      now,
    ),
  );
  await leave(made.personId);
  expect(
    (await choosePasswordByLink({ token: made.token, password: 'seven copper kettles on a sill' }, now)).ok,
  ).toBe(false);
  expect((await erasePerson(manager, erasureOf(made.personId), now)).ok).toBe(true);
});
