import { readInOperator } from '../../lib/db/scope';
import { readMetersIn, readMetersOut } from '../../lib/releases/record-meters';
import { parseTenths } from '../../lib/rules/hours';
import type { FlightPlan } from '../stories';
import { instantAt, minutesLater } from './calendar';
import * as ids from './ids';
import { hoursPast, metersFor, ttisAt } from './meters';
import { flightId } from './release-flight';
import { granted, type Happening, type Stage } from './stage';

/** The meters of a released flight, read by its pilot when it left and when it was back. */
export function flightMeters(stage: Stage, flight: FlightPlan): Happening[] {
  const { zone } = stage.baseOf(flight.aircraft);
  const departs = instantAt(stage.now, zone, flight.daysAgo, flight.departs);
  const arrives = minutesLater(departs, flight.minutes);
  const ref = stage.person(flight.pilot);
  const releaseId = flightId(stage, flight);
  const plan = stage.aircraft(flight.aircraft);
  const read = (moment: 'out' | 'in', at: Date, tenthsSince: (standing: number) => number): Happening => ({
    at,
    what: `${flight.aircraft}: meters ${moment}`,
    async play() {
      const { hobbsTenths, tachTenths } = metersFor(plan, tenthsSince(await standingTenths(stage, flight)));
      const reading = {
        requestId: ids.demoId(`${releaseId}/meters/${moment}`),
        releaseId,
        moment,
        hobbsTenths,
        tachTenths,
        readAt: at.toISOString(),
      };
      const record = moment === 'out' ? readMetersOut : readMetersIn;
      granted(await record(ref, reading, { now: at }), `${flight.aircraft}: meters ${moment}`);
    },
  });
  // The year's hours grow evenly, and a flight must not run ahead of them: later readings would have to run back.
  const grown = ttisAt(hoursPast(plan, stage.now, zone), arrives);
  const flown = parseTenths(flight.hours) ?? 0;
  return [
    read('out', departs, (standing) => standing),
    read('in', arrives, (standing) => Math.max(standing, Math.min(standing + flown, grown))),
  ];
}

const standingTenths = ({ operator, operatorId }: Stage, flight: FlightPlan): Promise<number> =>
  readInOperator(operatorId, async (tx) => {
    const id = ids.aircraftId(operator.key, flight.aircraft);
    const row = await tx.aircraft.findUniqueOrThrow({ where: { operatorId_id: { operatorId, id } } });
    if (row.ttisTenths === null) throw new Error(`${flight.aircraft} has no total time in the demo`);
    return row.ttisTenths;
  });
