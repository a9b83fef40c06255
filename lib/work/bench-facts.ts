import { instant } from '../db/dates';
import { aircraftFacts, basePlace, type AircraftRow } from '../fleet/facts';
import { dayAtBase } from '../records/signature';
import type { Severity } from '../rules/aircraft';
import type { CalendarDate } from '../rules/facts';
import { judgeDiscrepancy } from '../rules/judge-discrepancy';
import { OPERATION_KINDS } from '../rules/operations';
import { deferralEnds } from '../rules/part-91/91-213-deferral-eligibility';
import { referenceUse } from '../rules/use-of-flight';

/** What the rules say of one open write-up, as far as the queue needs it. */
export interface BenchFacts {
  readonly severity: Severity | null;
  /** It bars all eight kinds of operation at its base today. */
  readonly barsEveryFlight: boolean;
  /** First of: end of the repair interval, next required inspection (91.405(c)), 90 days of a removed ELT. */
  readonly deferralEndsOn: CalendarDate | null;
}

/** Asks the rules about every open write-up of the fleet; by id of the write-up. */
export function benchFacts(fleet: readonly AircraftRow[], now: Date): ReadonlyMap<string, BenchFacts> {
  return new Map(fleet.flatMap((row) => factsOfAircraft(row, now)));
}

function factsOfAircraft(row: AircraftRow, now: Date): [string, BenchFacts][] {
  if (row.discrepancies.length === 0) return [];
  const aircraft = aircraftFacts(row);
  const base = basePlace(row.base);
  const on = dayAtBase(now, base.zone);
  const uses = OPERATION_KINDS.map((kind) => referenceUse(kind, base, on, instant(now)));
  return aircraft.discrepancies.map((d) => [
    d.id,
    {
      severity: d.severity.known ? d.severity.value : null,
      barsEveryFlight: uses.every((use) =>
        judgeDiscrepancy(aircraft, d, use).some(({ effect }) => effect === 'bars'),
      ),
      deferralEndsOn: d.deferral === null ? null : firstDay(deferralEnds(aircraft, d)),
    },
  ]);
}

const firstDay = (ends: readonly { readonly on: CalendarDate | null }[]): CalendarDate | null =>
  ends
    .flatMap(({ on }) => (on === null ? [] : [on]))
    .sort()
    .at(0) ?? null;
