/**
 * 14 CFR 91.225: ADS-B Out.
 *
 * (a), (b), (d) In the airspace listed (class A, B and C, within 30 nautical miles of the listed airports, above
 *   class B and C to 10,000 ft, class E at and above 10,000 ft, the Gulf), operable ADS-B Out. Whether a flight enters
 *   that airspace is told to the rules by the person who composes it.
 * (g) Air traffic control may authorize otherwise: (1) inoperative equipment, asked for at any time, to the final
 *   destination with stops on the way or to a place of repair; (2) no equipment, asked for at least one hour before.
 *
 * Not coded: performance standards; (e), aircraft certificated without an electrical system (stricter without);
 * (f), which asks to transmit where equipment is installed.
 * Read in the eCFR of 3 September 2026 (stored copy, github.com/Lyutenant/FAR-AIM).
 */
import type { AircraftFacts } from '../aircraft';
import type { Demand } from '../demand';
import { demandWhen } from '../demand-conditions';
import { installedCount } from '../equipment-count';
import type { UseOfAircraft } from '../operations';

/** (a), (b) and (d), with the relief of (g) where it is granted. Unasked or refused, the demand stands. */
export function demandsOf91225(aircraft: AircraftFacts, use: UseOfAircraft): Demand[] {
  return demandWhen(use.adsbAirspace, {
    function: 'adsb-out',
    cite: '14cfr91.225',
    because: 'This airspace needs ADS-B Out.',
    relief: use.atcAdsb === 'granted' ? withoutAdsb(aircraft) : null,
  });
}

/** (g)(1) for equipment that is installed, (g)(2) for none. */
function withoutAdsb(aircraft: AircraftFacts): NonNullable<Demand['relief']> {
  return installedCount(aircraft, 'adsb-out') > 0
    ? {
        cite: '14cfr91.225(g)(1)',
        limit:
          'ADS-B Out does not work: only as air traffic control has authorized, to the destination with its stops or to a place of repair.',
      }
    : {
        cite: '14cfr91.225(g)(2)',
        limit:
          'No ADS-B Out: only as air traffic control has authorized, asked for at least one hour before.',
      };
}
