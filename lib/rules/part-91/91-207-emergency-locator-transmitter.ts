/**
 * 14 CFR 91.207: emergency locator transmitters, airplanes only. When one must be attached and operable.
 *
 * (a) Except as (e) and (f) say, a US-registered civil airplane needs one: (2) outside parts 121, 125 and 135, an
 *   approved personal or automatic transmitter in operable condition.
 * (e) An airplane may be ferried (2) with an inoperative one from a place where it cannot be repaired or replaced to a
 *   place where it can. Nobody but required crewmembers aboard.
 * (f) (a) does not apply to (3) aircraft in training wholly within 50 nautical miles of the airport where the local
 *   flight began; (9) aircraft equipped to carry one person; (10) aircraft whose transmitter is temporarily removed
 *   for inspection, repair, modification or replacement: (i) with a record of the date first removed, make, model,
 *   serial number and reason, and a placard in the pilot's view; (ii) for not more than 90 days after that first
 *   removal.
 *
 * Elsewhere: (c) battery and (d) inspection are requirements with a due date. Not coded: (a)(1), (b); (e)(1), ferry of
 * a newly acquired airplane; (f)(1), (2), (4) to (8) and (11), which a school's airplane does not meet. Without the
 * relief the demand stands. Read in the eCFR of 24 August 2026 (stored copy, github.com/Lyutenant/FAR-AIM).
 */
import type { AircraftFacts, DeferralFacts } from '../aircraft';
import type { Demand } from '../demand';
import { demandWhen } from '../demand-conditions';
import { inoperativeWriteUps } from '../equipment-count';
import { nauticalMilesBetween } from '../distance';
import { known, type CalendarDate, type Fact } from '../facts';
import { dayInWords } from '../in-words';
import { lastDayWithinDays } from '../months';
import type { UseOfAircraft } from '../operations';

/** (f)(10)(ii): not more than 90 days after the first removal; day 1 is the day after it. */
const REMOVED_DAYS = 90;
/** (f)(3): "a 50-nautical mile radius of the airport from which such local flight operations began". */
const TRAINING_NM = 50;

type Relief = NonNullable<Demand['relief']>;
type ReliefParagraph = (aircraft: AircraftFacts, use: UseOfAircraft) => Relief | null;

/** (a)(2), with the first relief of (e) and (f) that this use meets. */
export function demandsOf91207(aircraft: AircraftFacts, use: UseOfAircraft): Demand[] {
  if (onePersonAircraft(aircraft)) return [];
  const reliefs = [temporarilyRemoved, trainingNearby, ferryToRepair];
  const relief = reliefs.reduce<Relief | null>((found, next) => found ?? next(aircraft, use), null);
  return demandWhen(known(aircraft.type.category === 'airplane'), {
    function: 'elt',
    cite: '14cfr91.207(a)(2)',
    because: 'An airplane needs an emergency locator transmitter.',
    relief,
    strictReading: relief === null ? (strictOnSolo(use) ?? farOff(use)) : undefined,
  });
}

/**
 * (e)(2). A flight with a student or a customer is no ferry flight, whoever is aboard; both places must be known for
 * what they are.
 */
const ferryToRepair: ReliefParagraph = (_aircraft, use) => {
  const crewOnly = use.crewOnly.known && use.crewOnly.value;
  const noneHere = use.from.repairAvailable.known && !use.from.repairAvailable.value;
  const someThere = use.to.repairAvailable.known && use.to.repairAvailable.value;
  const ferry =
    use.purpose === 'private' || use.purpose === 'check-flight' || use.purpose === 'to-inspection';
  if (!(crewOnly && noneHere && someThere && ferry)) return null;
  return {
    cite: '14cfr91.207(e)(2)',
    limit: `Emergency locator transmitter out: ferry to ${use.to.ident} for repair only, required crew alone aboard.`,
  };
};

/**
 * (f)(3): whether the flight is training wholly within 50 nautical miles. Solo flights are left out, see `strictOnSolo`;
 * rental is no training. Whatever was answered, a flight to a place farther off than that is not within them.
 */
export function isTrainingNearby(use: UseOfAircraft): Fact<boolean> {
  if (use.purpose !== 'instruction-for-hire' || isFarOff(use)) return known(false);
  return use.trainingWithin50Nm;
}

const isFarOff = ({ from, to }: UseOfAircraft): boolean => nauticalMilesBetween(from, to) > TRAINING_NM;

const trainingNearby: ReliefParagraph = (_aircraft, use) => {
  const nearby = isTrainingNearby(use);
  if (!nearby.known || !nearby.value) return null;
  return {
    cite: '14cfr91.207(f)(3)',
    limit: `Emergency locator transmitter out: training only, all of it within 50 nautical miles of ${use.from.ident}.`,
  };
};

/** (f)(9): known to have one seat. */
const onePersonAircraft = ({ type }: AircraftFacts): boolean => type.seats.known && type.seats.value === 1;

/**
 * (f)(10): every write-up on the transmitter is a removal, recorded and placarded, and the earliest first removal is
 * not more than 90 days before the last day of the flight. Taking it out again does not start the count anew.
 */
const temporarilyRemoved: ReliefParagraph = (aircraft, use) => {
  const writeUps = inoperativeWriteUps(aircraft, 'elt');
  const removals = writeUps.map(({ deferral }) => completeRemoval(deferral));
  const dates = removals.filter((date) => date !== null).sort();
  const [first] = dates;
  if (first === undefined || dates.length < removals.length) return null;
  const lastDay = lastDayWithinDays(first, REMOVED_DAYS);
  const flightEnds = use.arriveOn > use.departOn ? use.arriveOn : use.departOn;
  if (flightEnds > lastDay || use.departOn < first) return null;
  return {
    cite: '14cfr91.207(f)(10)',
    limit: `Emergency locator transmitter removed on ${dayInWords(first)}: no flight after ${dayInWords(lastDay)} without it.`,
  };
};

/** (f)(10)(i): the date of first removal, if the transmitter is out, recorded in full and placarded. */
function completeRemoval(deferral: DeferralFacts | null): CalendarDate | null {
  if (deferral === null || deferral.method !== 'removed' || !deferral.placardPlaced) return null;
  if (deferral.eltRemoval === null || !deferral.eltRemoval.recordComplete) return null;
  return deferral.eltRemoval.firstRemovedOn;
}

/** Whether a student's solo is a training operation in (f)(3) is disputed. */
const strictOnSolo = (use: UseOfAircraft): string | undefined =>
  use.purpose === 'student-solo' && use.trainingWithin50Nm.known && use.trainingWithin50Nm.value
    ? 'Whether a solo within 50 nautical miles is training under 91.207(f)(3) is disputed; it is read as not.'
    : undefined;

/** Said to be within 50 nautical miles, to a place that is not. */
const farOff = (use: UseOfAircraft): string | undefined =>
  use.trainingWithin50Nm.known && use.trainingWithin50Nm.value && isFarOff(use)
    ? `${use.to.ident} lies more than 50 nautical miles from ${use.from.ident}, so 91.207(f)(3) does not apply.`
    : undefined;
