/**
 * A requirement measured by the intervals in its own row: directives, life limits, maker's intervals. No overfly: the
 * ten hours of 91.409(b) belong to the 100-hour inspection alone.
 */
import type { AircraftFacts, RequirementFacts } from './aircraft';
import { dueOf } from './due';
import type { CiteId } from './law';
import type { UseOfAircraft } from './operations';
import {
  aboutRequirement,
  barsForUnknownTime,
  calendarLine,
  doubtsAboutRecord,
  hoursLine,
  unlessInDoubt,
} from './requirement-lines';
import { barsForMissing, type Line } from './verdict';

/**
 * Lines for one row. Whichever of calendar and hours runs out first bars.
 * @param onceIsEnough whether a row without any interval is met for good by one compliance (a directive that does
 *   not repeat); otherwise such a row bars, because what it is measured by is missing
 */
export function checkRowLimits(
  row: RequirementFacts,
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  cite: CiteId,
  onceIsEnough: boolean,
): Line[] {
  const due = dueOf(row, aircraft.ttisTenths, aircraft.requirements);
  const about = aboutRequirement(row);
  // A date marked on the part decides alone, without a record of when it was fitted.
  const datedOnly = due.missing === null && !row.lastDone.known;
  const doubts = datedOnly ? [] : doubtsAboutRecord(row, aircraft, use, cite);
  if (due.missing !== null) return doubts;

  const lines: Line[] = [];
  if (due.on !== null) lines.push(calendarLine(row, due.on, use, cite));
  if (due.tenths !== null) {
    lines.push(
      ...(aircraft.ttisTenths.known
        ? [hoursLine(row, due.tenths, aircraft.ttisTenths.value, use, cite)]
        : barsForUnknownTime(aircraft)),
    );
  }
  if (lines.length === 0) {
    lines.push(
      onceIsEnough
        ? { effect: 'supports', cite, because: `${row.name} complied with; it does not repeat.`, about }
        : barsForMissing(cite, `the interval of ${row.name}`, about),
    );
  }
  return [...doubts, ...lines.flatMap((line) => unlessInDoubt(doubts, line).slice(doubts.length))];
}
