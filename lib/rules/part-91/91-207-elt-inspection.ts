/**
 * 14 CFR 91.207(c) and (d): battery and inspection of the emergency locator transmitter. Airplanes only.
 *
 * - (c)(1): batteries are replaced after more than one cumulative hour of use, tests included. Nothing measures that; the
 *   minutes somebody has recorded since the battery was fitted count. The hour itself is still good.
 * - (c)(2): batteries are replaced at half of their useful life: the date marked on the unit, `fixedExpiry`.
 * - (d): inspected within 12 calendar months of the last inspection.
 * - (f)(3): no transmitter is needed for training wholly within 50 nautical miles of the airport where the local
 *   flight began, so a lapsed one only limits there. Instruction only: whether a student's solo is training is
 *   disputed and read as not.
 * - (f)(9): none is needed in an airplane equipped for one person.
 * - (f)(10): one that is removed cannot lapse; its removal is judged with the deferral.
 */
import type { AircraftFacts, RequirementFacts } from '../aircraft';
import { lastDayOfCalendarMonthAfter } from '../months';
import type { UseOfAircraft } from '../operations';
import { isOutOfUse } from '../out-of-use';
import { isTrainingNearby } from './91-207-emergency-locator-transmitter';
import { aboutRequirement, calendarLine, doubtsAboutRecord, unlessInDoubt } from '../requirement-lines';
import { barsForMissing, type Line } from '../verdict';

export const ELT_INSPECTION_MONTHS = 12;
/** The one cumulative hour of (c)(1). */
export const ELT_USE_MINUTES = 60;

/** 91.207(d). */
export function checkEltInspection(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  if (!transmitterCounts(aircraft)) return [];
  const cite = '14cfr91.207(d)';
  const rows = aircraft.requirements.filter((row) => row.kind === 'elt-inspection');
  if (rows.length === 0) {
    return [barsForMissing(cite, 'when the emergency locator transmitter was last inspected')];
  }
  return rows.flatMap((row) => {
    const doubts = doubtsAboutRecord(row, aircraft, use, cite);
    if (!row.lastDone.known) return doubts;
    const through = lastDayOfCalendarMonthAfter(row.lastDone.value.on, ELT_INSPECTION_MONTHS);
    return withTrainingRelief(row, unlessInDoubt(doubts, calendarLine(row, through, use, cite)), use);
  });
}

/** 91.207(c)(1) and (2). The date on the unit decides, and how long it was in use since the battery was fitted. */
export function checkEltBattery(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  if (!transmitterCounts(aircraft)) return [];
  const cite = '14cfr91.207(c)(2)';
  const missing = 'the expiry date of the emergency locator transmitter battery';
  const rows = aircraft.requirements.filter((row) => row.kind === 'elt-battery');
  if (rows.length === 0) {
    return withTrainingRelief(null, [barsForMissing(cite, missing), ...usedUp(aircraft, null)], use);
  }
  return rows.flatMap((row) => {
    const expiry =
      row.fixedExpiry === null
        ? barsForMissing(cite, missing, aboutRequirement(row))
        : calendarLine(row, row.fixedExpiry, use, cite);
    return withTrainingRelief(row, [expiry, ...usedUp(aircraft, row)], use);
  });
}

/** (c)(1): no line up to the hour. A battery work or record starts the count anew (`eltUseMinutes`). */
function usedUp({ eltUseMinutes: minutes }: AircraftFacts, row: RequirementFacts | null): Line[] {
  if (minutes <= ELT_USE_MINUTES) return [];
  const because = `Emergency locator transmitter in use for ${minutes} minutes in all. After more than ${ELT_USE_MINUTES} its battery is replaced.`;
  return [
    { effect: 'bars', cite: '14cfr91.207(c)(1)', because, ...(row ? { about: aboutRequirement(row) } : {}) },
  ];
}

/** Airplanes of more than one seat with a transmitter aboard. An unknown number of seats counts as more than one. */
function transmitterCounts(aircraft: AircraftFacts): boolean {
  const { category, seats } = aircraft.type;
  const installed = aircraft.equipment.some((item) => item.function === 'elt' && item.installed > 0);
  const oneSeat = seats.known && seats.value === 1;
  return category === 'airplane' && installed && !oneSeat && !isOutOfUse(aircraft, 'elt');
}

/** (f)(3). A missing record keeps barring: nobody knows whether anything has lapsed. */
function withTrainingRelief(
  row: RequirementFacts | null,
  lines: readonly Line[],
  use: UseOfAircraft,
): Line[] {
  if (!lines.some((line) => line.effect === 'bars')) return [...lines];
  const nearby = isTrainingNearby(use);
  if (!nearby.known) {
    const about = row ? aboutRequirement(row) : undefined;
    return [...lines, barsForMissing('14cfr91.207(f)(3)', nearby.missing, about)];
  }
  if (!nearby.value) return [...lines];
  return lines.map((line) =>
    line.effect !== 'bars' || line.missing !== undefined
      ? line
      : {
          ...line,
          effect: 'limits',
          cite: '14cfr91.207(f)(3)',
          because: `${line.because} Only training, wholly within 50 nautical miles of where the flight began.`,
        },
  );
}
