/**
 * 14 CFR 91.411 and 91.413: tests of the altimeter system and of the transponder.
 *
 * - 91.411(a)(1): no IFR in controlled airspace unless, within the preceding 24 calendar months, each static system,
 *   altimeter and automatic altitude reporting system was tested. VFR is not limited.
 * - 91.411(a)(2),(3) and 91.413(b): tests after opening the static system or after work that may cause a data error. They
 *   are work and its sign-off, not a date: see `91-411-413-after-work.ts`.
 * - 91.411(b): who may test. Answered where the record was made: `approvedByAuthorised`.
 * - 91.411(d): no IFR in controlled airspace above the tested altitude. That altitude itself is allowed.
 * - 91.413(a): no use of a transponder unless tested within the preceding 24 calendar months. VFR too. When it has
 *   lapsed the transponder stays off, and the airspace of 91.215(b) is closed.
 */
import type { AircraftFacts, RequirementFacts } from '../aircraft';
import { lastDayOfCalendarMonthAfter } from '../months';
import type { UseOfAircraft } from '../operations';
import { isOutOfUse } from '../out-of-use';
import { aboutRequirement, calendarLine, doubtsAboutRecord, unlessInDoubt } from '../requirement-lines';
import { barsForMissing, type Line, type Subject } from '../verdict';

export const ALTIMETER_TEST_MONTHS = 24;
export const TRANSPONDER_TEST_MONTHS = 24;

/** 91.411(a)(1) and (d). No line for VFR, or for IFR known to stay outside controlled airspace. */
export function checkStaticAndAltimeter(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  if (use.rules !== 'IFR') return [];
  const cite = '14cfr91.411(a)(1)';
  if (!use.controlledAirspace.known) return [barsForMissing(cite, use.controlledAirspace.missing)];
  if (!use.controlledAirspace.value) return [];
  const rows = aircraft.requirements.filter((row) => row.kind === 'static-and-altimeter');
  if (rows.length === 0) {
    const missing = 'when the static system, altimeter and altitude reporting were last tested';
    return [barsForMissing(cite, missing, aboutAircraft(aircraft))];
  }
  return rows.flatMap((row) => {
    const doubts = doubtsAboutRecord(row, aircraft, use, cite);
    if (!row.lastDone.known) return doubts;
    const through = lastDayOfCalendarMonthAfter(row.lastDone.value.on, ALTIMETER_TEST_MONTHS);
    const line = calendarLine(row, through, use, cite);
    return [...unlessInDoubt(doubts, line), ...checkTestedAltitude(row, use)];
  });
}

/** 91.411(d). */
function checkTestedAltitude(row: RequirementFacts, use: UseOfAircraft): Line[] {
  const cite = '14cfr91.411(d)';
  const about = aboutRequirement(row);
  if (row.testedToFt === null) {
    return [barsForMissing(cite, 'the altitude to which the altimeter was tested', about)];
  }
  if (!row.testedToFt.known) return [barsForMissing(cite, row.testedToFt.missing, about)];
  if (!use.highestAltitudeFtMsl.known) return [barsForMissing(cite, use.highestAltitudeFtMsl.missing, about)];
  const tested = row.testedToFt.value;
  const because = `Altimeter tested to ${tested} ft. This flight goes to ${use.highestAltitudeFtMsl.value} ft.`;
  return [{ effect: use.highestAltitudeFtMsl.value <= tested ? 'supports' : 'bars', cite, because, about }];
}

/**
 * 91.413(a). No line when no transponder is installed (whether one must be is 91.215), or when it is out of use
 * under a deferral: nobody uses it then.
 */
export function checkTransponderTest(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  const installed = aircraft.equipment.some((item) => item.function === 'transponder' && item.installed > 0);
  if (!installed || isOutOfUse(aircraft, 'transponder')) return [];
  const cite = '14cfr91.413(a)';
  const rows = aircraft.requirements.filter((row) => row.kind === 'transponder');
  if (rows.length === 0) {
    return [barsForMissing(cite, 'when the transponder was last tested', aboutAircraft(aircraft))];
  }
  return rows.flatMap((row) => {
    const doubts = doubtsAboutRecord(row, aircraft, use, cite);
    if (!row.lastDone.known) return doubts;
    const through = lastDayOfCalendarMonthAfter(row.lastDone.value.on, TRANSPONDER_TEST_MONTHS);
    return withTransponderOff(row, unlessInDoubt(doubts, calendarLine(row, through, use, cite)), use);
  });
}

/** Outside the airspace that asks for a transponder, a lapsed test only means that it stays off. */
function withTransponderOff(row: RequirementFacts, lines: readonly Line[], use: UseOfAircraft): Line[] {
  const barred = lines.filter((line) => line.effect === 'bars');
  if (barred.length === 0) return [...lines];
  const about = aboutRequirement(row);
  if (!use.transponderAirspace.known) {
    return [...barred, barsForMissing('14cfr91.215(b)', use.transponderAirspace.missing, about)];
  }
  if (use.transponderAirspace.value) return barred;
  // A missing fact keeps barring: nobody knows whether the test has lapsed.
  return barred.map((line) =>
    line.missing !== undefined
      ? line
      : {
          ...line,
          effect: 'limits',
          because: `${line.because} Leave the transponder off and placard it; stay out of airspace that needs it.`,
        },
  );
}

const aboutAircraft = (aircraft: AircraftFacts): Subject => ({
  kind: 'aircraft',
  id: aircraft.id,
  label: aircraft.registration,
});
