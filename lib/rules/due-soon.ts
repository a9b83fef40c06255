/**
 * What of an aircraft's recurring requirements falls due soon enough to be done in the same stay at the shop: within
 * 30 days or 25 hours (issue 4, no other source), or is over, or cannot be said. When each falls due is `due.ts`.
 */
import type { AircraftFacts, RequirementKind } from './aircraft';
import { dueOf } from './due';
import type { CalendarDate, HoursTenths } from './facts';

export const DUE_SOON_DAYS = 30;
export const DUE_SOON_TENTHS: HoursTenths = 250;

export interface DueSoon {
  readonly requirementId: string;
  readonly kind: RequirementKind;
  readonly name: string;
  readonly binding: boolean;
  /** Last good day; null without a calendar limit. */
  readonly on: CalendarDate | null;
  /** Days to it, negative when over. */
  readonly remainingDays: number | null;
  /** Time in service left, negative when over; null without an hours limit. */
  readonly remainingTenths: HoursTenths | null;
  /** Why nothing can be said; null when the figures stand. */
  readonly missing: string | null;
}

/** Everything due soon, over, or not known, in the order of the aircraft's own list. */
export function dueSoon(aircraft: AircraftFacts, today: CalendarDate): readonly DueSoon[] {
  return aircraft.requirements.flatMap((requirement) => {
    const due = dueOf(requirement, aircraft.ttisTenths, aircraft.requirements);
    const remainingDays = due.remainingDays(today);
    const ttisMissing =
      due.tenths !== null && !aircraft.ttisTenths.known ? aircraft.ttisTenths.missing : null;
    const missing = due.missing ?? ttisMissing;
    const soon =
      missing !== null ||
      (remainingDays !== null && remainingDays <= DUE_SOON_DAYS) ||
      (due.remainingTenths !== null && due.remainingTenths <= DUE_SOON_TENTHS);
    if (!soon) return [];
    return [
      {
        requirementId: requirement.id,
        kind: requirement.kind,
        name: requirement.name,
        binding: requirement.binding,
        on: due.on,
        remainingDays,
        remainingTenths: due.remainingTenths,
        missing,
      },
    ];
  });
}
