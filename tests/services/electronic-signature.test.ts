/**
 * What an electronic signature has to be. Sources: the points of AC 120-78B as docs/electronic-signatures.md lists them (its
 * document page was read, its body was not: the points follow the memory of 120-78A); RFC 8785 for canonical JSON; 14 CFR
 * 43.9(a)(4) for name, number and kind.
 */
import { createHash, randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { hashPassword } from '@/lib/access/passwords';
import { readInOperator } from '@/lib/db/scope';
import { reportFinding } from '@/lib/findings/report-finding';
import { verifyAudit } from '@/lib/operate/audit-verify';
import { withClient } from '@/lib/operate/connection';
import { contentHash } from '@/lib/records/canonical';
import { enterWork } from '@/lib/work/enter-work';
import { RETURN_TO_SERVICE_STATEMENT, signWork } from '@/lib/work/sign-work';
import { startWork } from '@/lib/work/start-work';
import { entryOf, nickedPropeller, problemOf, signatureOf, startOf, valueOf } from '../fixtures/acts';
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

let database: FreshDatabase;
let school: School;
let founded = 0;
const now = { now: NOW };

beforeAll(async () => {
  ({ database } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  school = await foundSchool(`signing-${(founded += 1)}`, trainer());
});

/** A nick dressed, its entry written and ready to sign. */
async function entered(): Promise<{ workId: string; entryHash: string }> {
  const { renter, powerplant } = school.people;
  const finding = { ...nickedPropeller(school), words: `Nick ${randomUUID()}`, findingKey: 'propeller-nick' };
  const { discrepancyId } = valueOf(await reportFinding(renter, finding, now));
  const { workId } = valueOf(await startWork(powerplant, startOf(discrepancyId), now));
  const { entryHash } = valueOf(await enterWork(powerplant, entryOf(workId, PEOPLE.powerplant.name), now));
  return { workId, entryHash };
}
const signOffs = () => readInOperator(school.operatorId, (tx) => tx.signOff.findMany());
const asOwner = (sql: string, values: unknown[]) =>
  withClient(database.adminUrl, (client) => client.query(sql, values));

describe('one person, and that person alone', () => {
  test('one address is one person', async () => {
    await expect(
      asOwner(
        `INSERT INTO person (id, operator_id, name, email, password_hash, roles)
         SELECT gen_random_uuid(), operator_id, 'Twin', email, password_hash, roles FROM person WHERE id = $1`,
        [school.people.powerplant.personId],
      ),
    ).rejects.toThrow(/person_email_key/);
  });

  test('the password of another person signs nothing', async () => {
    const { workId, entryHash } = await entered();
    await asOwner('UPDATE person SET password_hash = $1 WHERE id = $2', [
      await hashPassword('the word of the airframe mechanic'),
      school.people.airframe.personId,
    ]);
    const signature = { ...signatureOf(workId, entryHash), password: 'the word of the airframe mechanic' };
    expect(problemOf(await signWork(school.people.powerplant, signature, now)).code).toBe('wrong_password');
    expect(await signOffs()).toEqual([]);
  });

  test('a session alone signs nothing', async () => {
    const { workId, entryHash } = await entered();
    const { password, ...without } = signatureOf(workId, entryHash);
    expect(password).toBe(PASSWORD);
    for (const attempt of [without, { ...without, password: '' }]) {
      expect(problemOf(await signWork(school.people.powerplant, attempt, now)).code).toBe('invalid');
    }
    expect(await signOffs()).toEqual([]);
  });
});

describe('what is signed', () => {
  test('the statement that was shown is stored, and is part of what is signed', async () => {
    const { workId, entryHash } = await entered();
    valueOf(await signWork(school.people.powerplant, signatureOf(workId, entryHash), now));
    const [row] = await signOffs();
    expect(row?.statement).toBe(RETURN_TO_SERVICE_STATEMENT);
    expect(row?.content).toMatchObject({ statement: RETURN_TO_SERVICE_STATEMENT });
  });

  test('the signature names its entry, its words and its moment, and reaches no other work', async () => {
    const { workId, entryHash } = await entered();
    valueOf(await signWork(school.people.powerplant, signatureOf(workId, entryHash), now));
    const [row] = await signOffs();
    expect(row?.content).toMatchObject({
      entry: { writeUp: 'W-0001', description: entryOf('', '').description, completedOn: '2026-11-25' },
      signer: { name: PEOPLE.powerplant.name, certificate: { number: 'M-airframepowerplant' } },
      at: NOW.toISOString(),
    });
    expect(row?.statement).toContain('the work described here and no other');
    expect(row?.workId).toBe(workId);
  });

  test('the hash is over canonical JSON: the order of keys does not matter, every word does (RFC 8785)', () => {
    const text = '{"a":"µ","b":[1,2]}';
    const digest = createHash('sha256').update(text, 'utf8').digest('hex');
    expect(contentHash({ b: [1, 2], a: 'µ' })).toBe(digest);
    expect(contentHash({ a: 'µ', b: [1, 2] })).toBe(digest);
    expect(contentHash({ a: 'µ', b: [2, 1] })).not.toBe(digest);
  });

  test('content that changed after it was seen is not signed', async () => {
    const { workId, entryHash } = await entered();
    const again = { ...entryOf(workId, PEOPLE.powerplant.name), description: 'Something else was done.' };
    valueOf(await enterWork(school.people.powerplant, again, now));
    const problem = problemOf(await signWork(school.people.powerplant, signatureOf(workId, entryHash), now));
    expect(problem.code).toBe('superseded');
    expect(await signOffs()).toEqual([]);
  });
});

describe('authority at the moment of signing', () => {
  test('a certificate revoked a moment ago carries no signature; what it signed before stays', async () => {
    const first = await entered();
    valueOf(await signWork(school.people.powerplant, signatureOf(first.workId, first.entryHash), now));
    const second = await entered();
    await asOwner(`UPDATE certificate SET revoked_on = '2026-11-25' WHERE person_id = $1`, [
      school.people.powerplant.personId,
    ]);
    const problem = problemOf(
      await signWork(school.people.powerplant, signatureOf(second.workId, second.entryHash), now),
    );
    expect(problem.code).toBe('signature_refused');
    expect((await signOffs()).map(({ workId }) => workId)).toEqual([first.workId]);
    const report = (await verifyAudit(database.adminUrl)).find(
      ({ operatorId }) => operatorId === school.operatorId,
    );
    expect(report?.faults).toEqual([]);
  });

  test('who has left signs nothing, though session and password are theirs; what they signed stays', async () => {
    const first = await entered();
    valueOf(await signWork(school.people.powerplant, signatureOf(first.workId, first.entryHash), now));
    const second = await entered();
    await asOwner(`UPDATE person SET left_on = '2026-11-24' WHERE id = $1`, [
      school.people.powerplant.personId,
    ]);
    const after = await signWork(school.people.powerplant, signatureOf(second.workId, second.entryHash), now);
    expect(problemOf(after).code).toBe('not_signed_in');
    expect((await signOffs()).map(({ personName }) => personName)).toEqual([PEOPLE.powerplant.name]);
  });

  test('a refused signature leaves a row in the audit chain', async () => {
    const { workId, entryHash } = await entered();
    const refused = await signWork(school.people.airframe, signatureOf(workId, entryHash), now);
    expect(problemOf(refused).code).toBe('signature_refused');
    const rows = await readInOperator(school.operatorId, (tx) =>
      tx.auditRow.findMany({ where: { verb: 'work.sign:refused' } }),
    );
    expect(rows).toHaveLength(1);
    expect(rows[0]?.personId).toBe(school.people.airframe.personId);
    // The password reaches neither the chain nor a hash in it.
    expect(JSON.stringify(rows)).not.toContain(PASSWORD);
  });
});
