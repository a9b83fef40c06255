/**
 * The closed list of kinds: what each is called, what it does and which flights it reaches, for the person who chooses one.
 * Common practice of schools and clubs, no source.
 */
import { said } from '../said';
import type { HouseKind } from './house-rule';

export interface HouseKindWords {
  readonly title: string;
  readonly explains: string;
  /** Which purposes and kinds of operation it reaches. */
  readonly reaches: string;
}

export const HOUSE_KINDS: Readonly<Record<HouseKind, HouseKindWords>> = {
  'no-night-with-deferral': {
    title: said('No night flight with a deferral'),
    explains: said(
      'While anything is deferred, the aircraft is no go at night, also where the law allows it.',
    ),
    reaches: said('Every flight of which any part is at night, for any purpose.'),
  },
  'no-ifr-with-deferral': {
    title: said('No IFR flight with a deferral'),
    explains: said(
      'While anything is deferred, the aircraft is no go under IFR, also where the law allows it.',
    ),
    reaches: said('Every IFR flight, for any purpose.'),
  },
  'solo-never-with-limits': {
    title: said('Students never fly solo with limits'),
    explains: said(
      'A go with limits becomes no go for a student’s solo flight, whatever the limit is: of the law or of the house.',
    ),
    reaches: said('Student solo flights, by day and by night.'),
  },
  'no-students-at-night': {
    title: said('No students at night'),
    explains: said(
      'No solo at night, or no solo and no instruction. The engine cannot tell a student from a rated pilot who takes lessons: instruction means all instruction for hire.',
    ),
    reaches: said('Student solo at night; if you choose so, all instruction at night as well.'),
  },
  'oil-minimum': {
    title: said('Least oil'),
    explains: said(
      'The last oil reading on record must be at least this much and not be too old at departure. No reading, or one that is too old, is no go until somebody dips and the walkaround is finished. Oil added without a new reading does not count.',
    ),
    reaches: said('Every flight. An aircraft has one oil reading: the dipstick item of its walkaround list.'),
  },
  'walkaround-before-flight': {
    title: said('Walkaround before release'),
    explains: said(
      'The last finished walkaround must not be older than this at departure. So a flight is released only once somebody has walked around the aircraft; flights of tomorrow are no go until then.',
    ),
    reaches: said('Every flight.'),
  },
  'mechanic-looks-at': {
    title: said('A mechanic looks at it first'),
    explains: said(
      'An open write-up in the chosen systems or places is no go until a mechanic has judged it or signed it off, also when it is small. A pilot’s own judgement is not enough. Chapter 61 is the propeller.',
    ),
    reaches: said('Every flight.'),
  },
  'reserve-before-inspection': {
    title: said('Hours kept in reserve before an inspection'),
    explains: said(
      'No flight may end with fewer hours left than this before the 100-hour inspection, or before anything that is due by hours, so that the aircraft can always be flown to the shop.',
    ),
    reaches: said(
      'Every flight but one to the inspection, also private ones that the 100-hour rule leaves out.',
    ),
  },
  'most-deferrals': {
    title: said('Most deferrals at one time'),
    explains: said('With more open deferrals than this the aircraft is no go until one is closed.'),
    reaches: said('Every flight.'),
  },
  'deferral-no-older': {
    title: said('No deferral older than a number of days'),
    explains: said(
      'A deferral lasts this many days after the day it was recorded, however long the law lets it last. Then the aircraft is no go until it is closed.',
    ),
    reaches: said('Every flight.'),
  },
  'limit-in-own-words': {
    title: said('A limit in your own words'),
    explains: said(
      'Your words stand as a limit on every flight for the chosen purposes: go becomes go with limits. The engine cannot check them; the pilot in command reads and accepts them.',
    ),
    reaches: said('The purposes you choose.'),
  },
};

export const HOUSE_KIND_KEYS = Object.keys(HOUSE_KINDS) as HouseKind[];
