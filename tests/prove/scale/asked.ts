/** The three things that are asked of a server, as the screens and the phone ask them. */
import { randomUUID } from 'node:crypto';
import type pg from 'pg';
import { withClient } from '@/lib/operate/connection';
import { DEMO_PASSWORD } from '../../../seed/people';
import { actionNumber, Visitor } from './browser';
import type { OperatorSize } from './copy';

export interface Desk {
  readonly operatorId: string;
  readonly visitor: Visitor;
  readonly personId: string;
  readonly aircraft: readonly { readonly id: string; readonly typeId: string; readonly base: string }[];
  /** Asks in turn for one aircraft after the other. */
  turn: number;
}

/** Somebody who is a dispatcher and a pilot signs in: one person may do all three. */
const WHO = 'dov@quillback.example';

export async function openDesk(
  address: string,
  adminUrl: string,
  operatorId: string,
  size: OperatorSize,
): Promise<Desk> {
  const visitor = new Visitor(address);
  const email = `s${size.number}.${WHO}`;
  await visitor.signIn(email, DEMO_PASSWORD);
  return withClient(adminUrl, async (client) => {
    const { rows } = await client.query<{ id: string }>('SELECT id FROM person WHERE email = $1', [email]);
    return {
      operatorId,
      visitor,
      personId: rows[0]!.id,
      aircraft: await aircraftOf(client, operatorId),
      turn: 0,
    };
  });
}

async function aircraftOf(client: pg.Client, operatorId: string): Promise<Desk['aircraft']> {
  const { rows } = await client.query<{ id: string; typeId: string; base: string }>(
    `SELECT id, type_id AS "typeId", base_id AS base FROM aircraft WHERE operator_id = $1 ORDER BY registration`,
    [operatorId],
  );
  return rows;
}

export const nextAircraft = (desk: Desk): Desk['aircraft'][number] =>
  desk.aircraft[desk.turn++ % desk.aircraft.length]!;

/** A page that asks the database nothing: the form to sign in, for somebody without a cookie. */
export const askEmpty = async (address: string): Promise<number> =>
  (await new Visitor(address).ask('/sign-in', {}, /<html/)).ms;

/** The board, with its rows in it. */
export const askBoard = async ({ visitor }: Desk): Promise<number> =>
  (await visitor.ask('/desk', {}, /N00000/)).ms;

/** The go or no go for a flight of tomorrow, as the button of /desk/flight asks for it. */
export async function askAnswer(desk: Desk): Promise<number> {
  const { id, base } = nextAircraft(desk);
  const tomorrow = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10);
  const notSaid = 'not-said';
  const flight = {
    aircraftId: id,
    pilotId: null,
    fromBaseId: base,
    toBaseId: base,
    departLocal: `${tomorrow}T10:00`,
    arriveLocal: `${tomorrow}T11:30`,
    rules: 'VFR',
    purpose: 'private',
    plannedHours: '1.4',
    overWaterBeyondGlide: notSaid,
    // Some bases lie in such airspace, and "no" would be refused there.
    transponderAirspace: 'yes',
    adsbAirspace: 'yes',
    controlledAirspace: notSaid,
    usesVor: notSaid,
    trainingWithin50Nm: notSaid,
    crewOnly: notSaid,
    highestAltitudeFtMsl: null,
    atcTransponder: 'not-asked',
    atcAdsb: 'not-asked',
    continuingToRepair: false,
  };
  const { ms } = await desk.visitor.ask(
    '/desk/flight',
    {
      method: 'POST',
      headers: {
        'next-action': await actionNumber('app/desk/actions.ts', 'askForAnswer'),
        'content-type': 'text/plain;charset=UTF-8',
        accept: 'text/x-component',
      },
      body: JSON.stringify([flight]),
    },
    /"ok":true.*"outcome":"(go|no-go|go-with-limits)"/s,
  );
  return ms;
}

/** What every write-up that is measured says, here and in the bare SQL. */
export const MEASURED_WORDS = 'Paint chipped at the tip.';

/** A write-up as phones send it. */
export const findingOf = (aircraftId: string, requestId: string = randomUUID()) => ({
  version: 1,
  requestId,
  aircraftId,
  walkaroundId: null,
  station: 'left-wing',
  findingKey: null,
  kind: 'cosmetic',
  jasc: null,
  equipmentId: null,
  inoperativeCount: null,
  place: 'Left wing',
  words: MEASURED_WORDS,
  measurements: {},
  foundAt: new Date().toISOString(),
});

export const askWrite = async (desk: Desk): Promise<number> =>
  (
    await desk.visitor.ask(
      '/api/sync/findings',
      {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(findingOf(nextAircraft(desk).id)),
      },
      /"ok":true/,
    )
  ).ms;
