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
  /** Oil poured in, tenths of a quart. */
  readonly oilAddedTenths?: number;
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
  /** Where the aircraft has stored limits for the finding: what was measured, by measurement, in its smallest unit. */
  readonly readings?: Readonly<Record<string, number>>;
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
/** A part fitted in a story; its numbers are invented. One of it unless said. */
export interface FittedPart {
  readonly name: string;
  readonly number: string;
  readonly serial?: string;
  readonly batch?: string;
  readonly quantity?: string;
  readonly release?: string;
}

export interface RepairStep extends StepBase {
  readonly do: 'repair';
  readonly takes: number;
  readonly title: string;
  readonly workKind: 'preventive' | 'minor' | 'major';
  readonly preventiveItem?: number;
  readonly swapOnly?: boolean;
  readonly description: string;
  readonly references: string;
  /** Repaired unless said; looked for and not found, with how. */
  readonly outcome?: 'could-not-duplicate';
  readonly lookedFor?: string;
  readonly parts?: readonly FittedPart[];
  /** Hours of work, with one decimal. */
  readonly hours?: string;
  /** Of a major repair: which questions of Appendix A(b) were answered yes, and its papers. */
  readonly major?: {
    readonly done: readonly string[];
    readonly form337: string;
    readonly approvedData: string;
  };
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
