import type { Tx } from '../../lib/db/client';
import type { AircraftPlan } from '../shapes';
import { daysIntoMonth, instantAt } from './calendar';
import { aircraftId, demoId } from './ids';

const A_DAY = 86_400_000;

/** How an aircraft's hours grew: evenly, up to today's figure, or up to the day since which it is parked. */
export interface HoursPast {
  readonly plan: AircraftPlan;
  readonly stoppedAt: Date;
}

export const hoursPast = (plan: AircraftPlan, now: Date, zone: string): HoursPast => ({
  plan,
  stoppedAt: plan.parked ? instantAt(now, zone, daysIntoMonth(now, zone), '17:00') : now,
});

/** Total time in service at an instant, whole tenths. */
export function ttisAt({ plan, stoppedAt }: HoursPast, at: Date): number {
  const days = Math.max(0, (stoppedAt.getTime() - at.getTime()) / A_DAY);
  return plan.ttisTenths - Math.round(days * plan.tenthsADay);
}

/** When the aircraft had this total time. */
export const whenAt = ({ plan, stoppedAt }: HoursPast, ttisTenths: number): Date =>
  new Date(stoppedAt.getTime() - ((plan.ttisTenths - ttisTenths) / plan.tenthsADay) * A_DAY);

/** All three meters for a total time. */
export const metersFor = (plan: AircraftPlan, ttisTenths: number) => ({
  ttisTenths,
  hobbsTenths: ttisTenths + plan.hobbsAheadTenths,
  tachTenths: ttisTenths + plan.tachAheadTenths,
});

/** All three meters of one aircraft as read at a moment. */
interface Reading {
  readonly plan: AircraftPlan;
  readonly at: Date;
  readonly ttisTenths: number;
  readonly readById: string;
}

/** Writes readings and sets the meters of their aircraft. Meters never run back: a smaller figure is left alone. */
export async function readMeters(
  tx: Tx,
  operator: { readonly key: string; readonly id: string },
  readings: readonly Reading[],
): Promise<void> {
  const idOf = (plan: AircraftPlan) => aircraftId(operator.key, plan.registration);
  const standing = await tx.aircraft.findMany({
    where: { operatorId: operator.id, id: { in: readings.map(({ plan }) => idOf(plan)) } },
    select: { id: true, ttisTenths: true },
  });
  const before = new Map(standing.map((row) => [row.id, row.ttisTenths ?? 0]));
  const good = readings.filter(({ plan, ttisTenths }) => ttisTenths >= (before.get(idOf(plan)) ?? 0));
  await tx.meterReading.createMany({
    data: good.map(({ plan, at, ttisTenths, readById }) => ({
      id: demoId(`${operator.key}/reading/${plan.registration}/${at.toISOString()}`),
      operatorId: operator.id,
      aircraftId: idOf(plan),
      at,
      readById,
      ...metersFor(plan, ttisTenths),
    })),
  });
  for (const { plan, ttisTenths } of good) {
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId: operator.id, id: idOf(plan) } },
      data: metersFor(plan, ttisTenths),
    });
  }
}
