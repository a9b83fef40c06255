/**
 * What of an aircraft's recurring requirements falls due soon enough to be done in the same stay at the shop: inside the
 * window of `due-window.ts`, or over, or not to be said. When each falls due is `due.ts`.
 */
import type { AircraftFacts, RequirementKind } from './aircraft';
import { dueOf } from './due';
import { dueGroupOf } from './due-window';
import type { CalendarDate, HoursTenths } from './facts';

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
    if (dueGroupOf({ remainingDays, remainingTenths: due.remainingTenths, missing }) === 'later') return [];
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
