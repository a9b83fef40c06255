import type { Prisma, Tx } from '../db/client';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import { notBack, wherePlanStands } from '../releases/active-releases';
import { takenInByLaterReadings, timesOut, WITH_TIMES, type TimesOut } from '../releases/unread-hours';
import type { HoursTenths } from '../rules/facts';
import { isTenths, tenthsFromMinutes } from '../rules/hours';
import type { BookedFlight } from '../rules/spent-hours';

const MS_A_MINUTE = 60_000;
const MS_A_TENTH = 360_000;

/**
 * The flights that spend hours of each aircraft that are not on record yet, soonest first: released ones that are not back,
 * overdue or not, and planned ones that are not cancelled, not over and not released. A flight that set out counts whatever
 * became of its release, however long ago, until its meters are read or a later flight's reading takes its hours in. A plan
 * whose release was withdrawn or went void on the ground stands as a plan. An aircraft without one is not in the map.
 *
 * A plan that does not say its hours is counted with all the time between its departure and its arrival (strict); a flight
 * that was or is out for longer than planned with all of that time.
 */
export async function bookedFlights(
  tx: Tx,
  operatorId: string,
  now: Date,
  aircraftIds?: readonly string[],
): Promise<Map<string, BookedFlight[]>> {
  const which = aircraftIds === undefined ? {} : { aircraftId: { in: [...aircraftIds] } };
  const released = await tx.release.findMany({
    where: { operatorId, ...which, ...notBack(now) },
    select: {
      id: true,
      aircraftId: true,
      pilotId: true,
      departAt: true,
      arriveAt: true,
      flight: true,
      ...WITH_TIMES,
    },
  });
  const takenIn = await takenInByLaterReadings(tx, operatorId, released);
  const planned = await tx.plannedFlight.findMany({
    where: { operatorId, ...which, ...wherePlanStands(now) },
  });
  const people = [...released, ...planned].flatMap(({ pilotId }) => (pilotId === null ? [] : [pilotId]));
  const names = await namesOf(tx, people);

  const booked = new Map<string, BookedFlight[]>();
  const add = (aircraftId: string, flight: BookedFlight) =>
    booked.set(aircraftId, [...(booked.get(aircraftId) ?? []), flight]);
  for (const row of released) {
    if (takenIn.has(row.id)) continue;
    const out = timesOut(row);
    const planned = tenthsOf(row.flight) ?? longest(row);
    add(row.aircraftId, {
      id: row.id,
      label: labelOf(row.pilotId === null ? 'Released flight' : nameIn(names, row.pilotId), out),
      ...timesOf(out ? flownTimes(row, out) : row),
      plannedTenths: out ? Math.max(planned, tenthsOut(out, now)) : planned,
      state: out ? 'out' : 'released',
      ...(out?.until && { hasEnded: true }),
    });
  }
  for (const row of planned) {
    const pilot = row.pilotId === null ? '' : nameIn(names, row.pilotId);
    add(row.aircraftId, {
      id: row.id,
      label: [pilot, row.words].filter((part) => part !== '').join(', ') || 'Planned flight',
      ...timesOf(row),
      plannedTenths: row.plannedTenths ?? longest(row),
      state: 'planned',
    });
  }
  for (const flights of booked.values()) flights.sort(byDeparture);
  return booked;
}

interface Times {
  readonly departAt: Date;
  readonly arriveAt: Date;
}

const timesOf = ({ departAt, arriveAt }: Times) => ({
  departAt: instant(departAt),
  arriveAt: instant(arriveAt),
});

const labelOf = (who: string, out: TimesOut | null): string => (out?.until ? `${who}, meters not read` : who);

/** As planned, or from when it set out where that was earlier; until it ended, where that is known. */
function flownTimes(planned: Times, { from, until }: TimesOut): Times {
  const departAt = from < planned.departAt ? from : planned.departAt;
  const arriveAt = until ?? planned.arriveAt;
  return { departAt, arriveAt: arriveAt < departAt ? departAt : arriveAt };
}

/** How long it was out, or is so far, in begun tenths of an hour. */
const tenthsOut = ({ from, until }: TimesOut, now: Date): HoursTenths =>
  Math.max(0, Math.ceil(((until ?? now).getTime() - from.getTime()) / MS_A_TENTH));

const longest = ({ departAt, arriveAt }: Times): HoursTenths =>
  tenthsFromMinutes(Math.max(0, Math.ceil((arriveAt.getTime() - departAt.getTime()) / MS_A_MINUTE)));

/** The planned time of a released flight, as it was kept with the release. */
function tenthsOf(flight: Prisma.JsonValue): HoursTenths | null {
  const kept = flight as { readonly plannedTenths?: unknown } | null;
  const tenths = kept?.plannedTenths;
  return typeof tenths === 'number' && isTenths(tenths) ? tenths : null;
}

const byDeparture = (a: BookedFlight, b: BookedFlight): number =>
  Date.parse(a.departAt) - Date.parse(b.departAt) || (a.id < b.id ? -1 : 1);
