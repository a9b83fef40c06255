import { instant } from '../db/dates';
import type { Prisma, Tx } from '../db/client';
import { STANDING } from '../releases/readings';
import { known, unknown, type Fact } from '../rules/facts';
import { localDate, parseCalendarDate } from '../rules/months';
import {
  flightsFlown,
  sameSystemBefore,
  systemDigits,
  type EarlierWriteUp,
  type SameBy,
  type SignedClosure,
} from '../rules/repeat-defect';
import { detailsOf } from '../work/entry';

/** A write-up as far as repeats are looked for. */
export interface Repeatable {
  readonly id: string;
  readonly aircraftId: string;
  readonly jasc: string;
  readonly equipmentId: string | null;
  readonly findingKey: string | null;
  readonly openedAt: Date;
}

/** An earlier write-up of the same system, and how it was closed. */
export interface EarlierClosure {
  readonly discrepancyId: string;
  readonly number: string;
  readonly title: string;
  /** Could not duplicate: nothing was found and nothing put right, so that it is the likeliest to come back. */
  readonly how: SignedClosure;
  readonly sameBy: SameBy;
  readonly closedAt: string;
  readonly signedBy: string;
  /** What the signed entry says was done. */
  readonly words: string;
  /** Whole days at the base from the sign-off to the new write-up. */
  readonly days: number;
  /** Flights between the two; null when not known. */
  readonly flights: number | null;
  /** Within 30 days or 10 flights. */
  readonly inWindow: boolean;
}

/** A repeat with its history, the closure of last first. At least one is in the window. */
export interface RepeatView {
  readonly earlier: readonly EarlierClosure[];
}

/** How many earlier closures a notice lists. */
const SHOWN = 6;

/** What happened before to the same system, when the write-up is a repeat (lib/rules/repeat-defect.ts); null otherwise. */
export async function repeatsOf(
  tx: Tx,
  operatorId: string,
  discrepancy: Repeatable,
): Promise<RepeatView | null> {
  return (await repeatsAmong(tx, operatorId, [discrepancy])).get(discrepancy.id) ?? null;
}

/** The same for many write-ups with a fixed number of queries. Those that are no repeat are left out. */
export async function repeatsAmong(
  tx: Tx,
  operatorId: string,
  fresh: readonly Repeatable[],
): Promise<ReadonlyMap<string, RepeatView>> {
  const closed = await closedAlike(tx, operatorId, fresh);
  if (closed.length === 0) return new Map();
  const aircraftIds = [...new Set(closed.map((row) => row.aircraftId))];
  const since = closed.map(({ closedAt }) => closedAt ?? new Date(0)).toSorted((a, b) => +a - +b)[0];
  const readings = await tx.meterReading.findMany({
    where: { operatorId, aircraftId: { in: aircraftIds }, ...STANDING, ttisTenths: { not: null } },
    select: { aircraftId: true, at: true, ttisTenths: true, releaseId: true, moment: true },
    orderBy: { at: 'asc' },
  });
  const releases = await tx.release.findMany({
    where: { operatorId, aircraftId: { in: aircraftIds }, departAt: { gte: since } },
    select: { id: true, aircraftId: true, departAt: true, arriveAt: true },
  });
  const found = new Map<string, RepeatView>();
  for (const one of fresh) {
    const before = closed
      .filter(
        (row) =>
          row.aircraftId === one.aircraftId &&
          row.id !== one.id &&
          row.closedAt !== null &&
          row.closedAt <= one.openedAt,
      )
      .map((row) => ({ row, ...earlierWriteUp(row, one, readings, releases) }));
    const same = sameSystemBefore(one, before);
    if (!same.some(({ inWindow }) => inWindow)) continue;
    found.set(one.id, {
      earlier: same.slice(0, SHOWN).map(({ earlier, sameBy, inWindow }) => ({
        discrepancyId: earlier.id,
        number: earlier.row.number,
        title: earlier.row.title,
        how: earlier.how,
        sameBy,
        closedAt: earlier.closedAt,
        ...signedEntry(earlier.row),
        days: earlier.days,
        flights: earlier.flights.known ? earlier.flights.value : null,
        inWindow,
      })),
    });
  }
  return found;
}

const SIGNED_CLOSURES: readonly SignedClosure[] = ['repaired', 'could-not-duplicate'];

const CLOSED = {
  aircraft: { select: { base: { select: { zone: true } } } },
  // What put it right, not what took it out of use for a deferral; a correction speaks in the place of what it corrects.
  work: {
    where: { state: 'signed', deferralId: null, corrections: { none: { state: 'signed' } } },
    include: { signOff: { select: { personName: true } } },
    orderBy: { startedAt: 'desc' },
  },
} as const satisfies Prisma.DiscrepancyInclude;

type ClosedRow = Prisma.DiscrepancyGetPayload<{ include: typeof CLOSED }>;

/** Signed closures of the same aircraft that could be the same system as one of these. The rule looks closer. */
const closedAlike = (tx: Tx, operatorId: string, fresh: readonly Repeatable[]): Promise<ClosedRow[]> =>
  fresh.length === 0
    ? Promise.resolve([])
    : tx.discrepancy.findMany({
        where: {
          operatorId,
          state: 'closed',
          closedHow: { in: [...SIGNED_CLOSURES] },
          OR: fresh.map((one) => {
            const digits = systemDigits(one.jasc);
            return {
              aircraftId: one.aircraftId,
              closedAt: { lte: one.openedAt },
              OR: [
                ...(one.findingKey === null ? [] : [{ findingKey: one.findingKey }]),
                ...(one.equipmentId === null ? [] : [{ equipmentId: one.equipmentId }]),
                ...(digits === null ? [] : [{ jasc: { startsWith: digits } }]),
              ],
            };
          }),
        },
        include: CLOSED,
      });

function signedEntry({ work }: ClosedRow): Pick<EarlierClosure, 'signedBy' | 'words'> {
  const last = work[0];
  const lookedFor = last ? detailsOf(last).lookedFor : undefined;
  return {
    signedBy: last?.signOff?.personName ?? 'not on record',
    words: [lookedFor, last?.description].filter(Boolean).join(' '),
  };
}

interface ReadingRow {
  readonly aircraftId: string;
  readonly at: Date;
  readonly ttisTenths: number | null;
  readonly releaseId: string | null;
  readonly moment: string | null;
}
interface ReleaseRow {
  readonly id: string;
  readonly aircraftId: string;
  readonly departAt: Date;
  readonly arriveAt: Date;
}

function earlierWriteUp(
  row: ClosedRow,
  fresh: Repeatable,
  readings: readonly ReadingRow[],
  releases: readonly ReleaseRow[],
): EarlierWriteUp {
  const closedAt = row.closedAt ?? fresh.openedAt;
  const { zone } = row.aircraft.base;
  const day = (at: Date) => parseCalendarDate(localDate(instant(at), zone));
  const here = readings.filter(({ aircraftId }) => aircraftId === row.aircraftId);
  const flown = releases
    .filter(
      ({ aircraftId, departAt }) =>
        aircraftId === row.aircraftId && departAt > closedAt && departAt <= fresh.openedAt,
    )
    .map((release) => ({ tenths: tenthsOf(release, here) }));
  return {
    id: row.id,
    findingKey: row.findingKey,
    equipmentId: row.equipmentId,
    jasc: row.jasc,
    closedAt: instant(closedAt),
    how: row.closedHow as SignedClosure,
    days: day(closedAt).until(day(fresh.openedAt), { largestUnit: 'days' }).days,
    flights: flightsFlown(flown, gained(here, row, closedAt, fresh.openedAt)),
  };
}

const A_TENTH_MS = 6 * 60_000;

/** What a flight flew by its meters, or was planned to where they were not read. */
function tenthsOf(release: ReleaseRow, readings: readonly ReadingRow[]): number {
  const at = (moment: string) =>
    readings.find((one) => one.releaseId === release.id && one.moment === moment)?.ttisTenths ?? null;
  const out = at('out');
  const back = at('in');
  return out !== null && back !== null
    ? back - out
    : Math.ceil((release.arriveAt.getTime() - release.departAt.getTime()) / A_TENTH_MS);
}

/** Time in service between the sign-off and the new write-up, by what the entry says and the last reading before it. */
function gained(readings: readonly ReadingRow[], row: ClosedRow, from: Date, to: Date): Fact<number> {
  const last = readings.findLast(({ at }) => at > from && at <= to)?.ttisTenths ?? null;
  const start = row.work[0]?.ttisTenths ?? readings.findLast(({ at }) => at <= from)?.ttisTenths ?? null;
  return last === null || start === null
    ? unknown('how far the meters ran since')
    : known(Math.max(0, last - start));
}
