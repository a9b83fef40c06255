/**
 * What became of an aircraft, as plain facts: the history the figures are worked out from. The records as they stand now,
 * not as they stood then: an entry written late counts from the day it speaks of.
 */
import type { FindingKind, RequirementKind, Severity } from '../aircraft';
import type { CalendarDate, Instant } from '../facts';
import type { Stretch } from './spans';

/** How a write-up stood from a moment on. */
export interface Judged {
  readonly at: Instant;
  /** `opening`: what the catalogue said by itself. Everything after it is somebody's signed judgement. */
  readonly by: 'opening' | 'person';
  readonly kind: FindingKind;
  /** Null: undecided, and undecided grounds. */
  readonly severity: Severity | null;
  /** Found within a sourced limit. */
  readonly withinLimits: boolean;
}

export interface DeferralHistory {
  readonly id: string;
  readonly begunAt: Instant;
  /** When its last step was taken: placard up, and the record signed where taking it out of use was maintenance. */
  readonly effectiveAt: Instant | null;
  /** When it stops counting by itself: midnight after the last day of a repair interval or of a removed transmitter. */
  readonly lapsesAt: Instant | null;
  readonly endedAt: Instant | null;
  /** Since a required inspection that passed without a word on it, until one was said (91.405(c)). */
  readonly unspoken: readonly Stretch[];
}

export interface WriteUpHistory {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  /** Four digits, or empty. */
  readonly jasc: string;
  readonly openedAt: Instant;
  readonly closedAt: Instant | null;
  /** repaired, serviced, could-not-duplicate, removed, ... */
  readonly closedHow: string | null;
  /** Oldest first; the first is the opening. */
  readonly judged: readonly Judged[];
  readonly deferrals: readonly DeferralHistory[];
  /** Work on it from its beginning until it was signed or given up. */
  readonly work: readonly Stretch[];
}

/** A requirement that bars every flight when its calendar runs out, with all the times it was answered. */
export interface RequirementHistory {
  readonly id: string;
  readonly name: string;
  readonly kind: Extract<RequirementKind, 'annual' | 'directive' | 'life-limit' | 'maker-interval'>;
  readonly intervalMonths: number | null;
  readonly intervalDays: number | null;
  readonly intervalTenths: number | null;
  readonly fixedExpiry: CalendarDate | null;
  /** Since when it is asked for; null: since there is any record of the aircraft. */
  readonly addedAt: Instant | null;
  /** It applies no more from the start of this day. */
  readonly endedOn: CalendarDate | null;
  /** Corrected ones left out; oldest first. */
  readonly done: readonly ComplianceHistory[];
}

export interface ComplianceHistory {
  readonly on: CalendarDate;
  /** From when it counts: when it was recorded that very day, else the end of the day it was done. */
  readonly countsFrom: Instant;
  /** Approved by somebody who held what the law asks. */
  readonly authorised: boolean;
  /** A new date marked on the part. */
  readonly newExpiry: CalendarDate | null;
}

export interface AircraftHistory {
  readonly id: string;
  readonly registration: string;
  /** IANA zone of its base. */
  readonly zone: string;
  /** Its first record here; null: there is none. */
  readonly knownFrom: Instant | null;
  /** Out of the fleet since; null: still in it. */
  readonly retiredFrom: Instant | null;
  readonly writeUps: readonly WriteUpHistory[];
  /** Work that belongs to no write-up: inspections and what recurs. */
  readonly otherWork: readonly Stretch[];
  readonly requirements: readonly RequirementHistory[];
}
