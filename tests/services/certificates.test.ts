/**
 * Certificates entered, renewed and ended, their proofs, and namings for preventive maintenance. Source: issue 6
 * ("certificates with expiry and proof (upload)"); 14 CFR 43.3(g), 65.83, 65.92 as lib/rules/law names them.
 */
import { randomUUID } from 'node:crypto';
import { mkdtemp, readdir } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { ActorRef } from '@/lib/access/actor';
import { readInOperator } from '@/lib/db/scope';
import { withClient } from '@/lib/operate/connection';
import { addProof } from '@/lib/people/add-proof';
import { endCertificate, enterCertificate } from '@/lib/people/certificates';
import { leavePerson } from '@/lib/people/leave-and-return';
import { nameForPreventive, withdrawPreventive } from '@/lib/people/preventive';
import { PROOF_MAX_BYTES } from '@/lib/people/proof-file';
import { readPeople } from '@/lib/people/read-people';
import { readPerson } from '@/lib/people/read-person';
import { readProof } from '@/lib/people/read-proof';
import { readSigner, signerFacts } from '@/lib/people/signer';
import { problemOf, valueOf } from '../fixtures/acts';
import { trainer } from '../fixtures/aircraft';
import type { FreshDatabase } from '../fixtures/database';
import { closeSchools, foundSchool, NOW, openSchools, PEOPLE, type School } from '../fixtures/school';

let database: FreshDatabase;
let school: School;
let other: School;
let schools = 0;
const now = { now: NOW };

beforeAll(async () => {
  process.env['PHOTO_DIR'] = await mkdtemp(path.join(tmpdir(), 'wheelchock-proofs-'));
  ({ database, other } = await openSchools());
});
afterAll(() => closeSchools(database));
beforeEach(async () => {
  schools += 1;
  school = await foundSchool(`certificates-${schools}`, trainer());
});

const typed = (personId: string, some: object = {}) => ({
  requestId: randomUUID(),
  personId,
  kind: 'mechanic',
  renewsId: '',
  number: 'M-4711',
  grade: '',
  ratings: ['airframe', 'powerplant'],
  issuedOn: '2019-05-01',
  expiresOn: '',
  recentExperienceThrough: '2027-06-30',
  firstYearActivityMet: 'not-said',
  authorisedToSign: 'not-said',
  ...some,
});
const enter = (personId: string, some: object = {}) =>
  enterCertificate(school.people.manager, typed(personId, some), now);
const factsOf = (personId: string) =>
  readInOperator(school.operatorId, async (tx) =>
    signerFacts(await readSigner(tx, school.operatorId, personId)),
  );
const standingOf = async (personId: string, kind: string) =>
  valueOf(await readPerson(school.people.manager, { personId }, now)).certificates.find(
    (one) => one.kind === kind && one.state === 'stands',
  );
const fieldsOf = (result: Parameters<typeof problemOf>[0]) => Object.keys(problemOf(result).fields ?? {});

describe('entering', () => {
  test('what is left open stays unknown', async () => {
    const { personId } = school.people.uncertificated;
    valueOf(await enter(personId, { recentExperienceThrough: '' }));
    const { mechanic } = await factsOf(personId);
    expect(mechanic).toMatchObject({ number: 'M-4711', ratings: ['airframe', 'powerplant'] });
    expect(mechanic?.recentExperienceThrough.known).toBe(false);
    expect((await standingOf(personId, 'mechanic'))?.standing.state).toBe('not-known');
  });

  test('fields of another kind are not taken', async () => {
    const { personId } = school.people.uncertificated;
    valueOf(await enter(personId, { grade: 'private', authorisedToSign: 'yes', expiresOn: '2030-01-01' }));
    const { rows } = await withClient(database.adminUrl, (client) =>
      client.query('SELECT grade, authorised_to_sign, expires_on FROM certificate WHERE person_id = $1', [
        personId,
      ]),
    );
    expect(rows).toEqual([{ grade: null, authorised_to_sign: null, expires_on: null }]);
  });

  test('a student pilot carries no ratings', async () => {
    const { personId } = school.people.dispatcher;
    valueOf(await enter(personId, { kind: 'pilot', grade: 'student', number: 'P-1', ratings: ['glider'] }));
    expect((await factsOf(personId)).pilot).toEqual({
      number: 'P-1',
      grade: 'student',
      ratings: [],
      expiresOn: null,
    });
  });

  test.each([
    ['a mechanic without a rating', { ratings: [] }, 'ratings'],
    ['a rating no mechanic has', { ratings: ['glider'] }, 'ratings'],
    ['a pilot without a grade', { kind: 'pilot', ratings: [] }, 'grade'],
    ['no number', { number: ' ' }, 'number'],
    ['issued tomorrow', { issuedOn: '2026-11-26' }, 'issuedOn'],
    [
      'an authorization to 31 March of an even year',
      { kind: 'inspection-authorization', expiresOn: '2028-03-31' },
      'expiresOn',
    ],
    [
      'an authorization to 30 March',
      { kind: 'inspection-authorization', expiresOn: '2027-03-30' },
      'expiresOn',
    ],
    ['an authorization without an end', { kind: 'inspection-authorization', expiresOn: '' }, 'expiresOn'],
    [
      'expired before it was issued',
      { kind: 'repair-station', ratings: ['radio'], expiresOn: '2019-04-30' },
      'expiresOn',
    ],
  ])('refuses %s', async (_, some, field) => {
    expect(fieldsOf(await enter(school.people.uncertificated.personId, some))).toEqual([field]);
  });

  test('an authorization to 31 March of an odd year is taken (65.92(a))', async () => {
    const { personId } = school.people.powerplant;
    valueOf(
      await enter(personId, {
        kind: 'inspection-authorization',
        number: 'IA-1',
        ratings: [],
        expiresOn: '2027-03-31',
        firstYearActivityMet: 'yes',
      }),
    );
    expect((await factsOf(personId)).inspectionAuthorization).toMatchObject({
      expiresOn: '2027-03-31',
      firstYearActivityMet: { known: true, value: true },
    });
  });

  test('refuses a number that stands with somebody else; a repair station’s is everybody’s there', async () => {
    const { uncertificated, airframe } = school.people;
    const number = 'M-airframe';
    const refused = problemOf(await enter(uncertificated.personId, { number }));
    expect(refused.fields?.['number']?.join()).toContain(PEOPLE.airframe.name);
    const station = {
      kind: 'repair-station',
      number: 'R-9',
      ratings: ['radio'],
      issuedOn: '',
      authorisedToSign: 'yes',
    };
    valueOf(await enter(uncertificated.personId, station));
    expect((await enter(airframe.personId, station)).ok).toBe(true);
  });

  test('refuses somebody who left and somebody of another school', async () => {
    expect(problemOf(await enter(school.people.gone.personId)).code).toBe('conflict');
    expect(problemOf(await enter(other.people.uncertificated.personId)).code).toBe('not_found');
  });
});

describe('renewing and ending', () => {
  test('the renewal counts, the one before stays on record, and one stands at a time', async () => {
    const { personId } = school.people.stale;
    const before = await standingOf(personId, 'mechanic');
    expect(before?.standing.state).toBe('over');
    // A second of the same kind is no renewal.
    expect(problemOf(await enter(personId, { number: 'M-STIG' })).code).toBe('superseded');
    valueOf(
      await enter(personId, {
        renewsId: before?.id,
        number: 'M-STIG',
        recentExperienceThrough: '2027-12-31',
      }),
    );
    expect((await factsOf(personId)).mechanic?.recentExperienceThrough).toEqual({
      known: true,
      value: '2027-12-31',
    });
    const { certificates } = valueOf(await readPerson(school.people.manager, { personId }, now));
    expect(certificates.map(({ state }) => state)).toEqual(['stands', 'renewed']);
    // Renewed from a page that was open since.
    expect(problemOf(await enter(personId, { renewsId: before?.id, number: 'M-STIG' })).code).toBe(
      'superseded',
    );
  });

  test('an ended one carries nothing, and the one it renewed does not rise again', async () => {
    const { personId } = school.people.stale;
    const before = await standingOf(personId, 'mechanic');
    const { certificateId } = valueOf(await enter(personId, { renewsId: before?.id, number: 'M-STIG' }));
    const end = { requestId: randomUUID(), certificateId, revokedOn: '2026-11-25', words: 'Suspended.' };
    const { manager } = school.people;
    expect(fieldsOf(await endCertificate(manager, { ...end, revokedOn: '2026-11-26' }, now))).toEqual([
      'revokedOn',
    ]);
    valueOf(await endCertificate(manager, end, now));
    expect((await factsOf(personId)).mechanic).toBeNull();
    const again = { ...end, requestId: randomUUID() };
    expect(problemOf(await endCertificate(manager, again, now)).code).toBe('conflict');
    const renewed = { ...again, requestId: randomUUID(), certificateId: before?.id };
    expect(problemOf(await endCertificate(manager, renewed, now)).code).toBe('conflict');
    // A new one starts afresh.
    expect((await enter(personId, { number: 'M-9' })).ok).toBe(true);
  });

  test('the list warns of what runs out, not of those who left', async () => {
    const { people } = valueOf(await readPeople(school.people.manager, {}, now));
    const warned = people.filter(({ warnings }) => warnings.length > 0).map(({ name }) => name);
    expect(warned).toEqual([PEOPLE.stale.name]);
    valueOf(
      await leavePerson(
        school.people.manager,
        { requestId: randomUUID(), personId: school.people.stale.personId, leftOn: '2026-11-25' },
        now,
      ),
    );
    const { people: after } = valueOf(await readPeople(school.people.manager, {}, now));
    expect(after.flatMap(({ warnings }) => warnings)).toEqual([]);
  });
});

describe('preventive maintenance, 43.3(g)', () => {
  const naming = (personId: string) => ({
    requestId: randomUUID(),
    personId,
    words: 'Items (c)(1) and (c)(17).',
  });
  test('a naming counts until it is taken back; what was signed is another matter', async () => {
    const { manager, renter, dispatcher } = school.people;
    const named = async () => (await factsOf(renter.personId)).namedForPreventiveMaintenance;
    expect(await named()).toBe(false);
    const { authorizationId } = valueOf(await nameForPreventive(manager, naming(renter.personId), now));
    expect(await named()).toBe(true);
    expect(problemOf(await nameForPreventive(manager, naming(renter.personId), now)).code).toBe('conflict');
    const back = { requestId: randomUUID(), authorizationId, words: 'No longer needed.' };
    valueOf(await withdrawPreventive(manager, back, now));
    expect(await named()).toBe(false);
    expect(problemOf(await withdrawPreventive(manager, { ...back, requestId: randomUUID() }, now)).code).toBe(
      'conflict',
    );
    expect((await nameForPreventive(manager, naming(renter.personId), now)).ok).toBe(true);
    expect(await named()).toBe(true);
    // No pilot, no naming.
    expect(fieldsOf(await nameForPreventive(manager, naming(dispatcher.personId), now))).toEqual(['words']);
  });
});

describe('proofs', () => {
  // The least a PDF is: header, body, %%EOF (PDF 32000-1, 7.5).
  const PDF = Buffer.from('%PDF-1.4\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n');
  const upload = async (bytes: Uint8Array, ref: ActorRef = school.people.manager, some: object = {}) => {
    const held = await standingOf(school.people.airframe.personId, 'mechanic');
    return addProof(
      ref,
      { requestId: randomUUID(), about: 'certificate', aboutId: held?.id, bytes, ...some },
      now,
    );
  };

  test('a PDF is kept as it came; a picture is made anew without what hid beside its pixels', async () => {
    const { manager } = school.people;
    const { proofId } = valueOf(await upload(PDF));
    expect(valueOf(await readProof(manager, { proofId }, now))).toMatchObject({
      fileName: 'mechanic-certificate.pdf',
      mime: 'application/pdf',
      bytes: Uint8Array.from(PDF),
    });
    const photo = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#808080' } })
      .withExif({ IFD0: { Copyright: 'secret place' } })
      .png()
      .toBuffer();
    const picture = valueOf(await upload(photo));
    const kept = valueOf(await readProof(manager, { proofId: picture.proofId }, now));
    expect(kept.mime).toBe('image/jpeg');
    expect(Buffer.from(kept.bytes).includes('secret place')).toBe(false);
    expect((await standingOf(school.people.airframe.personId, 'mechanic'))?.proofs).toHaveLength(2);
  });

  test('sent twice under one number it is kept once', async () => {
    const requestId = randomUUID();
    const first = valueOf(await upload(PDF, school.people.manager, { requestId }));
    expect(valueOf(await upload(PDF, school.people.manager, { requestId }))).toEqual(first);
    expect((await standingOf(school.people.airframe.personId, 'mechanic'))?.proofs).toHaveLength(1);
  });

  test.each([
    ['a page that says it is a PDF', Buffer.from('<html><script>alert(1)</script>%PDF-1.4 %%EOF'), 'invalid'],
    ['a PDF that was cut off', PDF.subarray(0, -8), 'invalid'],
    ['a program', Buffer.from('MZ\x90\x00 something %%EOF'), 'invalid'],
    ['nothing', Buffer.alloc(0), 'invalid'],
  ])('refuses %s', async (_, bytes, code) => {
    expect(problemOf(await upload(bytes)).code).toBe(code);
  });

  test.each([
    [PROOF_MAX_BYTES - 1, true],
    [PROOF_MAX_BYTES, true],
    [PROOF_MAX_BYTES + 1, false],
  ])('%s bytes (10 MB, our choice): taken %s', async (length, taken) => {
    const bytes = Buffer.concat([
      PDF.subarray(0, 9),
      Buffer.alloc(length - PDF.length, ' '),
      PDF.subarray(9),
    ]);
    const result = await upload(bytes);
    expect(result.ok ? true : result.problem.code).toBe(taken ? true : 'too_large');
  });

  test('managers and whoever it is about read it; nobody else, and no other school', async () => {
    const { manager, airframe, powerplant } = school.people;
    const { proofId } = valueOf(await upload(PDF));
    const code = async (ref: ActorRef) => {
      const result = await readProof(ref, { proofId }, now);
      return result.ok ? 'ok' : result.problem.code;
    };
    expect(await code(manager)).toBe('ok');
    expect(await code(airframe)).toBe('ok');
    expect(await code(powerplant)).toBe('not_allowed');
    expect(await code(other.people.manager)).toBe('not_found');
    expect(problemOf(await upload(PDF, airframe)).code).toBe('not_allowed');
  });

  test('at most eight of one certificate', async () => {
    for (let n = 0; n < 8; n += 1) valueOf(await upload(PDF));
    const files = async () => (await readdir(process.env['PHOTO_DIR'] ?? '', { recursive: true })).length;
    const before = await files();
    expect(problemOf(await upload(PDF)).code).toBe('conflict');
    // Asked before the bytes are kept.
    expect(await files()).toBe(before);
  });
});
