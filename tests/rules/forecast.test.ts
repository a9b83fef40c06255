import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { known, unknown, type Fact } from '@/lib/rules/facts';
import {
  BAND_PER_CENT,
  flyingPace,
  hoursForecast,
  whicheverFirst,
  type HoursForecast,
  type Pace,
  type TimeReading,
} from '@/lib/rules/forecast';

// Source of the forecast itself: issue 4, "forecast of the due date from flying pace with a band". The model is the normal
// approximation of a renewal reward sum and its prediction interval, as the file under test names it. Where a row has no
// other source it is our own choice (12 weeks, 4 weeks, 80 per cent).
const NOW = '2026-11-25T18:00:00Z';
const TODAY = '2026-11-25';
const A_DAY = 86_400_000;
const at = (daysAgo: number) => new Date(Date.parse(NOW) - daysAgo * A_DAY).toISOString();

/** One reading a week, the oldest first. */
const weekly = (hours: readonly number[]): TimeReading[] =>
  hours.map((ttisTenths, index) => ({ at: at((hours.length - 1 - index) * 7), ttisTenths }));

const paceOf = (fact: Fact<Pace>): Pace => {
  if (!fact.known) throw new Error(fact.missing);
  return fact.value;
};
const valueOf = (fact: Fact<HoursForecast>): HoursForecast => {
  if (!fact.known) throw new Error(fact.missing);
  return fact.value;
};
const steady = (tenthsAWeek: number, spreadTenths = 0): Fact<Pace> =>
  known({ tenthsAWeek, spreadTenths, weeks: 12, spans: 12 });

describe('the flying pace', () => {
  test('exact: 5.0 h every week for twelve weeks is 50 tenths a week, without spread', () => {
    const pace = paceOf(flyingPace(weekly([...Array(13).keys()].map((week) => week * 50)), NOW));
    expect(pace).toEqual({ tenthsAWeek: 50, spreadTenths: 0, weeks: 12, spans: 12 });
  });

  test('exact: weeks of 4.0 and 6.0 h by turns have mean 5.0 h and the sample deviation of those weeks', () => {
    // Sample standard deviation of four weeks of 40, 60, 40, 60: the square root of 4·100/3 (any textbook).
    const pace = paceOf(flyingPace(weekly([0, 40, 100, 140, 200]), NOW));
    expect(pace.tenthsAWeek).toBe(50);
    expect(pace.spreadTenths).toBeCloseTo(Math.sqrt(400 / 3), 10);
  });

  test('exact: what lies before the twelve weeks does not count', () => {
    const before = [...Array(8).keys()].map((week) => ({
      at: at(84 + 7 * (week + 1)),
      ttisTenths: 10_000 - (week + 1) * 300,
    }));
    const inside = [...Array(13).keys()].map((week) => ({
      at: at(84 - 7 * week),
      ttisTenths: 10_000 + week * 50,
    }));
    expect(paceOf(flyingPace([...before, ...inside], NOW)).tenthsAWeek).toBe(50);
  });

  test.each([
    // Under four full weeks, on it, over it.
    { days: [27, 18, 9, 0], isKnown: false },
    { days: [28, 21, 14, 7, 0], isKnown: true },
    { days: [29, 21, 14, 7, 0], isKnown: true },
  ])('readings over $days days ago: known $isKnown', ({ days, isKnown }) => {
    const readings = days.map((day) => ({ at: at(day), ttisTenths: 1000 - day * 5 }));
    expect(flyingPace(readings, NOW).known).toBe(isKnown);
  });

  test.each([
    // The newest reading under four weeks old, on it, over it.
    { newest: 27, isKnown: true },
    { newest: 28, isKnown: true },
    { newest: 29, isKnown: false },
  ])('last read $newest days ago: known $isKnown', ({ newest, isKnown }) => {
    const readings = [0, 7, 14, 21, 28, 35].map((day) => ({
      at: at(newest + day),
      ttisTenths: 1000 - day * 5,
    }));
    expect(flyingPace(readings, NOW).known).toBe(isKnown);
  });

  test('many readings a day, as flights give them, are the same as one a week', () => {
    const flights = [...Array(85).keys()].flatMap((day) => [
      { at: new Date(Date.parse(at(84 - day)) - 3_600_000).toISOString(), ttisTenths: day * 10 },
      { at: at(84 - day), ttisTenths: (day + 1) * 10 },
    ]);
    expect(paceOf(flyingPace(flights, NOW)).tenthsAWeek).toBeCloseTo(70, 10);
  });

  test('a reading from the future and one that ran back count nowhere', () => {
    const odd = [
      { at: at(-1), ttisTenths: 9000 },
      { at: at(45), ttisTenths: 5000 },
    ];
    expect(
      paceOf(flyingPace([...weekly([...Array(13).keys()].map((week) => week * 50)), ...odd], NOW))
        .tenthsAWeek,
    ).toBe(50);
  });
});

describe('when hours run out', () => {
  test('exact: 25.0 h left at 5.0 h a week without spread is five weeks, with no band', () => {
    expect(hoursForecast(250, steady(50), TODAY)).toEqual(
      known({ on: '2026-12-30', earliest: '2026-12-30', latest: '2026-12-30' }),
    );
  });

  test('exact: a band solved by hand', () => {
    // R = 400, μ = 50, σ = 20, T = 12, t(11) = 1.363: v = 743.1, a = 2438.1, b = 40743.1, root = √(b² − 4·a·R²) = 9983.5:
    // earliest 2·R²/(b + root) = 6.308 weeks = 44.2 days, latest (b + root)/(2a) = 10.40 weeks = 72.8 days; mean 8 weeks.
    expect(hoursForecast(400, steady(50, 20), TODAY)).toEqual(
      known({ on: '2027-01-20', earliest: '2027-01-08', latest: '2027-02-06' }),
    );
  });

  test('nothing left is today; already over is no forecast', () => {
    expect(valueOf(hoursForecast(0, steady(50, 20), TODAY)).on).toBe(TODAY);
    expect(hoursForecast(-1, steady(50), TODAY)).toMatchObject({ known: false });
  });

  test('a parked aircraft gets no date, and the reader is told', () => {
    const parked = flyingPace(weekly(Array<number>(13).fill(4000)), NOW);
    expect(hoursForecast(250, parked, TODAY)).toEqual(unknown('no date: it has not flown in 12 weeks'));
  });

  test('an unknown pace gives no date, and says what is missing', () => {
    expect(hoursForecast(250, flyingPace([], NOW), TODAY)).toMatchObject({ known: false });
  });

  test.each([
    // Five years of 1.0 h a week: under, on, over.
    { left: 2599, isKnown: true },
    { left: 2600, isKnown: true },
    { left: 2601, isKnown: false },
  ])('$left tenths left at 10 a week: known $isKnown', ({ left, isKnown }) => {
    expect(hoursForecast(left, steady(10), TODAY).known).toBe(isKnown);
  });

  test('flown so unevenly that the mean may be nothing: no latest date', () => {
    expect(valueOf(hoursForecast(100, steady(10, 60), TODAY)).latest).toBeNull();
  });

  const paces = fc.record({
    tenthsAWeek: fc.integer({ min: 1, max: 300 }),
    spreadTenths: fc.double({ min: 0, max: 300, noNaN: true }),
    weeks: fc.double({ min: 4, max: 16, noNaN: true }),
    spans: fc.integer({ min: 3, max: 14 }),
  });

  test('property: the band holds the mean, and more hours left never come earlier', () => {
    fc.assert(
      fc.property(
        paces,
        fc.integer({ min: 0, max: 3000 }),
        fc.integer({ min: 0, max: 500 }),
        (pace, left, more) => {
          const one = hoursForecast(left, known(pace), TODAY);
          const other = hoursForecast(left + more, known(pace), TODAY);
          if (!one.known || !other.known) return;
          expect(one.value.earliest <= one.value.on).toBe(true);
          expect(one.value.latest === null || one.value.on <= one.value.latest).toBe(true);
          expect(one.value.on <= other.value.on).toBe(true);
          expect(one.value.earliest <= other.value.earliest).toBe(true);
          if (other.value.latest !== null)
            expect((one.value.latest ?? '9999') <= other.value.latest).toBe(true);
        },
      ),
    );
  });
});

describe('whichever comes first', () => {
  const hours = known({ on: '2027-01-10', earliest: '2027-01-01', latest: '2027-02-01' });

  test.each([
    // Against the forecast of 10 January: the day before, the day, the day after.
    { on: '2027-01-09', by: 'calendar', first: '2027-01-09', latest: '2027-01-09' },
    { on: '2027-01-10', by: 'calendar', first: '2027-01-10', latest: '2027-01-10' },
    { on: '2027-01-11', by: 'hours', first: '2027-01-10', latest: '2027-01-11' },
  ])('a calendar limit of $on: $by', ({ on, by, first, latest }) => {
    expect(whicheverFirst(on, hours)).toEqual({ by, on: first, earliest: '2027-01-01', latest });
  });

  test('the calendar alone is certain; hours without a pace give way to it; neither is nothing', () => {
    const alone = { by: 'calendar', on: '2027-03-31', earliest: '2027-03-31', latest: '2027-03-31' };
    expect(whicheverFirst('2027-03-31', null)).toEqual(alone);
    expect(whicheverFirst('2027-03-31', unknown('no pace'))).toEqual(alone);
    expect(whicheverFirst(null, unknown('no pace'))).toBeNull();
    expect(whicheverFirst(null, hours)).toEqual({ by: 'hours', ...hours.value });
  });
});

/** A seeded generator (mulberry32, public domain): the same histories on every run. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const between = (random: () => number, least: number, most: number) => least + random() * (most - least);

/** Flights come at random (a Poisson process), each 0.5 to 2.0 h; meters are read once a week or after every flight. */
function trueDateInBand(random: () => number): boolean {
  const flightsAWeek = between(random, 2, 12);
  const afterEachFlight = random() < 0.5;
  const left = Math.round(between(random, 50, 900));
  let ttis = 40_000;
  const readings: TimeReading[] = [{ at: at(100), ttisTenths: ttis }];
  let day = -100;
  let nextRead = -93;
  for (;;) {
    const next = day - (Math.log(1 - random()) / flightsAWeek) * 7;
    while (!afterEachFlight && nextRead <= Math.min(next, 0)) {
      readings.push({ at: at(-nextRead), ttisTenths: ttis });
      nextRead += 7;
    }
    if (next > 0) {
      day = next;
      break;
    }
    day = next;
    ttis += Math.round(between(random, 5, 20));
    if (afterEachFlight) readings.push({ at: at(-day), ttisTenths: ttis });
  }
  const forecast = hoursForecast(left, flyingPace(readings, NOW), TODAY);
  if (!forecast.known) throw new Error(forecast.missing);
  let flown = 0;
  for (;;) {
    flown += Math.round(between(random, 5, 20));
    if (flown > left) break;
    day -= (Math.log(1 - random()) / flightsAWeek) * 7;
  }
  const trueDay = new Date(Date.parse(`${TODAY}T00:00:00Z`) + Math.floor(day) * A_DAY)
    .toISOString()
    .slice(0, 10);
  const { earliest, latest } = forecast.value;
  return earliest <= trueDay && (latest === null || trueDay <= latest);
}

test('calibration: of 2,000 invented histories the true date lies in the band of 80 per cent in 84.3 per cent', () => {
  expect(BAND_PER_CENT).toBe(80);
  const random = generator(20_261_125);
  const runs = 2000;
  const inside = [...Array(runs).keys()].filter(() => trueDateInBand(random)).length;
  const share = (inside / runs) * 100;
  expect(share).toBeGreaterThan(70);
  expect(share).toBeLessThan(90);
  // Above 80 because whole days are rounded outwards. The words of this test are held to what was measured.
  expect(share.toFixed(1)).toBe('84.3');
});
