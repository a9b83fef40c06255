import { instant } from '../db/dates';
import type { Tx } from '../db/client';
import { aircraftFacts, readFleet } from '../fleet/facts';
import { dayAtBase } from '../records/signature';
import { STANDING } from '../releases/readings';
import { DUE_GROUPS, type DueGroup } from '../rules/due-window';
import { flyingPace, WEEKS_LOOKED_AT, type Pace, type TimeReading } from '../rules/forecast';
import type { CalendarDate, Fact, HoursTenths } from '../rules/facts';
import { dueRows, type DueRow } from './due-rows';

/** How an aircraft has been flown, as far as that is known. */
export interface DueAircraft {
  readonly aircraftId: string;
  readonly registration: string;
  readonly baseIdent: string;
  readonly zone: string;
  /** Date at the base. */
  readonly today: CalendarDate;
  readonly ttisTenths: HoursTenths | null;
  /** Whole tenths flown in a mean week, and over how many weeks; null with `paceMissing`. */
  readonly tenthsAWeek: HoursTenths | null;
  readonly paceWeeks: number | null;
  readonly paceMissing: string | null;
}

export interface DueLine extends DueRow {
  readonly aircraft: DueAircraft;
}

export interface DueList {
  readonly asOf: string;
  readonly aircraft: readonly DueAircraft[];
  /** Overdue first, then what nobody knows, then by date; what has no date last. */
  readonly lines: readonly DueLine[];
}

const A_WEEK_MS = 7 * 86_400_000;

/**
 * All that falls due, of the fleet or of one aircraft, with forecasts from the flying pace.
 * @param only one aircraft; the whole fleet when left out
 */
export async function dueList(tx: Tx, operatorId: string, now: Date, only?: string): Promise<DueList> {
  const rows = (await readFleet(tx)).filter(({ id }) => only === undefined || id === only);
  const readings = await timeReadings(
    tx,
    operatorId,
    rows.map(({ id }) => id),
    now,
  );
  const lines: DueLine[] = [];
  const aircraft: DueAircraft[] = [];
  for (const row of rows) {
    const facts = aircraftFacts(row);
    const pace = flyingPace(readings.get(row.id) ?? [], instant(now));
    const one = {
      aircraftId: row.id,
      registration: row.registration,
      baseIdent: row.base.ident,
      zone: row.base.zone,
      today: dayAtBase(now, row.base.zone),
      ttisTenths: row.ttisTenths,
      ...paceSaid(pace),
    };
    aircraft.push(one);
    lines.push(...dueRows(facts, pace, one.today).map((due) => ({ ...due, aircraft: one })));
  }
  return { asOf: instant(now), aircraft, lines: lines.toSorted(mostPressingFirst) };
}

/** Readings of total time over twice the weeks looked at, so that a span may reach back over the edge. */
async function timeReadings(
  tx: Tx,
  operatorId: string,
  aircraftIds: readonly string[],
  now: Date,
): Promise<ReadonlyMap<string, readonly TimeReading[]>> {
  const rows = await tx.meterReading.findMany({
    where: {
      operatorId,
      aircraftId: { in: [...aircraftIds] },
      ...STANDING,
      ttisTenths: { not: null },
      at: { gte: new Date(now.getTime() - 2 * WEEKS_LOOKED_AT * A_WEEK_MS), lte: now },
    },
    select: { aircraftId: true, at: true, ttisTenths: true },
  });
  const byAircraft = new Map<string, TimeReading[]>();
  for (const { aircraftId, at, ttisTenths } of rows) {
    const list = byAircraft.get(aircraftId) ?? [];
    list.push({ at: instant(at), ttisTenths: ttisTenths ?? 0 });
    byAircraft.set(aircraftId, list);
  }
  return byAircraft;
}

const paceSaid = (pace: Fact<Pace>) =>
  pace.known
    ? {
        tenthsAWeek: Math.round(pace.value.tenthsAWeek),
        paceWeeks: Math.round(pace.value.weeks),
        paceMissing: null,
      }
    : { tenthsAWeek: null, paceWeeks: null, paceMissing: pace.missing };

const rank = (group: DueGroup): number => DUE_GROUPS.indexOf(group);

/** No date sorts after every date. */
const dayOf = ({ first, on }: DueRow): string => first?.on ?? on ?? '9999';

/** More than anything has left: Infinity less Infinity would be no number to sort by. */
const hoursOf = ({ remainingTenths }: DueRow): number => remainingTenths ?? Number.MAX_SAFE_INTEGER;

function mostPressingFirst(a: DueLine, b: DueLine): number {
  return (
    rank(a.group) - rank(b.group) ||
    dayOf(a).localeCompare(dayOf(b)) ||
    hoursOf(a) - hoursOf(b) ||
    a.aircraft.registration.localeCompare(b.aircraft.registration) ||
    a.name.localeCompare(b.name)
  );
}
