/**
 * 14 CFR 91.407: flight after maintenance, preventive maintenance, rebuilding or alteration.
 *
 * - (a)(1): approved for return to service by a person 43.7 authorizes.
 * - (a)(2): the entry required by 43.9 or 43.11 has been made.
 * - (b): after work that may have changed flight characteristics appreciably, or affected operation in flight
 *   substantially, nobody but crewmembers is carried until an appropriately rated pilot with at least a private
 *   certificate has flown it, made an operational check, and logged the flight in the aircraft records.
 * - (c): no such flight is needed if ground tests or inspection show conclusively that there was no such change. Then
 *   the work says `not-needed`, and who decided that is recorded with it.
 */
import type { AircraftFacts, WorkFacts } from '../aircraft';
import type { PilotGrade, UseOfAircraft } from '../operations';
import { barsForMissing, type Line } from '../verdict';

const PRIVATE_OR_HIGHER: readonly PilotGrade[] = ['private', 'commercial', 'airline-transport'];

/** Lines for all work that is not behind us. */
export function checkWork(aircraft: AircraftFacts, use: UseOfAircraft): Line[] {
  return aircraft.work.flatMap((work) => [...checkReturnToService(work), ...checkCheckFlight(work, use)]);
}

/** 91.407(a). Work under way has neither entry nor approval; work entered has no approval yet. */
function checkReturnToService(work: WorkFacts): Line[] {
  const about = aboutWork(work);
  switch (work.state) {
    case 'started': {
      const because = `${work.title}: work under way. It needs its entry and its approval for return to service.`;
      return [{ effect: 'bars', cite: '14cfr91.407(a)(2)', because, about }];
    }
    case 'entered': {
      const because = `${work.title}: work not signed off. The entry is made, the approval for return to service is not.`;
      return [{ effect: 'bars', cite: '14cfr91.407(a)(1)', because, about }];
    }
    case 'signed':
      return [];
  }
}

/** 91.407(b), (c). Asked once the work is signed: before that, nothing flies anyway. */
function checkCheckFlight(work: WorkFacts, use: UseOfAircraft): Line[] {
  if (work.state !== 'signed') return [];
  const about = aboutWork(work);
  if (!work.checkFlight.known) return [barsForMissing('14cfr91.407(b)', work.checkFlight.missing, about)];
  switch (work.checkFlight.value) {
    case 'not-needed': {
      const because = `${work.title}: signed off, no check flight needed.`;
      return [{ effect: 'supports', cite: '14cfr91.407(c)', because, about }];
    }
    case 'flown': {
      const because = `${work.title}: signed off, check flight flown and logged.`;
      return [{ effect: 'supports', cite: '14cfr91.407(b)', because, about }];
    }
    case 'owed':
      return [checkFlightOwed(work, use)];
  }
}

/** 91.407(b): the only flight left is the check flight itself, with crew only and a pilot of private grade or higher. */
function checkFlightOwed(work: WorkFacts, use: UseOfAircraft): Line {
  const cite = '14cfr91.407(b)';
  const about = aboutWork(work);
  const refuse = (why: string): Line => ({
    effect: 'bars',
    cite,
    because: `${work.title}: check flight owed. ${why}`,
    about,
  });
  if (use.purpose !== 'check-flight') return refuse('Only the check flight itself may be flown first.');
  if (!use.crewOnly.known) return barsForMissing(cite, use.crewOnly.missing, about);
  if (!use.crewOnly.value) return refuse('Nobody but crewmembers may be aboard for it.');
  if (!use.pilotInCommandGrade.known) return barsForMissing(cite, use.pilotInCommandGrade.missing, about);
  if (!PRIVATE_OR_HIGHER.includes(use.pilotInCommandGrade.value)) {
    return refuse('It takes an appropriately rated pilot with at least a private certificate.');
  }
  return {
    effect: 'limits',
    cite,
    because: `${work.title}: check flight only. Crew only, an operational check, and the flight logged in the records.`,
    about,
  };
}

const aboutWork = (work: WorkFacts) => ({ kind: 'work', id: work.id, label: work.title }) as const;
