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

/** Writes a reading and sets the aircraft's meters. Meters never run back: a smaller figure is left alone. */
export async function readMeters(
  tx: Tx,
  operator: { readonly key: string; readonly id: string },
  plan: AircraftPlan,
  reading: { readonly at: Date; readonly ttisTenths: number; readonly readById: string },
): Promise<void> {
  const id = aircraftId(operator.key, plan.registration);
  const where = { operatorId_id: { operatorId: operator.id, id } };
  const { ttisTenths } = await tx.aircraft.findUniqueOrThrow({ where, select: { ttisTenths: true } });
  if (ttisTenths !== null && reading.ttisTenths < ttisTenths) return;
  const meters = metersFor(plan, reading.ttisTenths);
  await tx.meterReading.create({
    data: {
      id: demoId(`${operator.key}/reading/${plan.registration}/${reading.at.toISOString()}`),
      operatorId: operator.id,
      aircraftId: id,
      at: reading.at,
      readById: reading.readById,
      ...meters,
    },
  });
  await tx.aircraft.update({ where, data: meters });
}
