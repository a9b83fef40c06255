import type { Instant } from './facts';

/**
 * What became of a released flight, read from what was recorded about it. Order of things is trade habit and this house's
 * caution, no source; what a pilot in command does about an aircraft that is no longer airworthy is 91.7(b).
 */

export type ReleaseStateName =
  'released' | 'accepted' | 'airborne' | 'landed' | 'closed' | 'void' | 'withdrawn';

/** What can be recorded about a release. `closed`: not flown, or ended without meters. */
export const HAPPENINGS = ['airborne', 'landed', 'closed', 'void', 'warned', 'withdrawn'] as const;
export type Happening = (typeof HAPPENINGS)[number];

/** What a person logs; void and warned come from changed facts, withdrawn is an act of its own. */
export const LOGGED = ['airborne', 'landed', 'closed'] as const;
export type Logged = (typeof LOGGED)[number];

export interface ReleaseHappening {
  readonly what: Happening;
  /** When it happened, and when it was written down: a take-off may be written down long after. */
  readonly at: Instant;
  readonly recordedAt: Instant;
}

export interface ReleaseHistory {
  readonly releasedAt: Instant;
  /** When the pilot in command accepted it; of several times the newest. */
  readonly accepted: Instant | null;
  /** The meters were read at departure. Left out: not. */
  readonly isOut?: boolean;
  /** When the meters were read at return. */
  readonly back: Instant | null;
  readonly events: readonly ReleaseHappening[];
}

export interface ReleaseState {
  readonly name: ReleaseStateName;
  /** The facts changed after release: for the worse without a bar, or while the flight was in the air. */
  readonly warned: boolean;
  /** Since when it is in this state. */
  readonly since: Instant;
}

/**
 * The state of a release. A flight that was in the air before its release went void is airborne and warned: nothing on the
 * ground decides about it any more (91.7(b)). A void release never becomes anything else otherwise, whatever is recorded
 * later; and a withdrawn one neither. An acceptance holds until a warning comes after it and before the take-off: whoever
 * signed did not know of that (91.103, strict).
 */
export function releaseState(release: ReleaseHistory): ReleaseState {
  const of = (what: Happening) => release.events.find((event) => event.what === what);
  const withdrawn = of('withdrawn');
  const airborne = of('airborne');
  const landed = of('landed');
  const closed = of('closed');
  const gone = of('void');
  const inTheAir = wasInTheAir(release.events);
  const warned = of('warned') !== undefined || (gone !== undefined && inTheAir);
  if (withdrawn) return { name: 'withdrawn', warned, since: withdrawn.at };
  if (gone && !inTheAir) return { name: 'void', warned, since: gone.at };
  if (release.back !== null) return { name: 'closed', warned, since: release.back };
  if (closed) return { name: 'closed', warned, since: closed.at };
  if (landed) return { name: 'landed', warned, since: landed.at };
  if (airborne) return { name: 'airborne', warned, since: airborne.at };
  if (release.accepted !== null && !isOvertaken(release)) {
    return { name: 'accepted', warned, since: release.accepted };
  }
  return { name: 'released', warned, since: release.releasedAt };
}

/** Whether it took off while its release still held: on record as airborne, and not void by then. */
export function wasInTheAir(events: readonly ReleaseHappening[]): boolean {
  const airborne = events.find(({ what }) => what === 'airborne');
  const gone = events.find(({ what }) => what === 'void');
  return airborne !== undefined && (gone === undefined || before(airborne.at, gone.at));
}

/**
 * Whether the newest acceptance was given without knowing of a warning: one came at the same instant or later, and before
 * the take-off. A warning to a flight in the air takes nothing back. False where nobody accepted.
 */
export function isOvertaken({ accepted, events }: Pick<ReleaseHistory, 'accepted' | 'events'>): boolean {
  if (accepted === null) return false;
  const airborne = events.find(({ what }) => what === 'airborne');
  return events.some(
    ({ what, at }) =>
      what === 'warned' && !before(at, accepted) && (airborne === undefined || before(at, airborne.at)),
  );
}

/** Why something cannot be recorded, and of which field that is; null when it can. */
export interface Refused {
  readonly field: 'at' | 'what';
  readonly because: string;
}

/**
 * May this be logged of the release, as having happened at `at`? Nothing in the future, nothing before the release; a
 * landing after the take-off, an end after the landing, each once. A take-off from a void release only when it came first,
 * and none more than an hour before the planned departure: one that was logged in error would keep a release from going
 * void (house caution, no source).
 * @param departAt planned departure
 */
export function whyNotLogged(
  release: ReleaseHistory,
  what: Logged,
  at: Instant,
  now: Instant,
  departAt: Instant,
): Refused | null {
  const { name } = releaseState(release);
  const of = (one: Happening) => release.events.find((event) => event.what === one);
  const airborne = of('airborne');
  const landed = of('landed');
  const gone = of('void');
  if (of(what)) return { field: 'what', because: `${IN_WORDS[what]} is on record already.` };
  if (name === 'withdrawn') return { field: 'what', because: 'This release was withdrawn.' };
  if (of('closed')) return { field: 'what', because: 'This flight is closed.' };
  if (before(now, at)) return { field: 'at', because: 'This has not happened yet.' };
  if (before(at, release.releasedAt)) {
    return { field: 'at', because: 'This is before the release. It was not this flight.' };
  }
  if (what === 'airborne') {
    if (Date.parse(departAt) - Date.parse(at) > EARLIEST_MS) {
      const because =
        'This is more than an hour before the planned departure. Ask the desk for a release for now.';
      return { field: 'at', because };
    }
    if (gone && !before(at, gone.at)) {
      return { field: 'at', because: 'The release was void by then: no flight departs on it.' };
    }
    if (release.back !== null && !before(at, release.back)) {
      return { field: 'at', because: 'The meters were read at return before that.' };
    }
    return null;
  }
  if (what === 'landed') {
    if (!airborne) return { field: 'what', because: 'It is not on record as airborne. Log that first.' };
    if (!before(airborne.at, at)) return { field: 'at', because: 'The landing comes after the take-off.' };
    if (release.back !== null && before(release.back, at)) {
      return { field: 'at', because: 'The meters were read at return before that.' };
    }
    return null;
  }
  if (release.back !== null) return { field: 'what', because: 'The meters were read: the flight is closed.' };
  if (airborne && !landed) {
    return { field: 'what', because: 'It is on record as airborne. Log the landing first.' };
  }
  if (landed && before(at, landed.at)) return { field: 'at', because: 'The end comes after the landing.' };
  return null;
}

const EARLIEST_MS = 60 * 60_000;

const IN_WORDS: Readonly<Record<Logged, string>> = {
  airborne: 'The take-off',
  landed: 'The landing',
  closed: 'The end',
};

/**
 * May it be withdrawn? Not once the flight is in the air or its meters were read at departure, and not when it has ended
 * some other way. Null: it may.
 */
export function whyNotWithdrawn(release: ReleaseHistory): string | null {
  const { name } = releaseState(release);
  if (name === 'released' || name === 'accepted') {
    if (!release.isOut) return null;
    return 'The meters were read at departure: read them at return as well, or close the flight.';
  }
  if (name === 'withdrawn') return 'This release is withdrawn already.';
  if (name === 'void') return 'This release is void: there is nothing left to withdraw.';
  if (name === 'closed') return 'This flight is closed.';
  return 'This flight has departed: a release is not withdrawn once the aircraft is in the air.';
}

/**
 * May the pilot in command accept it now? Before the take-off, while the flight is still to come, once, and again after a
 * warning. Null: yes.
 * @param arriveAt planned arrival: from then on the flight is past
 */
export function whyNotAccepted(release: ReleaseHistory, arriveAt: Instant, now: Instant): string | null {
  const { name } = releaseState(release);
  if (name === 'accepted') return 'This release is accepted already.';
  if (name === 'withdrawn') return 'This release was withdrawn. Ask the desk.';
  if (name === 'void')
    return 'This release is void: the facts changed after it was given. Do not depart on it.';
  if (name === 'closed') return 'This flight is closed.';
  if (name !== 'released') return 'This flight has departed: accepting says what was looked at before it.';
  if (!before(now, arriveAt)) return 'This flight was to be over by now. Ask the desk for a new release.';
  return null;
}

const before = (a: Instant, b: Instant): boolean => Date.parse(a) < Date.parse(b);
