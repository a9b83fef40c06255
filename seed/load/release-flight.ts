import { answerFlight } from '../../lib/releases/answer-flight';
import { releaseFlight } from '../../lib/releases/release-flight';
import type { FlightPlan } from '../stories';
import { instantAt, minutesLater, wallClock } from './calendar';
import * as ids from './ids';
import { granted, type Happening, type Stage } from './stage';

const RELEASED_MINUTES_BEFORE = 30;

/** The number of a flight's release. */
export const flightId = ({ operator }: Stage, flight: FlightPlan): string =>
  ids.demoId(`${operator.key}/flight/${flight.aircraft}/${flight.daysAgo}`);

/** A flight asked about and released half an hour before it left, as the desk does it. */
export function releaseHappening(stage: Stage, flight: FlightPlan): Happening {
  const from = stage.baseOf(flight.aircraft);
  const to = stage.operator.bases.find((base) => base.key === (flight.to ?? from.key)) ?? from;
  const departs = instantAt(stage.now, from.zone, flight.daysAgo, flight.departs);
  const at = minutesLater(departs, -RELEASED_MINUTES_BEFORE);
  const what = `${flight.aircraft} released by ${flight.dispatcher}`;
  return {
    at,
    what,
    async play() {
      const ref = stage.person(flight.dispatcher);
      const composed = {
        aircraftId: ids.aircraftId(stage.operator.key, flight.aircraft),
        pilotId: ids.personId(stage.operator.key, flight.pilot),
        fromBaseId: ids.baseId(stage.operator.key, from.key),
        toBaseId: ids.baseId(stage.operator.key, to.key),
        departLocal: wallClock(departs, from.zone),
        arriveLocal: wallClock(minutesLater(departs, flight.minutes), to.zone),
        rules: 'VFR',
        purpose: flight.purpose,
        plannedHours: flight.hours,
        overWaterBeyondGlide: 'no',
        transponderAirspace: from.transponderAirspace || to.transponderAirspace ? 'yes' : 'no',
        adsbAirspace: from.adsbAirspace || to.adsbAirspace ? 'yes' : 'no',
        controlledAirspace: 'yes',
        usesVor: 'no',
        trainingWithin50Nm: flight.purpose === 'private' ? 'no' : 'yes',
        crewOnly: 'no',
        highestAltitudeFtMsl: 4500,
        atcTransponder: 'not-asked',
        atcAdsb: 'not-asked',
        continuingToRepair: false,
      };
      const asked = granted(await answerFlight(ref, composed, { now: at }), what);
      const input = {
        ...composed,
        requestId: flightId(stage, flight),
        factsVersion: asked.factsVersion,
        limitsPassedOn: asked.answer.outcome === 'go-with-limits',
      };
      granted(await releaseFlight(ref, input, { now: at }), what);
    },
  };
}
