import { query } from '../access/service';
import type { Tx } from '../db/client';
import { instant } from '../db/dates';
import { repeatsAmong } from '../findings/repeats';
import { aircraftFacts, readSome } from '../fleet/facts';
import { Refusal } from '../problems';
import type { CalendarDate, Instant } from '../rules/facts';
import { availabilityFigure, type AvailabilityFigure } from '../rules/insight/availability';
import { daysLostFigure, type DaysLostFigure } from '../rules/insight/days-lost';
import { deferralAgeFigure, type DeferralAgeFigure } from '../rules/insight/deferral-age';
import type { AircraftHistory } from '../rules/insight/history';
import { repeatRateFigure, type Repeated, type RepeatRateFigure } from '../rules/insight/repeat-rate';
import { openedIn, timeToAnswerFigure, timeToRepairFigure, type TimesFigure } from '../rules/insight/times';
import { deferralEnds } from '../rules/part-91/91-213-deferral-eligibility';
import { historyOf } from './histories';
import { historyRows, OF_AIRCRAFT, type HistoryRows } from './history-rows';
import { insightInput, periodOf, stretchAt, type Period } from './schema';

/** Figures over a period, each with its definition and how many write-ups or aircraft it stands on. */
export interface InsightView {
  readonly asOf: Instant;
  readonly period: Period;
  /** Null: all aircraft, all bases. */
  readonly aircraftId: string | null;
  readonly baseId: string | null;
  /** Which aircraft are counted, in words: "all 9 aircraft", "N042QB". */
  readonly about: string;
  /** Zone of the first base counted, for moments. */
  readonly zone: string;
  readonly choices: {
    readonly aircraft: readonly { readonly id: string; readonly registration: string }[];
    readonly bases: readonly { readonly id: string; readonly ident: string; readonly name: string }[];
  };
  readonly availability: AvailabilityFigure;
  readonly daysLost: DaysLostFigure;
  readonly timeToAnswer: TimesFigure;
  readonly timeToRepair: TimesFigure;
  readonly repeatRate: RepeatRateFigure;
  readonly deferralAge: DeferralAgeFigure;
}

/**
 * What the records here say of a period: availability, days lost by chapter, times to answer and repair, repeats, deferrals.
 * Days are days at each aircraft's own base. Aircraft that left the fleet count until they left. Refuses at its field a
 * period that cannot be looked at; another operator's aircraft or base is not there.
 */
export const readInsight = query({
  verb: 'insight.read',
  input: insightInput,
  async run({ tx, operatorId, now: clock }, asked): Promise<InsightView> {
    const now = instant(clock);
    const all = await tx.aircraft.findMany({
      where: { operatorId },
      include: OF_AIRCRAFT,
      orderBy: { registration: 'asc' },
    });
    const bases = await tx.base.findMany({ where: { operatorId }, orderBy: { ident: 'asc' } });
    const only = asked.aircraftId ? all.find(({ id }) => id === asked.aircraftId) : undefined;
    const base = asked.baseId ? bases.find(({ id }) => id === asked.baseId) : undefined;
    if (asked.aircraftId && !only) throw new Refusal('not_found', { say: 'There is no such aircraft here.' });
    if (asked.baseId && !base) throw new Refusal('not_found', { say: 'There is no such base here.' });
    const zone = only?.base.zone ?? base?.zone ?? bases[0]?.zone ?? 'UTC';
    const period = periodOf(asked, now, zone);
    const asOfZone = (of: string) => stretchAt(period, of, now);
    const counted = all.filter(
      (one) =>
        (!only || one.id === only.id) &&
        (!base || one.baseId === base.id) &&
        // Gone before the period began: nothing of it to count.
        (one.retiredOn === null || one.retiredOn.toISOString().slice(0, 10) > period.from),
    );
    const ids = counted.map(({ id }) => id);
    const since = counted.map((one) => Date.parse(asOfZone(one.base.zone).from));
    const rows = await historyRows(tx, operatorId, ids, new Date(Math.min(...since, clock.getTime())));
    const fleet = counted.map((one) => historyOf(one, rows));
    const windowOf = (aircraft: AircraftHistory) => asOfZone(aircraft.zone);
    return {
      asOf: now,
      period,
      aircraftId: only?.id ?? null,
      baseId: base?.id ?? null,
      about: aboutWhat(only?.registration, base?.ident, counted.length),
      zone,
      choices: {
        aircraft: all.map(({ id, registration }) => ({ id, registration })),
        bases: bases.map(({ id, ident, name }) => ({ id, ident, name })),
      },
      availability: availabilityFigure(fleet, windowOf),
      daysLost: daysLostFigure(fleet, windowOf),
      timeToAnswer: timeToAnswerFigure(fleet, windowOf, now),
      timeToRepair: timeToRepairFigure(fleet, windowOf, now),
      repeatRate: repeatRateFigure(fleet, windowOf, await repeats(tx, operatorId, fleet, windowOf, rows)),
      deferralAge: deferralAgeFigure(fleet, windowOf, now, await lastDays(tx, operatorId, rows)),
    };
  },
});

function aboutWhat(registration: string | undefined, ident: string | undefined, count: number): string {
  if (registration !== undefined) return registration;
  const aircraft = count === 1 ? '1 aircraft' : `${count} aircraft`;
  return ident === undefined ? `all ${aircraft}` : `${aircraft} of ${ident}`;
}

/** What each write-up of the period repeats: the closure in the window that was signed last. */
async function repeats(
  tx: Tx,
  operatorId: string,
  fleet: readonly AircraftHistory[],
  windowOf: (aircraft: AircraftHistory) => ReturnType<typeof stretchAt>,
  rows: HistoryRows,
): Promise<ReadonlyMap<string, Repeated>> {
  const opened = new Set(
    fleet.flatMap((aircraft) =>
      aircraft.writeUps.filter((one) => openedIn(one, windowOf(aircraft))).map(({ id }) => id),
    ),
  );
  const found = await repeatsAmong(
    tx,
    operatorId,
    rows.writeUps.filter(({ id }) => opened.has(id)),
  );
  return new Map(
    [...found].flatMap(([id, { earlier }]): [string, Repeated][] => {
      const last = earlier.find(({ inWindow }) => inWindow);
      return last ? [[id, { earlierNumber: last.number, days: last.days, how: last.how }]] : [];
    }),
  );
}

/** The last day of every open deferral that has one, by the deferral; the first of what ends it, as on the bench. */
async function lastDays(
  tx: Tx,
  operatorId: string,
  { writeUps }: HistoryRows,
): Promise<ReadonlyMap<string, CalendarDate>> {
  const deferred = writeUps.filter(({ deferrals }) => deferrals.some(({ end }) => end === null));
  const aircraft = await readSome(tx, {
    operatorId,
    id: { in: [...new Set(deferred.map(({ aircraftId }) => aircraftId))] },
  });
  return new Map(
    aircraft.map(aircraftFacts).flatMap((facts) =>
      facts.discrepancies.flatMap((d): [string, CalendarDate][] => {
        if (d.deferral === null) return [];
        const days = deferralEnds(facts, d).flatMap(({ on }) => (on === null ? [] : [on]));
        const first = days.sort()[0];
        return first === undefined ? [] : [[d.deferral.id, first]];
      }),
    ),
  );
}
