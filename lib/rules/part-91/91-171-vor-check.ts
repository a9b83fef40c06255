/**
 * 14 CFR 91.171: VOR equipment check for IFR.
 *
 * - (a)(2): IFR using VOR needs an operational check within the preceding 30 days, found within limits. Days one by
 *   one: checked 1 March, good through 31 March.
 * - (a)(1), an approved maintenance procedure instead, is not covered: such an aircraft is answered by (a)(2).
 * - (b),(c): how to check and the bearing errors allowed: see 91-171-bearing-errors.ts.
 * - (d): the record. Date, place, bearing error, signature; no certificate number is asked.
 */
import type { AircraftFacts } from '../aircraft';
import { lastDayWithinDays } from '../months';
import type { UseOfAircraft } from '../operations';
import { calendarLine, doubtsAboutRecord, unlessInDoubt } from '../requirement-lines';
import { barsForMissing, type Line } from '../verdict';

export const VOR_CHECK_DAYS = 30;

/** 91.171(a)(2). No line for VFR, or for IFR known not to use VOR. */
export function checkVorCheck(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  if (use.rules !== 'IFR') return [];
  const cite = '14cfr91.171(a)(2)';
  if (!use.usesVor.known) return [barsForMissing(cite, use.usesVor.missing)];
  if (!use.usesVor.value) return [];
  const rows = aircraft.requirements.filter((row) => row.kind === 'vor-check');
  if (rows.length === 0) {
    const about = { kind: 'aircraft', id: aircraft.id, label: aircraft.registration } as const;
    return [barsForMissing(cite, 'when the VOR was last checked', about)];
  }
  return rows.flatMap((row) => {
    const doubts = doubtsAboutRecord(row, aircraft, use, cite);
    if (!row.lastDone.known) return doubts;
    const through = lastDayWithinDays(row.lastDone.value.on, VOR_CHECK_DAYS);
    return unlessInDoubt(doubts, calendarLine(row, through, use, cite));
  });
}
