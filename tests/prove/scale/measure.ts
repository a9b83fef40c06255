/**
 * Measures the sizes against one another. All servers run at once and are asked in turns, one request at a time: whatever
 * else the machine does meanwhile slows all of them alike.
 */
import type pg from 'pg';
import { askAnswer, askBoard, askEmpty, askWrite, openDesk, type Desk } from './asked';
import { bareAnswer, bareBoard, bareWrite, openBare } from './bare';
import { ASKED, type Asked } from './sizes';

export const KINDS = ['board', 'answer', 'write'] as const;
export type Kind = (typeof KINDS)[number];

/** One operator of one size. */
export interface Place {
  readonly size: string;
  readonly asked: Asked;
}

export interface Served extends Place {
  readonly address: string;
  readonly adminUrl: string;
  readonly appUrl: string;
  readonly operatorId: string;
}

/** Milliseconds, in the order in which they were taken. */
export interface Times extends Place {
  readonly empty: Readonly<Record<Kind, number[]>>;
  readonly served: Readonly<Record<Kind, number[]>>;
  readonly bare: Readonly<Record<Kind, number[]>>;
  /** What was not answered as it should be: how often, cold or warm, and the first time in what words. */
  readonly failed: { count: number; words: string };
}

const SERVED = { board: askBoard, answer: askAnswer, write: askWrite } as const;
const BARE = { board: bareBoard, answer: bareAnswer, write: bareWrite } as const;

const WARMING = 6;

interface Station extends Times {
  readonly address: string;
  readonly desk: Desk;
  readonly client: pg.Client;
}

/** `rounds` of each, after warming. The reads come first: what is written up afterwards would be on the boards. */
export async function measure(places: readonly Served[], rounds: number): Promise<Times[]> {
  const stations: Station[] = [];
  try {
    for (const place of places) stations.push(await openStation(place));
    for (const kinds of [['board', 'answer'], ['write']] as const) {
      for (let round = -WARMING; round < rounds; round += 1) {
        for (const station of turned(stations, round)) {
          for (const kind of kinds) await once(station, kind, round >= 0);
        }
      }
    }
    return stations;
  } finally {
    for (const { client } of stations) await client.end();
  }
}

async function once(station: Station, kind: Kind, counts: boolean): Promise<void> {
  const { address, desk, client } = station;
  const empty = await askEmpty(address);
  const served = await SERVED[kind](desk).catch((error: unknown) => failed(station, error));
  const bare = await BARE[kind](client, desk);
  if (!counts || served === null) return;
  station.empty[kind].push(empty);
  station.served[kind].push(served);
  station.bare[kind].push(bare);
}

/** A refusal is a figure of its own, and no time. */
function failed({ failed: so }: Station, error: unknown): null {
  so.count += 1;
  so.words ||= String(error).slice(0, 200);
  return null;
}

async function openStation(place: Served): Promise<Station> {
  const { size, asked, address, adminUrl, appUrl, operatorId } = place;
  const desk = await openDesk(address, adminUrl, operatorId, ASKED[asked]);
  const none = () => ({ board: [], answer: [], write: [] });
  const times = { empty: none(), served: none(), bare: none(), failed: { count: 0, words: '' } };
  return { size, asked, address, desk, client: await openBare(appUrl, operatorId), ...times };
}

/** Another one begins each round, so that none always comes after the slowest. */
function turned<T>(all: readonly T[], round: number): T[] {
  const at = ((round % all.length) + all.length) % all.length;
  return [...all.slice(at), ...all.slice(0, at)];
}
