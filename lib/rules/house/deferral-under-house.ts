/**
 * What the rules of the house would add while a write-up is deferred: shown beside the eligibility of 91.213 and apart from it.
 * The law's answer, and what is signed of it, stays as it is.
 */
import type { AircraftFacts, DeferralFacts, DiscrepancyFacts } from '../aircraft';
import { unknown, type CalendarDate, type Instant } from '../facts';
import { OPERATION_KINDS, operationName } from '../operations';
import { withDiscrepancy } from '../part-91/91-213-item';
import { referenceUse, type ReferenceBase } from '../use-of-flight';
import { houseLines, type HouseLine } from './house-lines';

export interface HouseOnDeferral {
  readonly line: HouseLine;
  /** The kinds of operation it is said of. */
  readonly operations: readonly string[];
}

/**
 * The lines that rules of the house would add with `d` deferred as of `on`, and only those: what they say already is left
 * out. Each line once, with the kinds of operation it concerns, in the order of the board.
 */
export function houseOnDeferral(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  base: ReferenceBase,
  on: CalendarDate,
  now: Instant,
): HouseOnDeferral[] {
  if (aircraft.houseRules.length === 0) return [];
  const deferred = withDiscrepancy(aircraft, { ...d, deferral: d.deferral ?? supposed(d, on) });
  const without: AircraftFacts = {
    ...aircraft,
    discrepancies: aircraft.discrepancies.filter(({ id }) => id !== d.id),
  };
  const found = new Map<string, { line: HouseLine; operations: string[] }>();
  for (const kind of OPERATION_KINDS) {
    const use = referenceUse(kind, base, on, now);
    const already = new Set(houseLines([], without, use).map(keyOf));
    for (const line of houseLines([], deferred, use)) {
      if (already.has(keyOf(line))) continue;
      const here = found.get(keyOf(line)) ?? { line, operations: [] };
      here.operations.push(operationName(kind));
      found.set(keyOf(line), here);
    }
  }
  return [...found.values()];
}

const keyOf = ({ effect, because, house }: HouseLine): string =>
  JSON.stringify([effect, because, house.ruleId]);

/** A deferral begun today. Rules of the house read only that there is one, and since when. */
const supposed = (d: DiscrepancyFacts, on: CalendarDate): DeferralFacts => ({
  id: `supposed-${d.id}`,
  basis: '91.213(d)',
  method: 'deactivated',
  deactivationIsMaintenance: false,
  maintenanceRecordSigned: false,
  determination: unknown('whether it is no hazard'),
  placardPlaced: false,
  eltRemoval: null,
  melItemId: null,
  extendedThrough: null,
  melProceduresDone: false,
  recordedOn: on,
  inspectionsSince: [],
});
