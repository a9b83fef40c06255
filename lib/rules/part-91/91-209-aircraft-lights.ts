/**
 * 14 CFR 91.209: aircraft lights.
 *
 * (a) From sunset to sunrise (not from dusk to dawn: this begins before "night") nobody may (1) operate an aircraft
 *   without lighted position lights.
 * (b) Nobody may operate an aircraft that is equipped with an anticollision light system without lighting it, by day
 *   or night. The pilot in command may switch it off where operating conditions make that safer.
 *
 * Not coded: (a)'s other hours in Alaska (stricter without); (a)(2) and (3), parking, moving and anchoring.
 * Read in the eCFR of 3 September 2026 (stored copy, github.com/Lyutenant/FAR-AIM).
 */
import type { AircraftFacts, DeferralFacts, DiscrepancyFacts } from '../aircraft';
import type { Demand } from '../demand';
import { demandWhen } from '../demand-conditions';
import { installedCount, inoperativeWriteUps } from '../equipment-count';
import { known } from '../facts';
import type { UseOfAircraft } from '../operations';
import type { Line } from '../verdict';

/** (a)(1). Paragraph (b) demands no system, only that an installed one be lit: see `checkAnticollisionLit`. */
export function demandsOf91209(aircraft: AircraftFacts, use: UseOfAircraft): Demand[] {
  return demandWhen(known(use.betweenSunsetAndSunrise), {
    function: 'position-lights',
    count: Math.max(1, installedCount(aircraft, 'position-lights')),
    cite: '14cfr91.209(a)(1)',
    because: 'Between sunset and sunrise every position light must be lit.',
  });
}

/**
 * (b): an installed anticollision light that does not work bars, by day as by night, until it is deactivated or
 * removed and placarded, after which the aircraft is not equipped with it. Whether the flight needs the system all
 * the same is 91.205(b)(11) and (c)(3). Their relief, to continue to a place of repair, does not lift this paragraph.
 */
export const checkAnticollisionLit = (aircraft: AircraftFacts): Line[] =>
  inoperativeWriteUps(aircraft, 'anticollision-lights')
    .filter((writeUp) => !isTakenOutOfUse(writeUp.deferral))
    .map(barsUnlit);

const barsUnlit = (writeUp: DiscrepancyFacts): Line => ({
  effect: 'bars',
  cite: '14cfr91.209(b)',
  because:
    'An installed anticollision light must be lit. This one does not work and is not deactivated and placarded.',
  about: { kind: 'discrepancy', id: writeUp.id, label: `${writeUp.number} ${writeUp.title}` },
  strictReading:
    'Whether a failed system still counts as equipped is not settled; it does until deactivated and placarded.',
});

/** Placarded, and recorded where taking it out of use was maintenance. */
function isTakenOutOfUse(deferral: DeferralFacts | null): boolean {
  if (deferral === null || !deferral.placardPlaced) return false;
  const isMaintenance = deferral.method === 'removed' || deferral.deactivationIsMaintenance;
  return !isMaintenance || deferral.maintenanceRecordSigned;
}
