import { planFlight } from '../../lib/flights/plan-flight';
import type { PlannedFlightPlan } from '../planned-flights';
import { instantAt, minutesLater, wallClock } from './calendar';
import * as ids from './ids';
import { granted, type Stage } from './stage';

/** Plans the flights of the coming days, as the desk does it, at the moment of loading: they lie ahead, not in the story. */
export async function planAhead(stage: Stage, plans: readonly PlannedFlightPlan[]): Promise<void> {
  const { operator, now } = stage;
  for (const plan of plans) {
    const { zone } = stage.baseOf(plan.aircraft);
    const departs = instantAt(now, zone, -plan.inDays, plan.departs);
    const input = {
      requestId: ids.demoId(`${operator.key}/planned/${plan.aircraft}/${plan.inDays}`),
      aircraftId: ids.aircraftId(operator.key, plan.aircraft),
      pilotId: plan.pilot ? ids.personId(operator.key, plan.pilot) : null,
      departLocal: wallClock(departs, zone),
      arriveLocal: wallClock(minutesLater(departs, plan.minutes), zone),
      plannedHours: plan.hours,
      words: plan.words,
    };
    granted(
      await planFlight(stage.person(plan.by), input, { now }),
      `${plan.aircraft} planned by ${plan.by}`,
    );
  }
}
