/**
 * What the board says comes next. The answers over time are those of the rules (tests/rules/over-time.test.ts); here: what of
 * them a desk is told, and in which words. Source of the wording: issue 5, "day VFR until 16:58, then no go: landing light";
 * 91.205(c)(4) for the landing light of a night flight for hire; the rest is common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { rowAhead, windowAtBase, type LaneAhead } from '@/lib/fleet/board-ahead';
import {
  BOARD_COLUMNS,
  bookedInWords,
  changeInWords,
  clockAt,
  flightInWords,
  laneOfColumn,
} from '@/lib/fleet/board-columns';
import type { BookedFlight } from '@/lib/rules/spent-hours';
import { known } from '@/lib/rules/facts';
import { BASE, deferralOf, discrepancyOf, trainer } from '../fixtures/aircraft';
import { inEnglish } from '@/lib/words/translate';

const ZONE = 'America/Chicago';
/** Wednesday 25 November 2026, 14:00 CST. */
const AS_OF = '2026-11-25T20:00:00Z';
const UNTIL = '2026-11-27T06:00:00Z';
const where = { until: UNTIL, zone: ZONE, asOf: AS_OF };

const lane = (over: Partial<LaneAhead>): LaneAhead => ({
  rules: 'VFR',
  light: 'day',
  outcome: 'go',
  next: null,
  ...over,
});
const DUSK = '2026-11-25T22:58:14Z';
const noGo = { at: DUSK, outcome: 'no-go', headline: 'Landing light' } as const;

describe('in words', () => {
  test.each([
    ['nothing comes', lane({}), 'go', 'no change before Fri 00:00'],
    ['no go comes', lane({ next: noGo }), 'go', 'until 16:58, then no go: Landing light'],
    [
      'tomorrow, with its day',
      lane({ next: { ...noGo, at: '2026-11-26T22:58:14Z' } }),
      'go',
      'until Thu 16:58, then no go: Landing light',
    ],
    [
      'a better answer comes no earlier than it does',
      lane({ outcome: 'no-go', next: { at: DUSK, outcome: 'go', headline: null } }),
      'no-go',
      'until 16:59, then go',
    ],
    [
      'a better answer on the full minute',
      lane({ outcome: 'no-go', next: { at: '2026-11-25T22:58:00Z', outcome: 'go', headline: null } }),
      'no-go',
      'until 16:58, then go',
    ],
    [
      'other limits',
      lane({ outcome: 'go-with-limits', next: { at: DUSK, outcome: 'go-with-limits', headline: 'Radio' } }),
      'go-with-limits',
      'until 16:58, then other limits: Radio',
    ],
    [
      'the flight of an hour has another answer already',
      lane({ next: noGo }),
      'no-go',
      'from 16:58 no go: Landing light',
    ],
  ] as const)('%s', (_, ahead, shown, words) =>
    expect(changeInWords(inEnglish, ahead, shown, where)).toBe(words),
  );

  test.each([
    ['out', AS_OF, '2026-11-25T21:40:00Z', 'Out until 15:40'],
    ['out', AS_OF, AS_OF, 'Out until 14:00'],
    ['out', AS_OF, '2026-11-25T19:59:00Z', 'Out, was due 13:59'],
    ['released', '2026-11-25T22:00:00Z', UNTIL, 'Released 16:00'],
    ['planned', '2026-11-26T15:00:00Z', UNTIL, 'Planned Thu 09:00'],
  ] as const)('a flight that is %s', (state, departAt, arriveAt, words) => {
    expect(
      flightInWords(inEnglish, { id: 'f', label: 'Lesson', state, departAt, arriveAt }, ZONE, AS_OF),
    ).toBe(words);
  });

  test.each([
    [32, 0, null],
    [32, 11, '1.1 h of it booked'],
    [32, 32, '3.2 h of it booked'],
    [32, 33, '3.3 h booked'],
    [0, 5, '0.5 h booked'],
    [-1, 5, null],
    [null, 5, null],
  ])('%s tenths left and %s booked: %s', (remainingTenths, booked, words) => {
    const due = { name: '100-hour inspection', on: null, remainingDays: null, remainingTenths };
    expect(bookedInWords(inEnglish, due, booked)).toBe(words);
  });

  test('the day is named where it is another one at the base, not in UTC', () => {
    expect(clockAt(inEnglish, '2026-11-26T05:59:00Z', ZONE, AS_OF)).toBe('23:59');
    expect(clockAt(inEnglish, '2026-11-26T06:00:00Z', ZONE, AS_OF)).toBe('Thu 00:00');
  });
});

describe('of an aircraft whose landing light is deferred, usually for hire', () => {
  const facts = trainer({
    discrepancies: [
      discrepancyOf({
        equipmentId: 'landing-light',
        title: 'Landing light out',
        deferral: deferralOf({ placardPlaced: true }),
      }),
    ],
  });
  const base = {
    ...BASE,
    transponderAirspace: known(false),
    adsbAirspace: known(false),
    controlledAirspace: known(false),
  };
  const window = windowAtBase(base, '2026-11-25');
  const ahead = (now: string, booked: readonly BookedFlight[] = [], forHire = true) =>
    rowAhead(facts, base, window, booked, forHire, now);

  test('looks to the end of tomorrow at the base', () => {
    expect(window.window).toEqual({ from: '2026-11-25T06:00:00Z', until: UNTIL });
  });

  test('by day: until night begins, then no go; privately nothing changes to no go', () => {
    const row = ahead(AS_OF);
    const [vfr] = row.lanes;
    expect(vfr).toMatchObject({ rules: 'VFR', light: 'day', outcome: 'go-with-limits' });
    expect(vfr?.next).toMatchObject({ outcome: 'no-go' });
    const night = vfr?.next?.at ?? '';
    // Exactly there, and not a second before: the lane of the second before is still the day's.
    const before = new Date(Date.parse(night) - 1000).toISOString();
    expect(ahead(before).lanes[0]?.light).toBe('day');
    expect(ahead(night).lanes[0]).toMatchObject({ light: 'night', outcome: 'no-go' });
    expect(ahead(AS_OF, [], false).lanes.map(({ next }) => next?.outcome)).not.toContain('no-go');
  });

  test('by night: no go until morning, then with limits again', () => {
    const night = ahead('2026-11-26T06:30:00Z').lanes[0];
    expect(night).toMatchObject({ light: 'night', outcome: 'no-go', next: { outcome: 'go-with-limits' } });
  });

  test('a column has the lane of the light of this moment', () => {
    const row = ahead(AS_OF);
    const has = BOARD_COLUMNS.map((column) => laneOfColumn(column, row)?.rules ?? null);
    expect(has).toEqual(['VFR', null, 'IFR', null]);
    expect(laneOfColumn(BOARD_COLUMNS[0]!, null)).toBeNull();
  });

  test('the flight that is out comes before the one that leaves first; all hours count', () => {
    const flight = (id: string, state: BookedFlight['state'], hour: number): BookedFlight => ({
      id,
      label: id,
      state,
      departAt: `2026-11-25T${hour}:00:00Z`,
      arriveAt: `2026-11-25T${hour + 1}:00:00Z`,
      plannedTenths: 11,
    });
    const row = ahead(AS_OF, [flight('overdue', 'released', 18), flight('gone', 'out', 19)]);
    expect(row.flight?.id).toBe('gone');
    expect(row.bookedTenths).toBe(22);
    expect(ahead(AS_OF, [flight('next', 'planned', 21)]).flight?.id).toBe('next');
    expect(ahead(AS_OF).flight).toBeNull();
  });
});
