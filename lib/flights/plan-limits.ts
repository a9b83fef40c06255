/**
 * What cannot be a plan, whoever writes it: typed at the desk or out of a file. Our own limits; no rule is asked, because a
 * plan releases nothing. Pure.
 */
import type { HoursTenths, Instant } from '../rules/facts';
import { mostTenths } from '../rules/planned-hours';
import { said } from '../words/said';

export interface PlanProblem {
  readonly of: 'depart' | 'arrive' | 'hours';
  readonly say: string;
}

const A_DAY = 86_400_000;

/** Whether a flight with this arrival is over at `now`. */
export const isOver = (arriveAt: Instant, now: Instant): boolean => Date.parse(arriveAt) <= Date.parse(now);

/** The first thing wrong with the times of a plan, or null. */
export function planProblem(plan: {
  readonly departAt: Instant;
  readonly arriveAt: Instant;
  readonly plannedTenths: HoursTenths | null;
}): PlanProblem | null {
  const lasts = Date.parse(plan.arriveAt) - Date.parse(plan.departAt);
  if (lasts <= 0) return { of: 'arrive', say: said('The arrival must be later than the departure.') };
  if (lasts > A_DAY) return { of: 'arrive', say: said('One flight lasts 24 hours at most.') };
  if (plan.plannedTenths !== null && plan.plannedTenths > mostTenths(lasts)) {
    return { of: 'hours', say: said('More hours than lie between departure and arrival.') };
  }
  return null;
}
