/**
 * The first operator, made by whoever holds the token that the console printed. Sources: issue 6 ("reachable only with a token
 * printed on the server's console, creates operator, base and first manager"); DEVELOPERS.md for what every write keeps.
 */
import { randomUUID } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { checkSignIn } from '@/lib/access/passwords';
import { closeDatabase, database as openedDatabase, openClient } from '@/lib/db/client';
import { writeWithSetUpToken } from '@/lib/db/scope';
import { withClient } from '@/lib/operate/connection';
import { makeSetUpToken } from '@/lib/operate/set-up-token';
import { verifyOperator } from '@/lib/records/verify';
import { checkToken, findAirportsToSetUp, proposeZoneToSetUp } from '@/lib/set-up/look-up';
import { setUp } from '@/lib/set-up/set-up';
import { setUpAddress, sha256OfToken } from '@/lib/set-up/token';
import { freshDatabase, type FreshDatabase } from '../fixtures/database';

const NOW = new Date('2026-11-25T15:00:00Z');
const after = (hours: number, ms = 0): Date => new Date(NOW.getTime() + hours * 3_600_000 + ms);
const PASSWORD = 'seven grey herons at dusk';

let database: FreshDatabase;
beforeEach(async () => {
  database = await freshDatabase();
  process.env['APP_DATABASE_URL'] = database.appUrl;
  await closeDatabase();
});
afterEach(async () => {
  await closeDatabase();
  await database.close();
});

const asOwner = <Row extends object>(sql: string, values: unknown[] = []): Promise<Row[]> =>
  withClient(database.adminUrl, async (client) => (await client.query<Row>(sql, values)).rows);

async function token(now = NOW): Promise<string> {
  const made = await makeSetUpToken(database.adminUrl, now);
  if (made === null) throw new Error('There is an operator already.');
  return made;
}

const typed = (overrides: object = {}) => ({
  requestId: randomUUID(),
  operatorName: 'Fernhollow Flying Club',
  part141: 'no',
  units: 'us-customary',
  ident: '0wf',
  airportIdent: '',
  name: 'Fernhollow Field',
  latitudeDeg: '43.30',
  longitudeDeg: '-91.80',
  zone: 'America/Chicago',
  zoneConfirmed: true,
  repairAvailable: 'not-said',
  transponderAirspace: 'not-said',
  adsbAirspace: 'not-said',
  controlledAirspace: 'not-said',
  personName: 'Ada Fernhollow',
  email: 'Ada@Fernhollow.example',
  password: PASSWORD,
  ...overrides,
});

const CLOSED = { ok: false, problem: { code: 'link_closed' } };

describe('setting up', () => {
  test('makes operator, base, first manager, the first link of the chain, and uses the token', async () => {
    const given = await token();
    const done = await setUp(typed({ token: given }), { now: NOW });
    if (!done.ok) throw new Error(JSON.stringify(done.problem));
    const { operatorId, baseId, personId } = done.value;

    expect(await asOwner('SELECT id, name, part141, units FROM operator')).toEqual([
      { id: operatorId, name: 'Fernhollow Flying Club', part141: false, units: 'us-customary' },
    ]);
    expect(
      await asOwner('SELECT id, ident, zone, source, added_by_id, transponder_airspace FROM base'),
    ).toEqual([
      {
        id: baseId,
        ident: '0WF',
        zone: 'America/Chicago',
        source: 'typed',
        added_by_id: personId,
        transponder_airspace: null,
      },
    ]);
    expect(await asOwner('SELECT id, name, email, roles, home_base_id FROM person')).toEqual([
      {
        id: personId,
        name: 'Ada Fernhollow',
        email: 'ada@fernhollow.example',
        roles: ['manager'],
        home_base_id: baseId,
      },
    ]);
    const [row, ...more] = await asOwner<{ verb: string; seq: number; person_id: string; detail: object }>(
      'SELECT verb, seq, person_id, detail FROM audit_row',
    );
    expect(more).toEqual([]);
    expect(row).toMatchObject({ verb: 'operator.set-up', seq: 1, person_id: personId });
    // Personal data and secrets do not go into a chain that nobody can change.
    expect(JSON.stringify(row)).not.toMatch(/Ada|ada@|herons/);
    const client = openClient(database.adminUrl);
    const report = await client.$transaction((tx) => verifyOperator(tx, operatorId));
    await client.$disconnect();
    expect(report.faults).toEqual([]);
    expect(await asOwner('SELECT used_at, made_operator_id FROM set_up_token')).toEqual([
      { used_at: NOW, made_operator_id: operatorId },
    ]);

    expect(await checkSignIn('ada@fernhollow.example', PASSWORD, NOW)).toMatchObject({
      operatorId,
      personId,
    });
    expect(await setUp(typed({ token: given }), { now: NOW })).toMatchObject(CLOSED);
    expect(await makeSetUpToken(database.adminUrl, NOW)).toBeNull();
  });

  test('sent again it gives the same answer and writes nothing more; other content is refused', async () => {
    const input = typed({ token: await token() });
    const first = await setUp(input, { now: NOW });
    expect(first.ok).toBe(true);
    expect(await setUp(input, { now: after(48) })).toEqual(first);
    expect(await setUp({ ...input, operatorName: 'Another' }, { now: NOW })).toMatchObject(CLOSED);
    expect(await asOwner('SELECT id FROM operator')).toHaveLength(1);
    expect(await asOwner('SELECT seq FROM audit_row')).toHaveLength(1);
  });

  test('two browsers at once make one operator', async () => {
    const given = await token();
    const results = await Promise.all(
      ['ada', 'bea', 'cid', 'dot'].map((name) =>
        setUp(typed({ token: given, email: `${name}@fernhollow.example` }), { now: NOW }),
      ),
    );
    expect(results.filter(({ ok }) => ok)).toHaveLength(1);
    for (const result of results) if (!result.ok) expect(result).toMatchObject(CLOSED);
    expect(await asOwner('SELECT id FROM operator')).toHaveLength(1);
    expect(await asOwner('SELECT id FROM person')).toHaveLength(1);
  });

  test('an airport of the shipped file is told as the source of position and zone', async () => {
    const now = new Date();
    const given = await token(now);
    const found = await findAirportsToSetUp(given, 'la crosse');
    const airport = found.ok ? found.value.find(({ ident }) => ident === 'KLSE') : undefined;
    expect(airport).toMatchObject({ kind: 'airport', zone: 'America/Chicago' });
    const chosen = {
      ident: 'KLSE',
      airportIdent: 'KLSE',
      latitudeDeg: String(airport?.latitudeDeg),
      longitudeDeg: String(airport?.longitudeDeg),
      zone: String(airport?.zone),
    };
    expect(await setUp(typed({ token: given, ...chosen }), { now })).toMatchObject({ ok: true });
    expect(await asOwner('SELECT ident, source FROM base')).toEqual([
      { ident: 'KLSE', source: 'airport KLSE' },
    ]);
  });

  test.each([
    ['a zone nobody looked at', { zoneConfirmed: false }, 'zoneConfirmed'],
    ['a longitude without its minus', { longitudeDeg: '91.80' }, 'longitudeDeg'],
    ['no name of the school', { operatorName: ' ' }, 'operatorName'],
    ['part 141 not said either way', { part141: '' }, 'part141'],
    ['no units', { units: '' }, 'units'],
    ['no e-mail address', { email: 'ada' }, 'email'],
    ['a password everybody has', { password: 'password1234' }, 'password'],
    ['a password of eleven characters', { password: 'k7#pQv!m2xZ' }, 'password'],
    ['an ident of one letter', { ident: 'A' }, 'ident'],
  ])('%s is refused at its field, and the token stays open', async (_what, wrong, field) => {
    const given = await token();
    const refused = await setUp(typed({ token: given, ...wrong }), { now: NOW });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'invalid' } });
    expect(Object.keys(refused.ok ? {} : (refused.problem.fields ?? {}))).toEqual([field]);
    expect(await asOwner('SELECT id FROM operator')).toEqual([]);
    expect(await setUp(typed({ token: given }), { now: NOW })).toMatchObject({ ok: true });
  });
});

describe('what opens the page', () => {
  test('wrong, used and too old: the same words', async () => {
    const given = await token();
    const wrong = await setUp(typed({ token: 'x'.repeat(43) }), { now: NOW });
    const old = await setUp(typed({ token: given }), { now: after(24) });
    await setUp(typed({ token: given }), { now: NOW });
    const used = await setUp(typed({ token: given }), { now: NOW });
    expect(wrong).toMatchObject(CLOSED);
    expect(old).toEqual(wrong);
    expect(used).toEqual(wrong);
  });

  // Source: TOKEN_HOURS, ours. Three rows for its border.
  test.each([
    ['just before', after(24, -1), true],
    ['at', after(24), false],
    ['just after', after(24, 1), false],
  ])('%s its 24 hours', async (_when, now, opens) => {
    const given = await token();
    expect((await setUp(typed({ token: given }), { now })).ok).toBe(opens);
  });

  test('a newer token ends the earlier one', async () => {
    const first = await token();
    const second = await token(after(1));
    expect(await setUp(typed({ token: first }), { now: after(1) })).toMatchObject(CLOSED);
    expect(await setUp(typed({ token: second }), { now: after(1) })).toMatchObject({ ok: true });
  });

  test('looking an airport up and proposing a zone ask for the token too', async () => {
    const given = await token(new Date());
    expect(await checkToken(given)).toEqual({ ok: true, value: true });
    expect(await checkToken('')).toMatchObject(CLOSED);
    const found = await findAirportsToSetUp(given, 'klse');
    expect(found.ok && found.value[0]).toMatchObject({ ident: 'KLSE', zone: 'America/Chicago' });
    expect(await findAirportsToSetUp('x', 'klse')).toMatchObject(CLOSED);
    const point = { latitudeDeg: 43.3, longitudeDeg: -91.8 };
    expect(await proposeZoneToSetUp(given, point)).toEqual({ ok: true, value: { zone: 'America/Chicago' } });
    expect(await proposeZoneToSetUp('x', point)).toMatchObject(CLOSED);
  });

  test('the address keeps the token behind the #, and the table keeps its sum alone', async () => {
    const given = await token();
    expect(given).toMatch(/^[\w-]{43}$/);
    expect(setUpAddress('https://hangar.example/', given)).toBe(`https://hangar.example/set-up#${given}`);
    const [row] = await asOwner('SELECT * FROM set_up_token');
    expect(JSON.stringify(row)).not.toContain(given);
    expect(row).toMatchObject({ token_sha256: sha256OfToken(given) });
  });
});

describe('row security', () => {
  test('the web account sees the row of a token it was told, and no other; it makes and deletes none', async () => {
    const given = await token();
    const client = await openedDatabase();
    expect(await client.setUpToken.findMany()).toEqual([]);
    const told = (sum: string) => writeWithSetUpToken(sum, (tx) => tx.setUpToken.findMany());
    expect(await told(sha256OfToken('another'))).toEqual([]);
    expect(await told(sha256OfToken(given))).toHaveLength(1);
    const row = { id: randomUUID(), tokenSha256: sha256OfToken('mine'), madeAt: NOW, expiresAt: after(1) };
    await expect(
      writeWithSetUpToken(row.tokenSha256, (tx) => tx.setUpToken.create({ data: row })),
    ).rejects.toThrow(/permission denied/);
    await expect(
      writeWithSetUpToken(sha256OfToken(given), (tx) =>
        tx.setUpToken.updateMany({ data: { expiresAt: after(1000) } }),
      ),
    ).rejects.toThrow(/permission denied/);
    await expect(
      writeWithSetUpToken(sha256OfToken(given), (tx) => tx.setUpToken.deleteMany()),
    ).rejects.toThrow(/permission denied/);
  });
});
