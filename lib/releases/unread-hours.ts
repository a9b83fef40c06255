import type { Prisma, Tx } from '../db/client';
import { instant } from '../db/dates';
import { wasInTheAir, type Happening, type ReleaseHappening } from '../rules/release-state';
import { enteredFigures, readingsAround, STANDING } from './readings';

/** What a release needs to tell whether, and how long, its aircraft was out. */
export const WITH_TIMES = {
  events: { select: { what: true, at: true, recordedAt: true } },
  readings: { where: { moment: 'out', ...STANDING } },
} as const satisfies Prisma.ReleaseInclude;
type TimesRow = Prisma.ReleaseGetPayload<{ include: typeof WITH_TIMES }>;
interface Out {
  readonly id: string;
  readonly aircraftId: string;
  readonly departAt: Date;
  readonly events: readonly Pick<TimesRow['events'][number], 'what' | 'at' | 'recordedAt'>[];
  /** Any of its standing readings; of the two moments the one at departure counts here. */
  readonly readings: readonly Pick<TimesRow['readings'][number], 'moment' | 'at' | keyof Figures>[];
}

/** When a flight set out and when it ended, as far as is on record. */
export interface TimesOut {
  readonly wasAirborne: boolean;
  /** Take-off, else when the meters were read at departure. */
  readonly from: Date;
  /** Landing, else when it was closed or withdrawn. Null: still out, for all that is known. */
  readonly until: Date | null;
}

/** Null when it never set out: not in the air while the release held, and no meters read at departure. */
export function timesOut({ events, readings }: Pick<Out, 'events' | 'readings'>): TimesOut | null {
  const atOf = (what: Happening) => events.find((event) => event.what === what)?.at;
  const wasAirborne = wasInTheAir(events.map(happening));
  const from = wasAirborne ? atOf('airborne') : departureOf(readings)?.at;
  if (!from) return null;
  return { wasAirborne, from, until: atOf('landed') ?? atOf('closed') ?? atOf('withdrawn') ?? null };
}

const departureOf = (readings: Out['readings']) => readings.find(({ moment }) => moment === 'out');

const happening = ({ what, at, recordedAt }: Out['events'][number]): ReleaseHappening => ({
  what: what as Happening,
  at: instant(at),
  recordedAt: instant(recordedAt),
});

/**
 * Which of these flights, whose meters nobody read at return, have their hours on record all the same: a later flight of the
 * aircraft was read after this one ended, with a higher total than before it. Where this one is not on record as airborne
 * the same total does: it did not fly.
 */
export async function takenInByLaterReadings(
  tx: Tx,
  operatorId: string,
  flights: readonly Out[],
): Promise<ReadonlySet<string>> {
  const unread = flights.flatMap((flight) => {
    const times = timesOut(flight);
    return times ? [{ flight, times }] : [];
  });
  const first = Math.min(...unread.map(({ times }) => times.from.getTime()));
  const later = await (unread.length === 0
    ? []
    : tx.meterReading.findMany({
        where: {
          operatorId,
          aircraftId: { in: unread.map(({ flight }) => flight.aircraftId) },
          at: { gte: new Date(first) },
          ...STANDING,
        },
        include: { release: { include: WITH_TIMES } },
      }));
  const found = new Set<string>();
  for (const { flight, times } of unread) {
    const end = times.until ?? times.from;
    const after = later.filter(
      ({ aircraftId, at, release }) =>
        aircraftId === flight.aircraftId && at >= end && isLaterFlight(release, flight, times),
    );
    if (after.length === 0) continue;
    const before = await figuresBefore(tx, operatorId, flight, times);
    if (after.some((reading) => isMore(reading, before, times.wasAirborne))) found.add(flight.id);
  }
  return found;
}

/**
 * Without the flights that ended and whose hours a later reading took in: nobody is asked for their meters any more. One
 * that has not ended for all that is known stays in sight.
 */
export async function stillAsked<R extends Out>(
  tx: Tx,
  operatorId: string,
  rows: readonly R[],
): Promise<readonly R[]> {
  const takenIn = await takenInByLaterReadings(tx, operatorId, rows);
  const isOver = (row: R): boolean => Boolean(timesOut(row)?.until) || row.events.some(isVoid);
  return rows.filter((row) => !(takenIn.has(row.id) && isOver(row)));
}

const isVoid = ({ what }: { readonly what: string }): boolean => what === 'void';

/** A flight before this one, read late, does not know of its hours. */
function isLaterFlight(other: Out | null, flight: Out, { from }: TimesOut): boolean {
  if (other === null) return true;
  return other.id !== flight.id && (timesOut(other)?.from ?? other.departAt) > from;
}

interface Figures {
  readonly hobbsTenths: number | null;
  readonly tachTenths: number | null;
  readonly ttisTenths: number | null;
}

/** What stood when it set out. */
async function figuresBefore(
  tx: Tx,
  operatorId: string,
  { aircraftId, readings }: Out,
  { from }: TimesOut,
): Promise<Figures | null> {
  const out = departureOf(readings);
  if (out) return out;
  const { before, next } = await readingsAround(tx, operatorId, aircraftId, from);
  return before ?? (next && enteredFigures(next));
}

/** By the total time in service; where nobody knows it, by both meters. */
function isMore(reading: Figures, before: Figures | null, wasAirborne: boolean): boolean {
  const least = wasAirborne ? 1 : 0;
  const gained = (which: keyof Figures): boolean => {
    const now = reading[which];
    return now !== null && now >= (before?.[which] ?? 0) + least;
  };
  const hasTotals = reading.ttisTenths !== null && (before === null || before.ttisTenths !== null);
  return hasTotals ? gained('ttisTenths') : gained('hobbsTenths') && gained('tachTenths');
}
