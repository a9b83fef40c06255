import type { MeasurementKey } from '../findings/measurements';
import type { AreaKey } from './areas';

/**
 * The walkaround list of an aircraft type: stations in walking order, at each what to look for. Data, made by a manager
 * and versioned; a walkaround keeps the version it was walked by. The content of a version never changes.
 */
export interface WalkaroundList {
  readonly stations: readonly ListStation[];
}

export interface ListStation {
  /** Each area stands in a list once at most; it is the station's key everywhere, also in a finding. */
  readonly area: AreaKey;
  readonly title: string;
  readonly items: readonly ListItem[];
}

interface ItemBase {
  /** Unique within the list, and kept from version to version while it means the same thing. */
  readonly key: string;
  readonly title: string;
  /** What is good and what is not, short enough for a phone. */
  readonly lookFor: string;
}

/** Something to look at. */
export interface LookItem extends ItemBase {
  readonly kind: 'look';
}

/** Something to measure: whole numbers of the smallest unit of its measurement. */
export interface NumberItem extends ItemBase {
  readonly kind: 'number';
  readonly measurement: MeasurementKey;
  /** The limit of the type; a limit stored for the very aircraft goes before it. Null: recorded, judged by nothing. */
  readonly limit: ItemLimit | null;
  /** The catalogue's finding that a value outside the limit is. Null only where there is no limit to be outside of. */
  readonly findingKey: string | null;
}

/** A border value is within. Both null is no limit. */
export interface ItemLimit {
  readonly min: number | null;
  readonly max: number | null;
  /** Document and section the limit was taken from. Never empty. */
  readonly source: string;
}

/** A drain to sample. */
export interface SampleItem extends ItemBase {
  readonly kind: 'sample';
  /** How the drain is called on the ramp: "L1". */
  readonly drain: string;
}

export type ListItem = LookItem | NumberItem | SampleItem;
