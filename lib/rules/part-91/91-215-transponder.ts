/**
 * 14 CFR 91.215: transponder with altitude reporting.
 *
 * (b) In the airspace it lists (class A, B and C, within 30 nautical miles of the listed airports, above class B and C,
 *   at and above 10,000 ft), an operable transponder with altitude reporting. Whether a flight enters that airspace
 *   is told to the rules by the person who composes it.
 * (d) Air traffic control may authorize otherwise: (1) an operating transponder without altitude reporting, asked for
 *   at any time; (2) an inoperative transponder, asked for at any time, to the final destination with stops on the way
 *   or to a place of repair; (3) no transponder at all, asked for at least one hour before.
 *
 * Not coded: (a) performance standards; the exceptions of (b)(3) and (5) for aircraft without an engine-driven
 * electrical system (stricter without); (c), which asks to switch on what is installed and maintained.
 * Read in the eCFR of 24 August 2026 (stored copy, github.com/Lyutenant/FAR-AIM).
 */
import type { AircraftFacts } from '../aircraft';
import type { Demand } from '../demand';
import { demandWhen } from '../demand-conditions';
import { installedCount, operativeCount } from '../equipment-count';
import type { UseOfAircraft } from '../operations';

/** (b), with the relief of (d) where air traffic control has granted it. Unasked or refused, the demand stands. */
export function demandsOf91215(aircraft: AircraftFacts, use: UseOfAircraft): Demand[] {
  const cite = '14cfr91.215(b)';
  const granted = use.atcTransponder === 'granted';
  return [
    ...demandWhen(use.transponderAirspace, {
      function: 'transponder',
      cite,
      because: 'This airspace needs a transponder.',
      relief: granted ? withoutTransponder(aircraft) : null,
    }),
    ...demandWhen(use.transponderAirspace, {
      function: 'altitude-reporting',
      cite,
      because: 'This airspace needs altitude reporting.',
      relief: granted ? withoutAltitudeReporting(aircraft) : null,
    }),
  ];
}

/** (d)(1) speaks of an operating transponder; without one, (d)(2) and (3) cover both. */
function withoutAltitudeReporting(aircraft: AircraftFacts): NonNullable<Demand['relief']> {
  const transponders = operativeCount(aircraft, 'transponder').operative;
  if (!transponders.known || transponders.value === 0) return withoutTransponder(aircraft);
  return {
    cite: '14cfr91.215(d)(1)',
    limit: 'Altitude reporting out: only as air traffic control has authorized for this flight.',
  };
}

/** (d)(2) for one that is installed, (d)(3) for none. */
function withoutTransponder(aircraft: AircraftFacts): NonNullable<Demand['relief']> {
  return installedCount(aircraft, 'transponder') > 0
    ? {
        cite: '14cfr91.215(d)(2)',
        limit:
          'Transponder out: only as air traffic control has authorized, to the destination with its stops or to a place of repair.',
      }
    : {
        cite: '14cfr91.215(d)(3)',
        limit:
          'No transponder: only as air traffic control has authorized, asked for at least one hour before.',
      };
}
