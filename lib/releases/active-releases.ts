import type { Prisma } from '../db/client';

const TWO_DAYS_MS = 2 * 86_400_000;

/** Has flown, or was about to: on record as airborne, or its meters were read at departure. */
const SET_OUT = [
  { events: { some: { what: 'airborne' } } },
  { readings: { some: { moment: 'out' } } },
] satisfies Prisma.ReleaseWhereInput[];

/**
 * Set out, and nobody read the meters at return: whatever has become of the release, and however long ago, hours of it ran
 * that are not on record (lib/releases/unread-hours.ts says until when).
 */
export const whereUnread = {
  readings: { none: { moment: 'in' } },
  OR: SET_OUT,
} satisfies Prisma.ReleaseWhereInput;

/** Not back: nobody read the meters at return. A flight that never set out is past all asking after two days. */
const noReturn = (now: Date): Prisma.ReleaseWhereInput => ({
  readings: { none: { moment: 'in' } },
  OR: [...SET_OUT, { arriveAt: { gte: new Date(now.getTime() - TWO_DAYS_MS) } }],
});

/** Releases that spend the special flight permit they name: all but void and withdrawn ones that never set out. */
export const whereSpendsPermit = {
  OR: [{ events: { none: { what: { in: ['void', 'withdrawn'] } } } }, ...SET_OUT],
} satisfies Prisma.ReleaseWhereInput;

/**
 * Releases that hold the plan they came from, also when their flight is over: all but withdrawn ones, and void ones whose
 * flight was not in the air.
 */
export const whereHolds = {
  events: { none: { what: 'withdrawn' } },
  OR: [{ events: { none: { what: 'void' } } }, { events: { some: { what: 'airborne' } } }],
} satisfies Prisma.ReleaseWhereInput;

/** Planned flights that somebody may still make: not cancelled, not over, and not released. */
export const wherePlanStands = (now: Date) =>
  ({
    cancelledAt: null,
    arriveAt: { gt: now },
    releases: { none: whereHolds },
  }) satisfies Prisma.PlannedFlightWhereInput;

/**
 * Releases that still count: not back, not closed, not withdrawn, not void. One that went void while its flight was in the
 * air counts: it is on record as airborne, and that is only taken down when it came first (lib/rules/release-state.ts).
 */
export const whereActive = (now: Date): Prisma.ReleaseWhereInput => ({
  AND: [noReturn(now), { events: { none: { what: 'closed' } } }, whereHolds],
});

/**
 * Released flights that are not back: they set out and their meters were not read at return, or nothing is on record and the
 * flight was to be back less than two days ago. A release that was withdrawn, closed or went void is asked for only when it
 * set out: those hours may have run. Corrections do not matter here: where a reading was superseded, another one of the
 * same moment stands.
 */
export const notBack = (now: Date): Prisma.ReleaseWhereInput => ({ OR: [whereActive(now), whereUnread] });

const A_DAY_MS = 86_400_000;

/**
 * Releases that went void or were warned about and have an end nobody has seen to: not withdrawn, closed or back, and not
 * over for more than a day.
 */
export const whereAlarmed = (now: Date): Prisma.ReleaseWhereInput => ({
  arriveAt: { gte: new Date(now.getTime() - A_DAY_MS) },
  readings: { none: { moment: 'in' } },
  events: { some: { what: { in: ['void', 'warned'] } }, none: { what: { in: ['closed', 'withdrawn'] } } },
});

/** Of those, the void ones: they are no longer active, and still have to be seen. */
export const recentlyVoid = (now: Date): Prisma.ReleaseWhereInput => ({
  AND: [whereAlarmed(now), { events: { some: { what: 'void' } } }],
});
