/**
 * Facts: what the rules are told. Every fact that can decide something is either known or unknown, and an
 * unknown one names what is missing, so that the answer can say "no go: ... is not known" instead of guessing.
 * There are no default values anywhere in `lib/rules`.
 */

/** A fact somebody has established. */
export interface Known<T> {
  readonly known: true;
  readonly value: T;
}

/** A fact nobody has established. `missing` completes the sentence "not known: ...". */
export interface Unknown {
  readonly known: false;
  readonly missing: string;
}

export type Fact<T> = Known<T> | Unknown;

/** Wraps an established value. */
export const known = <T>(value: T): Known<T> => ({ known: true, value });

/** Says what is missing, in words a dispatcher can act on ("the certification date of the type"). */
export const unknown = (missing: string): Unknown => ({ known: false, missing });

/** Turns a nullable database column into a fact. */
export const factOf = <T>(value: T | null | undefined, missing: string): Fact<T> =>
  value === null || value === undefined ? unknown(missing) : known(value);

/** An instant as ISO 8601 in UTC, for example `2026-11-25T16:58:00Z`. */
export type Instant = string;

/** A calendar date `YYYY-MM-DD` in the zone of the base concerned. Compares correctly as text. */
export type CalendarDate = string;

/** Hours as whole tenths: 12.3 h is 123. */
export type HoursTenths = number;
