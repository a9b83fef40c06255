/**
 * The order of the mechanic's queue. Source: issue 4, "Queue ordered by what it does to flying (grounded aircraft with
 * flights soon first)". 48 hours for "soon", seven days for "near" and the order of the lower groups are our own choice, no
 * source. That unsigned work grounds: 14 CFR 91.407(a)(1). That undecided grounds: 91.7(a), strict reading.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flightInWords, queueOrder, type QueueFacts } from '@/lib/rules/queue-order';

const NOW = '2026-11-25T15:00:00.000Z';
const ZONE = 'America/Chicago';

const row = (id: string, some: Partial<QueueFacts> = {}): QueueFacts => ({
  id,
  openedAt: '2026-11-20T15:00:00.000Z',
  zone: ZONE,
  severity: 'limiting',
  barsEveryFlight: false,
  workUnsigned: false,
  deferred: false,
  placardOwed: false,
  deferralEndsOn: null,
  nextFlightAt: null,
  ...some,
});
const grounding = { severity: 'grounding', barsEveryFlight: true } as const;
const deferred = { deferred: true, deferralEndsOn: '2027-01-31' } as const;
const at = (hours: number, ms = 0): string =>
  new Date(Date.parse(NOW) + hours * 3_600_000 + ms).toISOString();
const groupOf = (some: Partial<QueueFacts>) => queueOrder([row('a', some)], NOW)[0]?.group;
const whyOf = (some: Partial<QueueFacts>) => queueOrder([row('a', some)], NOW)[0]?.why;
const ids = (...rows: QueueFacts[]) => queueOrder(rows, NOW).map(({ id }) => id);

describe('groups', () => {
  test.each([
    [at(48, -1), 'grounds-flight-soon'],
    [at(48), 'grounds-flight-soon'],
    [at(48, 1), 'grounds'],
  ])('a flight is soon up to 48 hours: %s', (nextFlightAt, group) => {
    expect(groupOf({ ...grounding, nextFlightAt })).toBe(group);
  });

  test.each([
    [at(48, -1), 'limits-flight-soon'],
    [at(48), 'limits-flight-soon'],
    [at(48, 1), 'limits'],
  ])('the same for what limits: %s', (nextFlightAt, group) => {
    expect(groupOf({ nextFlightAt })).toBe(group);
  });

  test.each([
    [at(0, -1), 'the aircraft is out now'],
    [at(0), 'the aircraft is out now'],
    [at(0, 1), 'next flight today 09:00'],
  ])('a flight that has left is soon, and said to be out: %s', (nextFlightAt, words) => {
    expect(groupOf({ ...grounding, nextFlightAt })).toBe('grounds-flight-soon');
    expect(whyOf({ ...grounding, nextFlightAt })).toBe(`Grounds it; ${words}`);
  });

  // Today at the base is 25 November.
  test.each([
    ['2026-12-01', 'deferral-near-end'],
    ['2026-12-02', 'deferral-near-end'],
    ['2026-12-03', 'deferred'],
  ])('a deferral is near its end up to seven days before: %s', (deferralEndsOn, group) => {
    expect(groupOf({ ...deferred, deferralEndsOn })).toBe(group);
  });

  // A last day is a good day: MMEL policy letter 25, 91.207(f)(10)(ii).
  test.each([
    ['2026-11-24', 'grounds', 'Deferred only through 24 Nov 2026; no flight planned'],
    ['2026-11-25', 'deferral-near-end', 'Last day 25 Nov 2026 at the latest'],
    ['2026-11-26', 'deferral-near-end', 'Last day 26 Nov 2026 at the latest'],
  ])('a deferral that has run out grounds: %s', (deferralEndsOn, group, why) => {
    expect(groupOf({ ...deferred, deferralEndsOn })).toBe(group);
    expect(whyOf({ ...deferred, deferralEndsOn })).toBe(why);
  });

  test('days are those of the base: 23:30 there is still the day before in UTC plus one', () => {
    const late = '2026-11-26T05:30:00.000Z';
    const [first] = queueOrder([row('a', { ...deferred, deferralEndsOn: '2026-11-25' })], late);
    expect(first?.group).toBe('deferral-near-end');
  });

  test('undecided grounds, unsigned work grounds, and so does what the rules bar', () => {
    expect(whyOf({ severity: null })).toBe('Undecided, so it grounds; no flight planned');
    expect(groupOf({ severity: null })).toBe('grounds');
    expect(whyOf({ severity: 'note', workUnsigned: true })).toBe('Work not signed off; no flight planned');
    expect(groupOf({ severity: 'note', workUnsigned: true })).toBe('grounds');
    // 91.213(a): inoperative and not deferred yet.
    expect(whyOf({ barsEveryFlight: true })).toBe('Grounds it until repaired or deferred; no flight planned');
    // 91.213(d)(3)(ii): the placard is owed.
    expect(whyOf({ ...deferred, barsEveryFlight: true, placardOwed: true })).toBe(
      'Grounds it until the placard is up; no flight planned',
    );
    expect(whyOf({ ...deferred, barsEveryFlight: true })).toBe(
      'Its deferral does not stand, so it grounds; no flight planned',
    );
  });

  test('watch and note stand last, a deferral without a day before them', () => {
    expect(groupOf({ severity: 'watch' })).toBe('watch');
    expect(groupOf({ severity: 'note', nextFlightAt: at(1) })).toBe('note');
    expect(groupOf({ ...deferred, deferralEndsOn: null })).toBe('deferred');
    expect(whyOf({ ...deferred, deferralEndsOn: null })).toBe('No last day is known');
  });
});

describe('order', () => {
  test('all groups in one queue, most pressing first', () => {
    const rows = [
      row('note', { severity: 'note' }),
      row('watch', { severity: 'watch' }),
      row('deferred', deferred),
      row('near', { ...deferred, deferralEndsOn: '2026-11-28' }),
      row('limits'),
      row('limits soon', { nextFlightAt: at(20) }),
      row('grounds', grounding),
      row('grounds soon', { ...grounding, nextFlightAt: at(20) }),
    ];
    expect(ids(...rows)).toEqual(rows.map(({ id }) => id).reverse());
  });

  test.each([
    ['one minute sooner', at(19, -60_000), 'b'],
    ['the same moment: the older one', at(19), 'a'],
    ['one minute later', at(19, 60_000), 'a'],
  ])('the sooner flight first: %s', (_, nextFlightAt, first) => {
    const a = row('a', { ...grounding, nextFlightAt: at(19), openedAt: '2026-11-01T00:00:00.000Z' });
    const b = row('b', { ...grounding, nextFlightAt });
    expect(ids(b, a)[0]).toBe(first);
  });

  test.each([
    ['2026-11-27', 'b'],
    ['2026-11-28', 'a'],
    ['2026-11-29', 'a'],
  ])('of deferrals near their end the nearer first, then the older: %s', (deferralEndsOn, first) => {
    const a = row('a', { ...deferred, deferralEndsOn: '2026-11-28', openedAt: '2026-11-01T00:00:00.000Z' });
    expect(ids(row('b', { ...deferred, deferralEndsOn }), a)[0]).toBe(first);
  });

  test.each([
    ['2026-11-20T14:59:59.999Z', 'b'],
    ['2026-11-20T15:00:00.000Z', 'a'],
    ['2026-11-20T15:00:00.001Z', 'a'],
  ])('a flight beyond 48 hours counts for nothing: the oldest first: %s', (openedAt, first) => {
    const a = row('a', { ...grounding, nextFlightAt: at(100) });
    expect(ids(row('b', { ...grounding, openedAt }), a)[0]).toBe(first);
  });

  test('an instant is compared as a moment, however it is spelled', () => {
    const a = row('a', { ...grounding, nextFlightAt: '2026-11-25T18:00:00Z' });
    const b = row('b', { ...grounding, nextFlightAt: '2026-11-25T17:59:59.999Z' });
    expect(ids(a, b)).toEqual(['b', 'a']);
  });

  test('the order of the input never matters', () => {
    const facts = fc.record({
      openedAt: fc.constantFrom(at(-100), at(-50), at(-1)),
      severity: fc.constantFrom(null, 'grounding', 'limiting', 'watch', 'note'),
      barsEveryFlight: fc.boolean(),
      workUnsigned: fc.boolean(),
      deferred: fc.boolean(),
      deferralEndsOn: fc.constantFrom(null, '2026-11-24', '2026-11-26', '2027-02-01'),
      nextFlightAt: fc.constantFrom(null, at(-1), at(3), at(60)),
    }) as fc.Arbitrary<Partial<QueueFacts>>;
    const several = fc.array(facts, { minLength: 2, maxLength: 12 }).chain((all) => {
      const rows = all.map((some, index) => row(`r${index}`, some));
      return fc.record({
        rows: fc.constant(rows),
        mixed: fc.shuffledSubarray(rows, { minLength: rows.length }),
      });
    });
    fc.assert(
      fc.property(several, ({ rows, mixed }) => {
        expect(queueOrder(mixed, NOW)).toEqual(queueOrder(rows, NOW));
      }),
    );
  });
});

test('a flight in words, in the time of the base', () => {
  expect(flightInWords('2026-11-26T05:59:00Z', NOW, ZONE)).toBe('today 23:59');
  expect(flightInWords('2026-11-26T06:00:00Z', NOW, ZONE)).toBe('tomorrow 00:00');
  expect(flightInWords('2026-11-27T05:59:00Z', NOW, ZONE)).toBe('tomorrow 23:59');
  expect(flightInWords('2026-11-27T06:00:00Z', NOW, ZONE)).toBe('Fri 27 Nov 00:00');
});
