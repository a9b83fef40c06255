/**
 * All recurring requirements of an aircraft held against one use of it. Each kind is judged in the file of its
 * paragraph; here they are only called in the order of the law, so that none is forgotten.
 */
import type { AircraftFacts, RequirementKind } from './aircraft';
import type { UseOfAircraft } from './operations';
import { checkDirectives } from './part-39/39-airworthiness-directives';
import { checkVorCheck } from './part-91/91-171-vor-check';
import { checkEltBattery, checkEltInspection } from './part-91/91-207-elt-inspection';
import { checkLifeLimits, checkMakerIntervals } from './part-91/91-403-airworthiness-limitations';
import { checkAnnual, checkHundredHour } from './part-91/91-409-inspections';
import { checkStaticAndAltimeter, checkTransponderTest } from './part-91/91-411-413-altimeter-transponder';
import { barsForUnknownTime } from './requirement-lines';
import type { Line } from './verdict';

type Check = (aircraft: AircraftFacts, use: UseOfAircraft) => Line[];

/**
 * One check a kind. Those of the regulations (annual, 100-hour, static, transponder, ELT, VOR) also say when a row
 * that must exist does not; the others judge the rows there are.
 */
const CHECKS: Record<RequirementKind, Check> = {
  annual: checkAnnual,
  'hundred-hour': checkHundredHour,
  directive: checkDirectives,
  'life-limit': checkLifeLimits,
  'static-and-altimeter': checkStaticAndAltimeter,
  transponder: checkTransponderTest,
  'elt-inspection': checkEltInspection,
  'elt-battery': checkEltBattery,
  'vor-check': checkVorCheck,
  'maker-interval': checkMakerIntervals,
};

/** Lines for all recurring requirements. Bars when the total time in service is unknown, whatever is due by hours. */
export function checkRequirements(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  return [...barsForUnknownTime(aircraft), ...Object.values(CHECKS).flatMap((check) => check(aircraft, use))];
}
