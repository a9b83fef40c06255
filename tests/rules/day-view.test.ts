import { describe, expect, it } from 'vitest';
import { dayBorders, dayLane, dayLight, daysAfter, hourMarks } from '../../lib/fleet/day-view';
import { known } from '../../lib/rules/facts';
import { lightOverTime } from '../../lib/rules/light-over-time';
import { endOfDay, startOfDay } from '../../lib/rules/months';
import { answersOverTime } from '../../lib/rules/over-time';
import { BASE, deferralOf, discrepancyOf, trainer } from '../fixtures/aircraft';

// How a day is drawn is common practice, no source. Offsets: IANA tz database.
const HOME = {
  ...BASE,
  transponderAirspace: known(false),
  adsbAirspace: known(false),
  controlledAirspace: known(true),
};
const dayOf = (date: string, zone: string) => ({ from: startOfDay(date, zone), until: endOfDay(date, zone) });
const DAY = dayOf('2026-11-25', HOME.zone);
const lightOut = trainer({
  discrepancies: [
    discrepancyOf({ equipmentId: 'landing-light', title: 'Landing light out', deferral: deferralOf() }),
  ],
});
const lanesOfDay = () => answersOverTime(lightOut, HOME, DAY, []);

describe('the borders of a day', () => {
  const bordersOfDay = () => dayBorders(lanesOfDay());

  it('are each instant once, in order of time, with a letter only where answers change', () => {
    expect(
      bordersOfDay().map(({ letter, events, changes }) => [letter, events.join(), changes.length]),
    ).toEqual([
      ['A', 'Night ends: morning civil twilight begins', 1],
      [null, 'Sunrise', 0],
      [null, 'Sunset', 0],
      ['B', 'Night begins: evening civil twilight ends', 1],
    ]);
  });

  it('say lanes together that change alike: 91.205(c)(4) asks only for hire', () => {
    const borders = bordersOfDay();
    expect(borders[0]?.changes).toMatchObject([
      { lanes: ['VFR, for hire', 'IFR, for hire'], before: 'no-go', after: 'go-with-limits' },
    ]);
    expect(borders[0]?.changes[0]?.goes.map(({ cite }) => cite)).toContain('14cfr91.205(c)(4)');
  });
});

it('a lane draws as one stretch what only the light parts', () => {
  const drawn = lanesOfDay().map(dayLane);
  expect(drawn.map(({ id, spans }) => [id, spans.map(({ outcome }) => outcome).join()])).toEqual([
    ['vfr-private', 'go-with-limits'],
    ['vfr-hire', 'no-go,go-with-limits,no-go'],
    ['ifr-private', 'go-with-limits'],
    ['ifr-hire', 'no-go,go-with-limits,no-go'],
  ]);
  for (const { spans } of drawn) {
    expect([spans[0]?.from, spans.at(-1)?.until]).toEqual([DAY.from, DAY.until]);
  }
});

it('the light stretches over the whole day', () => {
  const light = dayLight(lightOverTime(HOME, DAY), DAY);
  expect(light.map((one) => one.light)).toEqual(['night', 'twilight', 'day', 'twilight', 'night']);
  expect([light[0]?.from, light.at(-1)?.until]).toEqual([DAY.from, DAY.until]);
  for (const [index, { until }] of light.slice(0, -1).entries()) expect(light[index + 1]?.from).toBe(until);
});

describe('marks of the clock', () => {
  it.each([
    ['an ordinary day', 'America/Chicago', '2026-11-25', '03 06 09 12 15 18 21'],
    ['23 hours', 'America/Chicago', '2026-03-08', '03 06 09 12 15 18 21'],
    ['25 hours', 'America/Chicago', '2026-11-01', '03 06 09 12 15 18 21'],
    ['a day that begins at 01:00', 'America/Santiago', '2026-09-06', '03 06 09 12 15 18 21'],
    ['a zone of half an hour', 'Asia/Kolkata', '2026-11-25', '03 06 09 12 15 18 21'],
    ['a zone of three quarters', 'Pacific/Chatham', '2026-11-25', '03 06 09 12 15 18 21'],
  ])('%s', (_name, zone, date, labels) => {
    const marks = hourMarks(dayOf(date, zone), zone);
    expect(marks.map(({ label }) => label).join(' ')).toBe(labels);
    const onTheWall = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hour: '2-digit',
      minute: '2-digit',
    });
    expect(marks.map(({ at }) => onTheWall.format(new Date(at)))).toEqual(
      marks.map(({ label }) => `${label}:00`),
    );
  });
});

it.each([
  ['2026-12-31', 1, '2027-01-01'],
  ['2026-03-01', -1, '2026-02-28'],
  ['2028-02-28', 1, '2028-02-29'],
])('%s and %d days is %s', (date, days, expected) => expect(daysAfter(date, days)).toBe(expected));
