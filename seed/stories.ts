import type { EquipmentFunction, FindingKind } from '../lib/rules/aircraft';
import type { StationKey } from '../lib/rules/findings/stations';

/**
 * The shape of one write-up's story: what somebody found, and what became of it. The loader sends each step through the
 * same service a person's tap would go through, with the clock set to the time of the step. Minutes count from the report.
 */
interface StepBase {
  readonly by: string;
  readonly after: number;
}

/** Oil added, tyre inflated, samples clean. */
export interface ServiceStep extends StepBase {
  readonly do: 'service';
  readonly words: string;
}

export interface JudgeStep extends StepBase {
  readonly do: 'judge';
  readonly kind: FindingKind;
  readonly jasc: string;
  readonly severity: 'grounding' | 'limiting' | 'note';
  readonly statement: string;
}

export interface WithinLimitsStep extends StepBase {
  readonly do: 'within-limits';
  readonly measured: string;
  readonly limitText: string;
  readonly limitSource: string;
  readonly statement: string;
}

export interface DeferStep extends StepBase {
  readonly do: 'defer';
  readonly method: 'removed' | 'deactivated';
  readonly methodWords: string;
  readonly maintenance: boolean;
  readonly placard: string;
  readonly location: string;
  readonly statement: string;
  /** Under a minimum equipment list: its procedures are done. */
  readonly melProceduresDone?: boolean;
  /** The entry for the work of taking it out of use, where that is maintenance. */
  readonly entry?: { readonly description: string; readonly references: string };
}

export interface PlacardStep extends StepBase {
  readonly do: 'placard';
}

/** Work begun, entered, and signed unless `leave` says where it stops. */
export interface RepairStep extends StepBase {
  readonly do: 'repair';
  readonly takes: number;
  readonly title: string;
  readonly workKind: 'preventive' | 'minor' | 'major';
  readonly preventiveItem?: number;
  readonly swapOnly?: boolean;
  readonly description: string;
  readonly references: string;
  readonly parts?: string;
  readonly checkFlight?: { readonly by: string; readonly reason: string; readonly words: string };
  /** Somebody whose certificates did not allow it tried to sign first, and was refused. */
  readonly refusedFirst?: string;
  readonly leave?: 'entered';
}

export type Step = ServiceStep | JudgeStep | WithinLimitsStep | DeferStep | PlacardStep | RepairStep;

/** Days ago at a local time of the base, or minutes before the moment of loading. */
export type When = { readonly daysAgo: number; readonly at: string } | { readonly minutesAgo: number };

export interface Story {
  readonly aircraft: string;
  readonly when: When;
  readonly by: string;
  /** Found on a walkaround of all stations, recorded as such. */
  readonly walk?: boolean;
  readonly station: StationKey;
  /** Key of the catalogue; null for something else, with `kind` and `jasc`. */
  readonly finding: string | null;
  readonly kind?: FindingKind;
  readonly jasc?: string;
  readonly equipment?: EquipmentFunction;
  readonly inoperative?: number;
  readonly place: string;
  readonly words: string;
  readonly measured?: Readonly<Record<string, number>>;
  readonly then: readonly Step[];
}

/** A flight that was released. */
export interface FlightPlan {
  readonly aircraft: string;
  readonly daysAgo: number;
  /** Local time of departure; released half an hour before. */
  readonly departs: string;
  readonly minutes: number;
  readonly hours: string;
  readonly purpose: 'instruction-for-hire' | 'student-solo' | 'private';
  readonly to?: string;
  readonly dispatcher: string;
  readonly pilot: string;
}
