import type { Tx } from '../db/client';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import { hoursBetween, type HoursFlown, type LastOnRecord, type MeterReading } from '../rules/meters';

/** One end of a flight as it was read: the meters, the total time in service then, and who read them. */
export interface FlightReading extends MeterReading {
  /** Null when it was not known. */
  readonly ttisTenths: number | null;
  readonly by: string;
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

/** A row as a reading. */
export const readingOf = (row: Row): MeterReading & { readonly ttisTenths: number | null } => ({
  hobbsTenths: row.hobbsTenths,
  tachTenths: row.tachTenths,
  ttisTenths: row.ttisTenths,
  at: instant(row.at),
});

/** What was read for each of these releases, by release. */
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
  const found = new Map<string, FlightMeters>();
  for (const releaseId of new Set(rows.map((row) => row.releaseId ?? ''))) {
    const readAt = (moment: string): FlightReading | null => {
      const row = rows.find((one) => one.releaseId === releaseId && one.moment === moment);
      return row ? { ...readingOf(row), by: nameIn(names, row.readById) } : null;
    };
    const out = readAt('out');
    const back = readAt('in');
    const start = back && (out ?? (await readingBefore(tx, operatorId, rows, releaseId)));
    found.set(releaseId, { out, back, flown: back && hoursBetween(start ?? NOTHING, back) });
  }
  return found;
}

/** The reading that stood when a flight came back of which nobody had read the departure. */
async function readingBefore(
  tx: Tx,
  operatorId: string,
  rows: readonly Row[],
  releaseId: string,
): Promise<MeterReading | null> {
  const back = rows.find((one) => one.releaseId === releaseId && one.moment === 'in');
  if (!back) return null;
  const { before } = await readingsAround(tx, operatorId, back.aircraftId, back.at, back.id);
  return before && readingOf(before);
}

const NOTHING: LastOnRecord = { hobbsTenths: null, tachTenths: null, at: null };

/** The readings of an aircraft right before and right after an instant; one of the same instant is before it. */
export async function readingsAround(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  at: Date,
  exceptId?: string,
): Promise<{ readonly before: Row | null; readonly next: Row | null }> {
  const where = { operatorId, aircraftId, ...(exceptId ? { id: { not: exceptId } } : {}) };
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
 * What is on record of an aircraft's meters now: the newest reading, or the figures entered with the aircraft, of which
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
    where: { operatorId: aircraft.operatorId, aircraftId: aircraft.id },
    orderBy: [{ at: 'desc' }, { hobbsTenths: 'desc' }, { tachTenths: 'desc' }],
  });
  if (newest) return readingOf(newest);
  return { hobbsTenths: aircraft.hobbsTenths, tachTenths: aircraft.tachTenths, at: null };
}
