import { writeInOperator } from '../../lib/db/scope';
import type { WalkPlan } from '../walkarounds';
import { instantAt, minutesLater } from './calendar';
import { hoursPast, readMeters, ttisAt } from './meters';
import type { Happening, Stage } from './stage';
import { walkHappening } from './walk';

/** A walkaround at which the meters were read too, so that what was measured has its time in service. */
export function measuredWalk(stage: Stage, plan: WalkPlan): Happening[] {
  const aircraft = stage.aircraft(plan.aircraft);
  const { zone } = stage.baseOf(plan.aircraft);
  const at = minutesLater(instantAt(stage.now, zone, plan.daysAgo, plan.at), plan.minutes - 1);
  const readById = stage.person(plan.by).personId;
  const ttisTenths = ttisAt(hoursPast(aircraft, stage.now, zone), at);
  return [
    {
      at,
      what: `${plan.aircraft}: meters at the walkaround`,
      play: () =>
        writeInOperator(stage.operatorId, (tx) =>
          readMeters(tx, { key: stage.operator.key, id: stage.operatorId }, [
            { plan: aircraft, at, ttisTenths, readById },
          ]),
        ),
    },
    walkHappening(stage, plan),
  ];
}
