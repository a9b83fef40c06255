import type { Prisma, Tx } from '../db/client';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import { hoursBetween, type HoursFlown, type LastOnRecord, type MeterReading } from '../rules/meters';

/** One end of a flight as it was read: the meters, the total time in service then, and who read them. */
export interface FlightReading extends MeterReading {
  readonly id: string;
  /** Null when it was not known. */
  readonly ttisTenths: number | null;
  /** Who read them; of a correction, who corrected. */
  readonly by: string;
  /** Mistyped readings that it corrects, the newest first. They stay on record and count nowhere. */
  readonly superseded: readonly SupersededReading[];
}

/** A mistyped reading as it stays on record, and the correction that superseded it. */
export interface SupersededReading {
  readonly id: string;
  readonly hobbsTenths: number;
  readonly tachTenths: number;
  readonly by: string;
  readonly supersededBy: string;
  /** ISO instant. */
  readonly supersededAt: string;
  /** In the words of whoever corrected. */
  readonly because: string;
}

/** What was read for one release. */
export interface FlightMeters {
  readonly out: FlightReading | null;
  readonly back: FlightReading | null;
  /** How far each meter ran; null until the aircraft is back. Without a departure from the reading before the return. */
  readonly flown: HoursFlown | null;
}

export const NOT_READ: FlightMeters = { out: null, back: null, flown: null };

type Row = Awaited<ReturnType<Tx['meterReading']['findMany']>>[number];

/** Which readings count: those that no correction superseded. Whatever reads the table for their figures asks with it. */
export const STANDING = { supersededBy: { is: null } } as const satisfies Prisma.MeterReadingWhereInput;

/** A row as a reading. */
export const readingOf = (row: Row): MeterReading & { readonly ttisTenths: number | null } => ({
  hobbsTenths: row.hobbsTenths,
  tachTenths: row.tachTenths,
  ttisTenths: row.ttisTenths,
  at: instant(row.at),
});

/** The figures entered with the aircraft, of which nobody knows when they were read, as a reading kept them. */
export const enteredFigures = (row: Row): LastOnRecord & { readonly ttisTenths: number | null } => ({
  hobbsTenths: row.enteredHobbsTenths,
  tachTenths: row.enteredTachTenths,
  ttisTenths: row.enteredTtisTenths,
  at: null,
});

/** What was read for each of these releases, by release: the readings that stand, each with those it superseded. */
export async function metersOfReleases(
  tx: Tx,
  operatorId: string,
  releaseIds: readonly string[],
): Promise<ReadonlyMap<string, FlightMeters>> {
  const rows = await tx.meterReading.findMany({
    where: { operatorId, releaseId: { in: [...releaseIds] } },
  });
  const names = await namesOf(
    tx,
    rows.map((row) => row.readById),
  );
  const byId = new Map(rows.map((row) => [row.id, row]));
  const corrected = new Set(rows.map((row) => row.supersedesId));
  const standing = rows.filter((row) => !corrected.has(row.id));
  const found = new Map<string, FlightMeters>();
  for (const releaseId of new Set(standing.map((row) => row.releaseId ?? ''))) {
    const readAt = (moment: string): FlightReading | null => {
      const row = standing.find((one) => one.releaseId === releaseId && one.moment === moment);
      return row
        ? {
            id: row.id,
            ...readingOf(row),
            by: nameIn(names, row.readById),
            superseded: supersededBy(row, byId, names),
          }
        : null;
    };
    const out = readAt('out');
    const back = readAt('in');
    const start = back && (out ?? (await readingBefore(tx, operatorId, standing, releaseId)));
    found.set(releaseId, { out, back, flown: back && hoursBetween(start ?? NOTHING, back) });
  }
  return found;
}

/** The readings a correction stands on, the newest first. */
function supersededBy(
  row: Row,
  byId: ReadonlyMap<string, Row>,
  names: ReadonlyMap<string, string>,
): SupersededReading[] {
  const { supersedesId, correctedAt, why } = row;
  const before = supersedesId === null ? undefined : byId.get(supersedesId);
  if (!before || correctedAt === null || why === null) return [];
  const { id, hobbsTenths, tachTenths } = before;
  return [
    {
      id,
      hobbsTenths,
      tachTenths,
      by: nameIn(names, before.readById),
      supersededBy: nameIn(names, row.readById),
      supersededAt: instant(correctedAt),
      because: why,
    },
    ...supersededBy(before, byId, names),
  ];
}

/** What stood when a flight came back of which nobody had read the departure. */
async function readingBefore(
  tx: Tx,
  operatorId: string,
  standing: readonly Row[],
  releaseId: string,
): Promise<LastOnRecord | null> {
  const back = standing.find((one) => one.releaseId === releaseId && one.moment === 'in');
  if (!back) return null;
  const { before } = await readingsAround(tx, operatorId, back.aircraftId, back.at, [back.id]);
  return before ? readingOf(before) : enteredFigures(back);
}

const NOTHING: LastOnRecord = { hobbsTenths: null, tachTenths: null, at: null };

/**
 * The standing readings of an aircraft right before and right after an instant; one of the same instant is before it.
 * @param except readings left out, by id
 */
export async function readingsAround(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  at: Date,
  except: readonly string[] = [],
): Promise<{ readonly before: Row | null; readonly next: Row | null }> {
  const where = { operatorId, aircraftId, ...STANDING, id: { notIn: [...except] } };
  const before = await tx.meterReading.findFirst({
    where: { ...where, at: { lte: at } },
    orderBy: [{ at: 'desc' }, { hobbsTenths: 'desc' }, { tachTenths: 'desc' }],
  });
  const next = await tx.meterReading.findFirst({
    where: { ...where, at: { gt: at } },
    orderBy: [{ at: 'asc' }, { hobbsTenths: 'asc' }, { tachTenths: 'asc' }],
  });
  return { before, next };
}

/**
 * What is on record of an aircraft's meters now: the newest standing reading, or the figures entered with the aircraft, of which
 * nobody knows when they were read.
 */
export async function lastOnRecord(
  tx: Tx,
  aircraft: {
    readonly id: string;
    readonly operatorId: string;
    readonly hobbsTenths: number | null;
    readonly tachTenths: number | null;
  },
): Promise<LastOnRecord> {
  const newest = await tx.meterReading.findFirst({
    where: { operatorId: aircraft.operatorId, aircraftId: aircraft.id, ...STANDING },
    orderBy: [{ at: 'desc' }, { hobbsTenths: 'desc' }, { tachTenths: 'desc' }],
  });
  if (newest) return readingOf(newest);
  return { hobbsTenths: aircraft.hobbsTenths, tachTenths: aircraft.tachTenths, at: null };
}
