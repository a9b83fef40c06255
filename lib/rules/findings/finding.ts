import type { EquipmentFunction, FindingKind } from '../aircraft';
import type { CiteId } from '../law';
import type { WorkToSign } from '../work-to-sign';
import type { MeasurementKey } from './measurements';
import type { StationKey } from './stations';

/**
 * Where a finding starts before anybody has measured or looked closer.
 * - `ground`: no flight until somebody entitled has signed.
 * - `hold`: undecided until a mechanic has looked; undecided grounds.
 * - `ask-91.213`: equipment that does not work; the deferral rules say for which flights it matters.
 * - `service`: no flight until serviced; no maintenance entry is needed for the servicing itself.
 * - `note`: worth knowing.
 */
export type ProposedCourse = 'ground' | 'hold' | 'ask-91.213' | 'service' | 'note';

/** Who settles a finding of this sort. `mechanic` includes an owner-pilot where the work is preventive maintenance. */
export type SettledBy = 'mechanic' | 'pilot-servicing' | 'deferral-or-repair' | 'anyone';

/**
 * How a measurement counts towards "within limits".
 * - `needed`: must be measured, and judged against a stored limit.
 * - `if-measured`: judged when measured.
 * - `described`: recorded, never judged.
 */
export type MeasurementRole = 'needed' | 'if-measured' | 'described';

/** One way the finding is usually put right, as the sign-off rules want it. */
export interface UsualWork extends Pick<WorkToSign, 'part' | 'kind' | 'preventiveItem' | 'swapOnly'> {
  readonly what: string;
}

/** A finding that covers several instruments or places: each with its own code and function. */
export interface FindingChoice {
  readonly label: string;
  readonly jasc: string;
  readonly equipmentFunction: EquipmentFunction | null;
}

export interface CatalogueFinding {
  readonly key: string;
  readonly title: string;
  /** Code filed under when `choices` is empty; with choices the code of the first, never taken unasked. */
  readonly jasc: string;
  readonly choices: readonly FindingChoice[];
  readonly kind: FindingKind;
  /** Where it is most likely met. */
  readonly station: StationKey;
  /** Other stations where it fits. */
  readonly alsoAt: readonly StationKey[];
  readonly equipmentFunction: EquipmentFunction | null;
  readonly usualAction: string;
  readonly measurements: readonly { readonly key: MeasurementKey; readonly role: MeasurementRole }[];
  readonly proposed: ProposedCourse;
  readonly settledBy: SettledBy;
  /** Usual ways to put it right; empty when no maintenance is done. Each says who may sign, through `signersFor`. */
  readonly work: readonly UsualWork[];
  /** First item of Appendix A(c) among `work`; null when none of it is preventive maintenance. */
  readonly preventiveItem: number | null;
  /** Paragraph behind the limit or the grounding, beyond 91.7 and 91.405, where one was found. */
  readonly cite: CiteId | null;
  /** `checked`: a text was read for the condition. `memory`: not confirmed. `design`: our own choice. */
  readonly status: 'checked' | 'memory' | 'design';
  readonly source: string;
}

/** What a row states; the rest has a plain empty meaning that `finding` fills in. */
type Row = Omit<
  CatalogueFinding,
  | 'key'
  | 'choices'
  | 'alsoAt'
  | 'equipmentFunction'
  | 'measurements'
  | 'settledBy'
  | 'preventiveItem'
  | 'cite'
> &
  Partial<
    Pick<CatalogueFinding, 'choices' | 'alsoAt' | 'equipmentFunction' | 'measurements' | 'settledBy' | 'cite'>
  >;

const SETTLED_BY: Readonly<Record<ProposedCourse, SettledBy>> = {
  ground: 'mechanic',
  hold: 'mechanic',
  'ask-91.213': 'deferral-or-repair',
  service: 'pilot-servicing',
  note: 'anyone',
};

/** Builds a row. Left out means: no choices, one station, no equipment, nothing to measure, no special paragraph. */
export function finding(key: string, row: Row): CatalogueFinding {
  return {
    key,
    choices: [],
    alsoAt: [],
    equipmentFunction: null,
    measurements: [],
    settledBy: SETTLED_BY[row.proposed],
    cite: null,
    ...row,
    preventiveItem: row.work.find((work) => work.preventiveItem !== null)?.preventiveItem ?? null,
  };
}

/** Minor work on a part. */
export const minor = (part: UsualWork['part'], what: string): UsualWork => ({
  what,
  part,
  kind: 'minor',
  preventiveItem: null,
  swapOnly: false,
});

/** Taking an instrument or radio out and putting one in. */
export const swap = (part: 'instrument' | 'avionics', what: string): UsualWork => ({
  ...minor(part, what),
  swapOnly: true,
});

/** Major work on a part. */
export const major = (part: UsualWork['part'], what: string): UsualWork => ({
  ...minor(part, what),
  kind: 'major',
});

/** An item of Appendix A(c). */
export const preventive = (part: UsualWork['part'], preventiveItem: number, what: string): UsualWork => ({
  ...minor(part, what),
  kind: 'preventive',
  preventiveItem,
});
