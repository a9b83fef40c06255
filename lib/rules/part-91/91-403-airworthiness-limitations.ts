/**
 * 14 CFR 91.403: limits the maker sets.
 *
 * - (a): the owner or operator is primarily responsible for an airworthy aircraft. A maker's recommendation (overhaul
 *   times, service letters) does not bind under part 91 by itself; the operator says whether it binds here, and then
 *   it is held to like any other limit.
 * - (c): replacement times and inspections in an Airworthiness Limitations section are mandatory. No grace.
 */
import type { AircraftFacts, RequirementFacts } from '../aircraft';
import type { UseOfAircraft } from '../operations';
import { checkRowLimits } from '../row-limits';
import type { Line } from '../verdict';

/** 91.403(c). */
export function checkLifeLimits(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  return aircraft.requirements
    .filter((row) => row.kind === 'life-limit')
    .flatMap((row) => checkRowLimits(row, aircraft, use, '14cfr91.403(c)', false));
}

/** 91.403(a). A recommendation that does not bind gives notes only, whatever its state. */
export function checkMakerIntervals(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  return aircraft.requirements
    .filter((row) => row.kind === 'maker-interval')
    .flatMap((row) => {
      const lines = checkRowLimits(row, aircraft, use, '14cfr91.403(a)', false);
      return row.binding ? lines : lines.map((line) => asRecommendation(row, line));
    });
}

function asRecommendation(row: RequirementFacts, line: Line): Line {
  if (line.effect !== 'bars') return line;
  const { cite, about } = line;
  return {
    effect: 'notes',
    cite,
    because: `${line.because} ${row.name} is a maker's recommendation and does not bind.`,
    about,
  };
}
