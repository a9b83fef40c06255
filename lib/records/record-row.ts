import type { CalendarDate, Instant } from '../rules/facts';
import type { PartOfAircraft } from '../rules/jasc';
import type { Retention } from '../rules/part-91/91-417-records';

/** 91.417(a)(1): records are kept for each airframe, engine, propeller and appliance. */
export const PARTS_OF_RECORDS = ['airframe', 'engine', 'propeller', 'appliance', 'aircraft'] as const;
export type PartOfRecord = (typeof PARTS_OF_RECORDS)[number];

export type KindOfRecord =
  | 'work'
  | 'inspection'
  | 'compliance'
  | 'determination'
  | 'deferral'
  | 'check-flight'
  | 'list'
  | 'extension'
  | 'permit'
  | 'permit-inspection'
  | 'vouching';

/** A signed record of an aircraft, as the records page shows it. */
export interface RecordRow {
  readonly id: string;
  readonly kind: KindOfRecord;
  /** `aircraft`: the whole of it, or nobody has said which part. */
  readonly part: PartOfRecord;
  readonly title: string;
  readonly words: string | null;
  /** The day the work was completed, or what was signed was said. */
  readonly on: CalendarDate;
  readonly at: Instant;
  readonly ttisTenths: number | null;
  readonly by: string;
  readonly certificate: { readonly kind: string; readonly number: string } | null;
  readonly hash: string | null;
  /** In what way it is no longer as it was signed; null for records without a signature of their own. */
  readonly changes: readonly string[] | null;
  /** It counts no more, or otherwise; in words. */
  readonly supersededWords: string | null;
  /** It takes the place of an earlier one; in words. */
  readonly correctsWords: string | null;
  readonly retention: Retention;
  readonly about: {
    readonly kind: 'write-up' | 'inspection' | 'permit';
    readonly id: string;
    readonly label: string;
  } | null;
  readonly paper: { readonly kind: 'entry' | 'inspection' | 'list'; readonly id: string } | null;
}

const PARTS: Readonly<Record<PartOfAircraft, PartOfRecord>> = {
  airframe: 'airframe',
  powerplant: 'engine',
  propeller: 'propeller',
  instrument: 'appliance',
  avionics: 'appliance',
};

/** The part of a piece of work as records name it. */
export const partOfRecord = (part: string): PartOfRecord => PARTS[part as PartOfAircraft] ?? 'aircraft';
