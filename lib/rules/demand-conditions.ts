/**
 * The conditions under which a paragraph demands equipment, with unknown facts carried through: a condition is
 * false only when that is known, and unknown when the answer hangs on a missing fact, which it then names.
 *
 * 14 CFR 1.1, small aircraft: 12,500 pounds or less maximum certificated takeoff weight.
 */
import type { AircraftTypeFacts } from './aircraft';
import type { Demand } from './demand';
import { known, unknown, type CalendarDate, type Fact } from './facts';

const SMALL_AIRCRAFT_LB = 12_500;

/** True when all hold, false when one is known not to, otherwise the first unknown one. */
export function allHold(...conditions: readonly Fact<boolean>[]): Fact<boolean> {
  if (conditions.some((condition) => condition.known && !condition.value)) return known(false);
  return conditions.find((condition) => !condition.known) ?? known(true);
}

/** Whether a fact is so, where it is known. */
export const holds = <T>(fact: Fact<T>, test: (value: T) => boolean): Fact<boolean> =>
  fact.known ? known(test(fact.value)) : fact;

/** "After" a date: the day itself is not after it. */
export const isAfter = (date: Fact<CalendarDate>, border: CalendarDate): Fact<boolean> =>
  holds(date, (value) => value > border);

/** Small aircraft of 14 CFR 1.1: 12,500 lb itself is still small. */
export const isSmall = (type: AircraftTypeFacts): Fact<boolean> =>
  holds(type.maxTakeoffWeightLb, (pounds) => pounds <= SMALL_AIRCRAFT_LB);

/** What a demand asks, before it is said whether it applies. One of it and no relief unless said. */
export type Ask = Omit<Demand, 'applies' | 'count' | 'relief'> & Partial<Pick<Demand, 'count' | 'relief'>>;

/** The demand under a condition: none when that is known not to hold, an unknown one when it is not known. */
export function demandWhen(condition: Fact<boolean>, ask: Ask): Demand[] {
  if (!condition.known) return [{ count: 1, relief: null, ...ask, applies: condition }];
  return condition.value ? [{ count: 1, relief: null, ...ask, applies: known(true) }] : [];
}

/** The demand always. */
export const demandAlways = (ask: Ask): Demand[] => demandWhen(known(true), ask);

/**
 * The demand, under a condition, for as many as a fact says. When the number is not known, or is no whole number, the
 * demand is unknown and nothing satisfies it. Fewer than one counts as one: a list that counts none of what every
 * aircraft has is a slip, not a dispensation.
 */
export function demandAsManyWhen(condition: Fact<boolean>, count: Fact<number>, ask: Ask): Demand[] {
  const whole =
    count.known && !Number.isSafeInteger(count.value) ? unknown(`how many ${ask.function}`) : count;
  if (whole.known) return demandWhen(condition, { ...ask, count: Math.max(1, whole.value) });
  return demandWhen(allHold(condition, whole), { ...ask, count: Number.POSITIVE_INFINITY });
}
