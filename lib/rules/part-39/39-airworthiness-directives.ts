/**
 * 14 CFR part 39: airworthiness directives.
 *
 * - 39.3: directives are legally enforceable rules for aircraft, engines, propellers and appliances.
 * - 39.7: operating a product that does not meet an applicable directive violates the section.
 * - 39.9: each operation anew.
 * - 39.11: a directive sets inspections, conditions, limits, actions. Those that name equipment which must work are
 *   91.213(d)(2)(iv) and are judged there; here the ones with a date or a number of hours.
 * - 39.19: another means of compliance only with the approval of the responsible FAA manager. Not modelled.
 * - 39.23: a special flight permit is possible unless the directive forbids it: see `special-flight-permit.ts`.
 *
 * No overfly: the ten hours of 91.409(b) do not serve a directive unless it says so (a reading, from memory).
 * Months are counted as calendar months; a directive that counts plain months is entered in days.
 */
import type { AircraftFacts } from '../aircraft';
import type { UseOfAircraft } from '../operations';
import { checkRowLimits } from '../row-limits';
import { barsForMissing, type Line } from '../verdict';

/**
 * 39.7. Bars for each directive that has run out or that the flight would carry past its hours, and when nobody has
 * gone through the directives that apply to this aircraft.
 */
export function checkDirectives(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  const rows = aircraft.requirements.filter((row) => row.kind === 'directive');
  const lines = rows.flatMap((row) => checkRowLimits(row, aircraft, use, '14cfr39.7', true));
  if (aircraft.directives.known) return lines;
  const about = { kind: 'aircraft', id: aircraft.id, label: aircraft.registration } as const;
  return [barsForMissing('14cfr39.7', aircraft.directives.missing, about), ...lines];
}
