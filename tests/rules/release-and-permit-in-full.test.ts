/**
 * Why something cannot be recorded of a release, in words; and what a special flight permit reaches. The order of things is common
 * practice of a desk, no source. Permit: 14 CFR 21.197, 21.199(a), it is issued for the ways in which the aircraft does not comply
 * that were named.
 */
import { describe, expect, it, test } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import {
  whyNotAccepted,
  whyNotLogged,
  whyNotWithdrawn,
  type Happening,
  type Logged,
  type ReleaseHistory,
} from '@/lib/rules/release-state';
import { withSpecialFlightPermit } from '@/lib/rules/special-flight-permit';
import type { Line, Subject } from '@/lib/rules/verdict';
import { deferralOf, discrepancyOf, permitOf, trainer, useOf } from '../fixtures/aircraft';

const RELEASED = '2026-11-25T15:00:00.000Z';
const at = (minutes: number) => new Date(Date.parse(RELEASED) + minutes * 60_000).toISOString();
const history = (
  events: readonly (readonly [Happening, number])[] = [],
  more: Partial<ReleaseHistory> = {},
): ReleaseHistory => ({
  releasedAt: RELEASED,
  accepted: null,
  back: null,
  events: events.map(([what, when]) => ({ what, at: at(when), recordedAt: at(when) })),
  ...more,
});

describe('why it is not logged', () => {
  const why = (release: ReleaseHistory, what: Logged, minutes: number) =>
    whyNotLogged(release, what, at(minutes), at(300), at(30))?.because ?? null;
  const UP = [['airborne', 30]] as const;
  const READ = 'The meters were read at return before that.';

  it.each([
    ['again', history(UP), 'airborne', 40, 'The take-off is on record already.'],
    ['again', history([...UP, ['landed', 60]]), 'landed', 70, 'The landing is on record already.'],
    ['again', history([['closed', 60]]), 'closed', 70, 'The end is on record already.'],
    ['a withdrawn one', history([['withdrawn', 5]]), 'airborne', 30, 'This release was withdrawn.'],
    ['a closed one', history([['closed', 5]]), 'airborne', 30, 'This flight is closed.'],
    ['the future', history(), 'airborne', 301, 'This has not happened yet.'],
    ['before the release', history(), 'closed', -1, 'This is before the release. It was not this flight.'],
    // Planned for minute 30: one hour before is minute -30, earlier than the release; see the borders below.
    [
      'void by then',
      history([['void', 20]]),
      'airborne',
      20,
      'The release was void by then: no flight departs on it.',
    ],
    ['void only later', history([['void', 20]]), 'airborne', 19, null],
    ['take-off after the return', history([], { back: at(40) }), 'airborne', 40, READ],
    ['take-off before the return', history([], { back: at(40) }), 'airborne', 39, null],
    ['landing without take-off', history(), 'landed', 60, 'It is not on record as airborne. Log that first.'],
    ['landing before take-off', history(UP), 'landed', 29, 'The landing comes after the take-off.'],
    ['landing at take-off', history(UP), 'landed', 30, 'The landing comes after the take-off.'],
    ['landing after it', history(UP), 'landed', 31, null],
    ['landing before the meters', history(UP, { back: at(60) }), 'landed', 59, null],
    ['landing with the meters', history(UP, { back: at(60) }), 'landed', 60, null],
    ['landing after the meters', history(UP, { back: at(60) }), 'landed', 61, READ],
    [
      'end after the meters',
      history(UP, { back: at(60) }),
      'closed',
      61,
      'The meters were read: the flight is closed.',
    ],
    ['end in the air', history(UP), 'closed', 60, 'It is on record as airborne. Log the landing first.'],
    [
      'end before the landing',
      history([...UP, ['landed', 60]]),
      'closed',
      59,
      'The end comes after the landing.',
    ],
    ['end with the landing', history([...UP, ['landed', 60]]), 'closed', 60, null],
    ['end of one that never left', history(), 'closed', 60, null],
  ] as const)('%s', (_what, release, what, minutes, because) => {
    expect(why(release, what, minutes)).toBe(because);
  });

  it.each([
    [59, null],
    [60, null],
    [61, 'This is more than an hour before the planned departure. Ask the desk for a release for now.'],
  ])('a take-off %i minutes before the planned departure', (early, because) => {
    expect(whyNotLogged(history(), 'airborne', at(30), at(300), at(30 + early))?.because ?? null).toBe(
      because,
    );
  });
});

describe('withdrawn and accepted', () => {
  it.each([
    ['new', history(), null, null],
    ['accepted', history([], { accepted: at(5) }), null, 'This release is accepted already.'],
    [
      'out',
      history([], { isOut: true }),
      'The meters were read at departure: read them at return as well, or close the flight.',
      null,
    ],
    [
      'withdrawn',
      history([['withdrawn', 5]]),
      'This release is withdrawn already.',
      'This release was withdrawn. Ask the desk.',
    ],
    [
      'void',
      history([['void', 5]]),
      'This release is void: there is nothing left to withdraw.',
      'This release is void: the facts changed after it was given. Do not depart on it.',
    ],
    ['closed', history([['closed', 5]]), 'This flight is closed.', 'This flight is closed.'],
    [
      'in the air',
      history([['airborne', 30]]),
      'This flight has departed: a release is not withdrawn once the aircraft is in the air.',
      'This flight has departed: accepting says what was looked at before it.',
    ],
  ])('%s', (_state, release, withdrawn, accepted) => {
    expect(whyNotWithdrawn(release)).toBe(withdrawn);
    expect(whyNotAccepted(release, at(120), at(60))).toBe(accepted);
  });

  it.each([
    [59, null],
    [60, 'This flight was to be over by now. Ask the desk for a new release.'],
    [61, 'This flight was to be over by now. Ask the desk for a new release.'],
  ])('accepted %i minutes after release, to be over after 60', (now, because) => {
    expect(whyNotAccepted(history(), at(60), at(now))).toBe(because);
  });
});

describe('what a permit reaches', () => {
  const bar = (about: Subject | undefined, change: Partial<Line> = {}): Line => ({
    effect: 'bars',
    cite: '14cfr91.7(a)',
    because: 'Bar.',
    about,
    ...change,
  });
  const under = (line: Line, covers: readonly string[], aircraft: AircraftFacts) =>
    withSpecialFlightPermit(
      [line],
      useOf({ specialFlightPermit: permitOf({ covers: [...covers] }) }),
      aircraft,
    )[0]!.effect;
  const aboutIt = (kind: Subject['kind'], id: string): Subject => ({ kind, id, label: id });
  const plane = trainer({
    discrepancies: [
      discrepancyOf({ id: 'one', equipmentId: 'clock', deferral: deferralOf({ id: 'deferral-one' }) }),
      discrepancyOf({ id: 'two', equipmentId: 'clock' }),
      discrepancyOf({ id: 'three', equipmentId: 'intercom', kind: 'damage' }),
      discrepancyOf({ id: 'four', equipmentId: 'intercom' }),
    ],
  });

  it.each([
    ['the write-up that it names', aboutIt('discrepancy', 'one'), ['one'], 'limits'],
    ['another write-up', aboutIt('discrepancy', 'two'), ['one'], 'bars'],
    ['a deferral by its write-up', aboutIt('deferral', 'deferral-one'), ['one'], 'limits'],
    ['a deferral of another write-up', aboutIt('deferral', 'deferral-one'), ['two', 'three', 'four'], 'bars'],
    ['a deferral by its own id is not named', aboutIt('deferral', 'deferral-one'), ['deferral-one'], 'bars'],
    ['equipment, one of two write-ups named', aboutIt('equipment', 'clock'), ['one'], 'bars'],
    ['equipment, both named', aboutIt('equipment', 'clock'), ['one', 'two'], 'limits'],
    // Damage of it is another matter than that it does not work.
    ['equipment, what does not work is named', aboutIt('equipment', 'intercom'), ['four'], 'limits'],
    ['equipment, only its damage is named', aboutIt('equipment', 'intercom'), ['three'], 'bars'],
    ['equipment without a write-up', aboutIt('equipment', 'elt'), ['one', 'elt'], 'bars'],
    ['what is about nothing', undefined, ['one'], 'bars'],
  ] as const)('%s', (_what, about, covers, effect) => {
    expect(under(bar(about), covers, plane)).toBe(effect);
  });

  test('what nobody knows is never lifted, named or not', () => {
    expect(under(bar(aboutIt('discrepancy', 'one'), { missing: 'how bad it is' }), ['one'], plane)).toBe(
      'bars',
    );
  });

  test('without a permit the lines are as they were; with one what is no bar stays as it is', () => {
    const note = bar(aboutIt('discrepancy', 'one'), { effect: 'notes' });
    expect(withSpecialFlightPermit([note], useOf(), plane)).toEqual([note]);
    expect(under(note, ['one'], plane)).toBe('notes');
  });
});
