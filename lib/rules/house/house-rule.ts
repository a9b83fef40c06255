/**
 * Rules of the house: an operator that wants to be stricter than the law says so as data. A rule has a kind of a closed list
 * and that kind's settings; what a kind does is code in this folder. Common practice of schools and clubs, no source: the
 * law asks for none of them, and none of them can answer a question the law asks.
 *
 * A rule can only take away. The code of a kind gives findings that bar or limit and nothing else, and they are added to the
 * lines of the law, which stay as they are (see `house-lines.ts`).
 */
import type { CalendarDate, Fact, Instant } from '../facts';
import type { Purpose } from '../operations';
import type { Subject } from '../verdict';

/** What the operator asked for. Lengths of time are whole hours or days, hours of flight tenths, oil tenths of a quart. */
export type HouseSetting =
  | { readonly kind: 'no-night-with-deferral' }
  | { readonly kind: 'no-ifr-with-deferral' }
  | { readonly kind: 'solo-never-with-limits' }
  | { readonly kind: 'no-students-at-night'; readonly flights: 'solo' | 'solo-and-dual' }
  | { readonly kind: 'oil-minimum'; readonly leastTenthsQuart: number; readonly oldestHours: number }
  | { readonly kind: 'walkaround-before-flight'; readonly oldestHours: number }
  | {
      readonly kind: 'mechanic-looks-at';
      /** Chapters of the JASC table: the first two digits of its codes. */
      readonly chapters: readonly string[];
      /** Areas of the aircraft, as write-ups name them. */
      readonly areas: readonly string[];
    }
  | {
      readonly kind: 'reserve-before-inspection';
      readonly reserveTenths: number;
      readonly counts: 'hundred-hour' | 'all-by-hours';
    }
  | { readonly kind: 'most-deferrals'; readonly most: number }
  | { readonly kind: 'deferral-no-older'; readonly days: number }
  | { readonly kind: 'limit-in-own-words'; readonly purposes: readonly Purpose[]; readonly words: string };

export type HouseKind = HouseSetting['kind'];

/** Settings that this version of the program cannot read, as a newer one may have written them. What it asks is unknown. */
export interface UnreadableSetting {
  readonly kind: 'unreadable';
  readonly storedKind: string;
}

/** Whose rule it is. Carried on every line it adds, so that nobody takes it for law. */
export interface HouseMark {
  readonly ruleId: string;
  readonly version: number;
  readonly by: string;
  /** The day it was set, at the base of the aircraft. */
  readonly on: CalendarDate;
  readonly why: string;
}

/** A rule in force for an aircraft. */
export interface HouseRule extends HouseMark {
  readonly setting: HouseSetting | UnreadableSetting;
}

/** Aircraft a rule is for; null is the whole fleet. Named aircraft and all of the named types. */
export interface HouseReach {
  readonly aircraftIds: readonly string[];
  readonly typeIds: readonly string[];
}

/** One version of a rule as it is kept. The newest counts; one that does not hold ended the rule. */
export interface HouseRuleVersion {
  readonly ruleId: string;
  readonly version: number;
  readonly holds: boolean;
  readonly setting: HouseSetting | UnreadableSetting;
  readonly reach: HouseReach | null;
  readonly by: string;
  readonly at: Instant;
  readonly why: string;
}

/** What is read for rules of the house alone, and only where one of them asks. */
export interface HouseReadings {
  /** The last oil reading on record, with when it was taken. */
  readonly lastOil: Fact<{ readonly tenthsQuart: number; readonly at: Instant }>;
  /** The end of the last finished walkaround. */
  readonly lastWalkaround: Fact<{ readonly at: Instant }>;
}

/** What a kind says about one flight. Nothing else can be written: a rule of the house never supports and never lifts. */
export interface HouseFinding {
  readonly effect: 'bars' | 'limits';
  readonly because: string;
  readonly missing?: string;
  readonly about?: Subject;
}

/** The newest version of every rule, in the order of the rules' ids. */
export function newestVersions(versions: readonly HouseRuleVersion[]): HouseRuleVersion[] {
  const newest = new Map<string, HouseRuleVersion>();
  for (const one of versions) {
    const other = newest.get(one.ruleId);
    if (!other || other.version < one.version) newest.set(one.ruleId, one);
  }
  return [...newest.values()].sort((a, b) => (a.ruleId < b.ruleId ? -1 : 1));
}

/** The versions in force: newest of their rule, and not ended. */
export const inForce = (versions: readonly HouseRuleVersion[]): HouseRuleVersion[] =>
  newestVersions(versions).filter(({ holds }) => holds);

/** Whether a rule is for this aircraft. */
export const reaches = (
  reach: HouseReach | null,
  aircraft: { readonly id: string; readonly typeId: string },
): boolean =>
  reach === null || reach.aircraftIds.includes(aircraft.id) || reach.typeIds.includes(aircraft.typeId);

/** The rules in force for one aircraft. `dayOf` says which day an instant is at its base. */
export const rulesFor = (
  versions: readonly HouseRuleVersion[],
  aircraft: { readonly id: string; readonly typeId: string },
  dayOf: (at: Instant) => CalendarDate,
): HouseRule[] =>
  inForce(versions)
    .filter(({ reach }) => reaches(reach, aircraft))
    .map(({ ruleId, version, by, at, why, setting }) => ({
      ruleId,
      version,
      by,
      on: dayOf(at),
      why,
      setting,
    }));

/** Whether one of these settings asks for what walkarounds leave behind. */
export const asksOfWalks = (settings: readonly { readonly kind: string }[]): boolean =>
  settings.some(({ kind }) => kind === 'oil-minimum' || kind === 'walkaround-before-flight');
