import type { Prisma } from '../db/client';
import { instant } from '../db/dates';
import { nameIn } from '../people/names';
import { WITH_HISTORY } from './history';

/** What every list of releases reads: its history, and whose clock it is told by. */
export const WITH_ZONE = {
  ...WITH_HISTORY,
  aircraft: { include: { base: { select: { zone: true } } } },
} as const satisfies Prisma.ReleaseInclude;
export type ReleaseRow = Prisma.ReleaseGetPayload<{ include: typeof WITH_ZONE }>;

/** What is said of a release wherever one is listed. */
export interface ReleaseHead {
  readonly id: string;
  readonly registration: string;
  readonly zone: string;
  readonly departAt: string;
  readonly arriveAt: string;
  readonly outcome: string;
  readonly releasedAt: string;
  readonly dispatcher: string;
  readonly pilot: string | null;
  readonly factsVersion: number;
  readonly rulesVersion: string;
  readonly hash: string;
}

/** @param names of everybody in `peopleInHead` */
export const releaseHead = (row: ReleaseRow, names: ReadonlyMap<string, string>): ReleaseHead => ({
  id: row.id,
  registration: row.aircraft.registration,
  zone: row.aircraft.base.zone,
  departAt: instant(row.departAt),
  arriveAt: instant(row.arriveAt),
  outcome: row.outcome,
  releasedAt: instant(row.releasedAt),
  dispatcher: nameIn(names, row.dispatcherId),
  pilot: row.pilotId ? nameIn(names, row.pilotId) : null,
  factsVersion: row.factsVersion,
  rulesVersion: row.rulesVersion,
  hash: row.hash,
});

/** Who released and who flies. */
export const peopleInHead = (rows: readonly Pick<ReleaseRow, 'dispatcherId' | 'pilotId'>[]): string[] =>
  rows.flatMap(({ dispatcherId, pilotId }) => (pilotId ? [dispatcherId, pilotId] : [dispatcherId]));
