import { z } from 'zod';
import { query } from '../access/service';
import { newestSeq } from '../live/newest-change';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { RULES_VERSION } from '../rules/answer';
import type { CalendarDate, HoursTenths, Instant } from '../rules/facts';
import { lightOverTime } from '../rules/light-over-time';
import { endOfDay, startOfDay } from '../rules/months';
import { answersOverTime } from '../rules/over-time';
import { afterFlights } from '../rules/spent-hours';
import { inSpan } from '../telemetry/spans';
import { bookedFlights } from './booked-flights';
import {
  dayBorders,
  dayLane,
  dayLight,
  daysAfter,
  hourMarks,
  type DayBorder,
  type DayFlight,
  type DayLane,
  type DayLight,
  type HourMark,
} from './day-view';
import { aircraftFacts, basePlace, readAircraft } from './facts';
import { said } from '../words/said';

/** The answers of one aircraft over one local day of its base. */
export interface DayView {
  readonly asOf: Instant;
  /** How far the records had come. */
  readonly seq: number;
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly baseIdent: string;
  readonly baseName: string;
  readonly zone: string;
  readonly on: CalendarDate;
  readonly today: CalendarDate;
  readonly previous: CalendarDate;
  readonly next: CalendarDate;
  /** The local day: 23 or 25 hours where clocks change. */
  readonly from: Instant;
  readonly until: Instant;
  /** Of a date that is over: it is judged with the facts of now, not with those of then. */
  readonly isPast: boolean;
  readonly lanes: readonly DayLane[];
  readonly borders: readonly DayBorder[];
  readonly light: readonly DayLight[];
  readonly hours: readonly HourMark[];
  readonly flights: readonly DayFlight[];
  /** Hours of flights booked that have left before this day and are not in the aircraft's hours yet. */
  readonly spentBefore: { readonly tenths: HoursTenths; readonly flights: number };
  readonly factsVersion: number;
  readonly rulesVersion: string;
}

/** A year on either side: nobody dispatches farther, and a date typed wrongly is told. */
const FARTHEST_DAYS = 366;

/**
 * One aircraft over one local day, today at the base unless `on` says otherwise: four lanes of answers, what changes at
 * each border, the light, and the flights booked. Always with the facts of now. Refuses an aircraft that is not here and a
 * day more than a year away.
 */
export const readDay = query({
  verb: 'day.read',
  input: z.object({
    aircraftId: z.uuid(),
    on: z.iso.date(said('A date like 2026-11-25 is needed.')).optional(),
  }),
  async run({ tx, operatorId, now }, input): Promise<DayView> {
    const row = await readAircraft(tx, operatorId, input.aircraftId);
    if (!row || row.retiredOn)
      throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
    const base = basePlace(row.base);
    const { zone } = base;
    const today = dayAtBase(now, zone);
    const on = input.on ?? today;
    if (on < daysAfter(today, -FARTHEST_DAYS) || on > daysAfter(today, FARTHEST_DAYS)) {
      throw fieldRefusal('on', said('Choose a day not more than a year away.'));
    }
    const window = { from: startOfDay(on, zone), until: endOfDay(on, zone) };
    const booked = (await bookedFlights(tx, operatorId, now, [row.id])).get(row.id) ?? [];
    const facts = aircraftFacts(row);
    const light = lightOverTime(base, window);
    const lanes = inSpan('rules', {}, () => answersOverTime(facts, base, window, booked, undefined, light));
    const shown = booked.filter(
      ({ departAt, arriveAt }) =>
        Date.parse(departAt) < Date.parse(window.until) && Date.parse(arriveAt) > Date.parse(window.from),
    );
    const before = afterFlights(facts, booked, window.from);
    return {
      asOf: now.toISOString(),
      seq: await newestSeq(tx, operatorId),
      aircraftId: row.id,
      registration: row.registration,
      typeName: row.type.name,
      baseIdent: row.base.ident,
      baseName: row.base.name,
      zone,
      on,
      today,
      previous: daysAfter(on, -1),
      next: daysAfter(on, 1),
      ...window,
      isPast: on < today,
      lanes: lanes.map(dayLane),
      borders: dayBorders(lanes),
      light: dayLight(light, window),
      hours: hourMarks(window, zone),
      flights: shown.map(({ id, label, departAt, arriveAt, plannedTenths, state }) => ({
        id,
        label,
        departAt,
        arriveAt,
        plannedTenths,
        state,
      })),
      spentBefore: { tenths: before.spentTenths, flights: before.counted.length },
      factsVersion: row.factsVersion,
      rulesVersion: RULES_VERSION,
    };
  },
});
