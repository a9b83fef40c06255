import { describe, expect, it } from 'vitest';
import { Temporal } from 'temporal-polyfill';
import type { AircraftFacts } from '../../lib/rules/aircraft';
import { known, unknown } from '../../lib/rules/facts';
import {
  answersOverTime,
  LANES,
  nextChange,
  spanAt,
  type Border,
  type Lane,
  type LaneOverTime,
} from '../../lib/rules/over-time';
import type { BookedFlight } from '../../lib/rules/spent-hours';
import { sunTimes } from '../../lib/rules/sun';
import type { ReferenceBase } from '../../lib/rules/use-of-flight';
import {
  BASE,
  deferralOf,
  discrepancyOf,
  requirementRow,
  trainer,
  trainerEquipment,
  trainerPapers,
  trainerRequirements,
  melItemOf,
} from '../fixtures/aircraft';

const HOME: ReferenceBase = {
  ...BASE,
  transponderAirspace: known(false),
  adsbAirspace: known(false),
  controlledAirspace: known(true),
};
/** The local day of 25 November 2026 in Iowa, UTC-6. */
const DAY = { from: '2026-11-25T06:00:00Z', until: '2026-11-26T06:00:00Z' };
const SUN = sunTimes('2026-11-25', HOME);
const PRIVATE_VFR: Lane = { rules: 'VFR', hire: false };
const HIRE_VFR: Lane = { rules: 'VFR', hire: true };

function laneOf(
  aircraft: AircraftFacts,
  lane: Lane,
  booked: readonly BookedFlight[] = [],
  base: ReferenceBase = HOME,
  window = DAY,
): LaneOverTime {
  const [over] = answersOverTime(aircraft, base, window, booked, [lane]);
  if (over === undefined) throw new Error('a lane was asked for');
  return over;
}

const shape = ({ spans }: LaneOverTime) =>
  spans.map(({ from, kind, betweenSunsetAndSunrise, answer }) =>
    [from, kind.light, betweenSunsetAndSunrise ? 'dark' : 'light', answer.outcome].join(' '),
  );
const outcomeAt = (over: LaneOverTime, at: string) => spanAt(over, at)?.answer.outcome ?? 'outside';
const second = (at: string | null | undefined, seconds: number): string =>
  Temporal.Instant.from(at ?? '')
    .add({ seconds })
    .toString();
const borderAt = (over: LaneOverTime, at: string): Border => {
  const border = over.borders.find((one) => one.at === at);
  if (border === undefined)
    throw new Error(`no border at ${at}: ${over.borders.map((one) => one.at).join()}`);
  return border;
};
const cites = (lines: Border['comes']) => lines.map(({ cite }) => cite);

const deferred = (equipmentId: string, title: string, overrides = {}) =>
  discrepancyOf({ equipmentId, title, deferral: deferralOf({ placardPlaced: true, ...overrides }) });

describe('light', () => {
  it('a healthy aircraft: only the light changes, and no border names a reason', () => {
    const over = laneOf(trainer(), PRIVATE_VFR);
    expect(shape(over)).toEqual([
      '2026-11-25T06:00:00Z night dark go',
      `${second(SUN.civilDawn, 1)} day dark go`,
      `${second(SUN.sunrise, 1)} day light go`,
      `${SUN.sunset} day dark go`,
      `${SUN.civilDusk} night dark go`,
    ]);
    expect(over.borders.every(({ comes, goes }) => comes.length + goes.length === 0)).toBe(true);
    expect(over.borders.map(({ events }) => events.map(({ what }) => what).join())).toEqual([
      'night-ends',
      'sunrise',
      'sunset',
      'night-begins',
    ]);
    // The border of the morning is a second late (strict); the event keeps the second of the almanac.
    expect(over.borders[1]?.events[0]?.at).toBe(SUN.sunrise);
    expect(nextChange(over, DAY.from)).toBeNull();
  });

  // 91.205(c)(4): at night, one electric landing light if operated for hire. 1.1: night begins with civil dusk.
  describe('landing light deferred, for hire', () => {
    const over = laneOf(
      trainer({ discrepancies: [deferred('landing-light', 'Landing light out')] }),
      HIRE_VFR,
    );
    it.each([
      ['a second before the end of evening twilight', second(SUN.civilDusk, -1), 'go-with-limits'],
      ['at its last second (strict)', second(SUN.civilDusk, 0), 'no-go'],
      ['a second later', second(SUN.civilDusk, 1), 'no-go'],
      ['a second before morning twilight', second(SUN.civilDawn, -1), 'no-go'],
      ['at its first second (strict)', second(SUN.civilDawn, 0), 'no-go'],
      ['a second later', second(SUN.civilDawn, 1), 'go-with-limits'],
      ['between sunset and night', second(SUN.sunset, 60), 'go-with-limits'],
    ])('%s', (_when, at, outcome) => expect(outcomeAt(over, at)).toBe(outcome));

    it('says at the border what comes and what goes, and when it next changes', () => {
      const dusk = borderAt(over, SUN.civilDusk ?? '');
      expect(cites(dusk.comes)).toContain('14cfr91.205(c)(4)');
      expect(dusk.goes.every(({ effect }) => effect === 'limits')).toBe(true);
      const next = nextChange(over, '2026-11-25T20:00:00Z');
      expect(next?.at).toBe(SUN.civilDusk);
      expect([next?.from.answer.outcome, next?.to.answer.outcome]).toEqual(['go-with-limits', 'no-go']);
      expect(nextChange(over, SUN.civilDusk ?? '')).toBeNull();
    });

    it('privately it may fly all day: 91.205(c)(4) asks only for hire', () => {
      const own = laneOf(
        trainer({ discrepancies: [deferred('landing-light', 'Landing light out')] }),
        PRIVATE_VFR,
      );
      expect(new Set(own.spans.map(({ answer }) => answer.outcome))).toEqual(new Set(['go-with-limits']));
    });
  });

  // 91.209(a)(1): from sunset to sunrise, before night begins.
  describe('position lights deferred', () => {
    const aircraft = trainer({ discrepancies: [deferred('position-lights', 'Left position light out')] });
    const over = laneOf(aircraft, PRIVATE_VFR);
    it.each([
      ['a second before sunset', second(SUN.sunset, -1), 'go-with-limits'],
      ['at sunset (strict)', second(SUN.sunset, 0), 'no-go'],
      ['a second after', second(SUN.sunset, 1), 'no-go'],
      ['a second before sunrise', second(SUN.sunrise, -1), 'no-go'],
      ['at sunrise (strict)', second(SUN.sunrise, 0), 'no-go'],
      ['a second after', second(SUN.sunrise, 1), 'go-with-limits'],
    ])('%s', (_when, at, outcome) => expect(outcomeAt(over, at)).toBe(outcome));

    it('the limit by day names the sunset, and ends there for the bar of 91.209', () => {
      const border = borderAt(over, SUN.sunset ?? '');
      expect(border.goes.map(({ because }) => because)).toContainEqual(
        expect.stringMatching(/^On the ground by sunset, 16:3\d at 0WC\.$/),
      );
      expect(cites(border.comes)).toContain('14cfr91.209(a)(1)');
    });
  });

  // Longyearbyen, about 78 degrees north: midnight sun in June, polar night in December (its civil twilight too).
  it.each([
    ['polar day', '2026-06-21', 'day', 'light'],
    ['polar night', '2026-12-21', 'night', 'dark'],
  ])('%s: one span, whatever is deferred', (_name, date, light, sun) => {
    const north = { ...HOME, latitudeDeg: 78.2, longitudeDeg: 15.6, zone: 'Arctic/Longyearbyen' };
    const aircraft = trainer({
      requirements: trainerRequirements().map((row) => ({ ...row, lastDone: sameDay(row, date) })),
      discrepancies: [deferred('position-lights', 'Left position light out')],
    });
    const window = { from: `${date}T00:00:00Z`, until: second(`${date}T00:00:00Z`, 86_400) };
    const over = laneOf(aircraft, PRIVATE_VFR, [], north, window);
    expect(shape(over)).toEqual([
      `${date}T00:00:00Z ${light} ${sun} ${light === 'day' ? 'go-with-limits' : 'no-go'}`,
    ]);
    expect(over.borders).toEqual([]);
  });
});

function sameDay(row: AircraftFacts['requirements'][number], date: string) {
  return row.lastDone.known ? known({ ...row.lastDone.value, on: date }) : row.lastDone;
}

describe('dates', () => {
  const TWO_DAYS = { from: '2026-11-25T12:00:00Z', until: '2026-11-27T12:00:00Z' };
  const MIDNIGHT = '2026-11-26T06:00:00Z';

  /** What is good through 25 November at the base, and the paragraph it ends by. */
  const ENDING: readonly (readonly [string, AircraftFacts, string])[] = [
    [
      'annual of November 2025, held against 30 November: not yet',
      trainer({ requirements: withRow('annual', '2025-11-02') }),
      '',
    ],
    [
      'registration (47.40(a))',
      trainer({
        papers: trainerPapers().map((paper) =>
          paper.kind === 'registration' ? { ...paper, validThrough: known('2026-11-25') } : paper,
        ),
      }),
      '14cfr47.40(a)',
    ],
    [
      'battery of the emergency locator transmitter (91.207(c)(2))',
      trainer({
        requirements: trainerRequirements().map((row) =>
          row.kind === 'elt-battery' ? { ...row, fixedExpiry: '2026-11-25' } : row,
        ),
      }),
      '14cfr91.207(c)(2)',
    ],
    [
      'deferral of category B recorded on the 22nd: three days after it (policy letter 25)',
      trainer({ mel: known(listWithTaxiLight()), discrepancies: [deferredByList('2026-11-22')] }),
      'mmel-category-b',
    ],
  ];

  it.each(ENDING)('%s', (_name, aircraft, cite) => {
    const over = laneOf(aircraft, PRIVATE_VFR, [], HOME, TWO_DAYS);
    const ends = cite !== '';
    expect(outcomeAt(over, second(MIDNIGHT, -1))).not.toBe('no-go');
    expect(outcomeAt(over, MIDNIGHT) === 'no-go').toBe(ends);
    expect(outcomeAt(over, second(MIDNIGHT, 1)) === 'no-go').toBe(ends);
    if (!ends) return;
    const border = borderAt(over, MIDNIGHT);
    expect(border.events).toEqual([{ what: 'date-ends', at: MIDNIGHT, date: '2026-11-25' }]);
    expect(cites(border.comes).map((one) => one.toLowerCase())).toContain(cite);
  });

  // 91.409(a): an annual of November 2025 is good through the last day of November 2026.
  it('calendar months end with the last day of the month, at midnight at the base', () => {
    const over = laneOf(trainer({ requirements: withRow('annual', '2025-11-02') }), PRIVATE_VFR, [], HOME, {
      from: '2026-11-30T12:00:00Z',
      until: '2026-12-01T12:00:00Z',
    });
    expect(outcomeAt(over, '2026-12-01T05:59:59Z')).toBe('go');
    expect(outcomeAt(over, '2026-12-01T06:00:00Z')).toBe('no-go');
    expect(outcomeAt(over, '2026-12-01T06:00:01Z')).toBe('no-go');
    expect(cites(borderAt(over, '2026-12-01T06:00:00Z').comes)).toEqual(['14cfr91.409(a)']);
  });

  // Offsets: IANA tz database, through Temporal; checked against luxon in tests/outside. Chile changes at midnight.
  it.each([
    ['23 hours in spring', 'America/Chicago', '2026-03-08', '2026-03-08T06:00:00Z', '2026-03-09T05:00:00Z'],
    ['25 hours in autumn', 'America/Chicago', '2026-11-01', '2026-11-01T05:00:00Z', '2026-11-02T06:00:00Z'],
    [
      '23, no 00:00 on the wall',
      'America/Santiago',
      '2026-09-06',
      '2026-09-06T04:00:00Z',
      '2026-09-07T03:00:00Z',
    ],
    ['25, midnight twice', 'America/Santiago', '2026-04-04', '2026-04-04T03:00:00Z', '2026-04-05T04:00:00Z'],
  ])('a day of %s ends where the zone says', (_name, zone, date, start, end) => {
    const base = { ...HOME, zone };
    const aircraft = trainer({
      requirements: trainerRequirements().map((row) => ({ ...row, lastDone: sameDay(row, date) })),
      papers: trainerPapers().map((paper) =>
        paper.kind === 'registration' ? { ...paper, validThrough: known(date) } : paper,
      ),
    });
    const over = laneOf(aircraft, PRIVATE_VFR, [], base, { from: start, until: second(end, 3600) });
    expect(outcomeAt(over, second(end, -1))).toBe('go');
    expect(outcomeAt(over, end)).toBe('no-go');
    expect(outcomeAt(over, second(end, 1))).toBe('no-go');
    expect(borderAt(over, end).events).toContainEqual({ what: 'date-ends', at: end, date });
  });
});

function withRow(kind: 'annual', on: string) {
  return trainerRequirements().map((row) =>
    row.kind === kind ? requirementRow(kind, row.name, on, 43820, { intervalMonths: 12 }) : row,
  );
}

function listWithTaxiLight() {
  return {
    reference: 'MEL 1',
    letterAboard: known(true),
    enforceCategories: true,
    extension: null,
    items: [
      melItemOf({
        id: 'mel-taxi-light',
        equipmentId: 'taxi-light',
        title: 'Taxi light',
        category: 'B',
        installed: trainerEquipment().find(({ id }) => id === 'taxi-light')?.installed ?? 0,
      }),
    ],
  };
}

const deferredByList = (recordedOn: string) =>
  deferred('taxi-light', 'Taxi light does not light', {
    basis: 'mel',
    melItemId: 'mel-taxi-light',
    melProceduresDone: true,
    recordedOn,
  });

describe('hours of booked flights', () => {
  const LESSON: BookedFlight = {
    id: 'lesson',
    label: 'R. Fernhollow',
    departAt: '2026-11-25T15:00:00.000Z',
    arriveAt: '2026-11-25T17:00:00.000Z',
    plannedTenths: 15,
    state: 'planned',
  };
  /** 4512.3 h now; the 100-hour is due `left` tenths from now: 91.409(b). */
  const hundredHourIn = (left: number) =>
    trainer({
      requirements: trainerRequirements().map((row) =>
        row.kind === 'hundred-hour'
          ? requirementRow('hundred-hour', '100-hour inspection', '2026-10-20', 45123 + left - 1000)
          : row,
      ),
    });

  // Before the flight another tenth fits; in the air, the flight itself; afterwards, another tenth.
  it.each([
    ['a tenth is left after it', 16, ['go', 'go', 'go']],
    ['it fits exactly', 15, ['go', 'go', 'no-go']],
    ['it is a tenth over', 14, ['go', 'no-go', 'no-go']],
    ['nothing is left before it', 0, ['no-go', 'no-go', 'no-go']],
  ])('%s', (_name, left, [before, during, after]) => {
    const over = laneOf(hundredHourIn(left), HIRE_VFR, [LESSON]);
    expect(outcomeAt(over, '2026-11-25T14:59:59Z')).toBe(before);
    expect(outcomeAt(over, '2026-11-25T15:00:00Z')).toBe(during);
    expect(outcomeAt(over, '2026-11-25T16:59:59Z')).toBe(during);
    expect(outcomeAt(over, '2026-11-25T17:00:00Z')).toBe(after);
  });

  it('the border names the flight and the paragraph', () => {
    const over = laneOf(hundredHourIn(15), HIRE_VFR, [LESSON]);
    const border = borderAt(over, '2026-11-25T17:00:00Z');
    expect(border.events).toEqual([{ what: 'flight-ends', at: LESSON.arriveAt, flight: LESSON }]);
    expect(cites(border.comes)).toEqual(['14cfr91.409(b)']);
    expect(nextChange(over, '2026-11-25T16:00:00Z')?.at).toBe('2026-11-25T17:00:00Z');
  });

  it('a flight that changes nothing makes no border, and the span names it', () => {
    const over = laneOf(trainer(), PRIVATE_VFR, [LESSON]);
    expect(over.borders.flatMap(({ events }) => events).some(({ what }) => what.startsWith('flight'))).toBe(
      false,
    );
    expect(spanAt(over, '2026-11-25T18:00:00Z')?.booked).toEqual([LESSON]);
  });

  it('a flight out before the window has spent its hours in it', () => {
    const early = { ...LESSON, departAt: '2026-11-25T03:00:00Z', arriveAt: '2026-11-25T05:00:00Z' };
    const over = laneOf(hundredHourIn(15), HIRE_VFR, [early]);
    expect(outcomeAt(over, DAY.from)).toBe('no-go');
  });

  it('a line that is only worded anew is a border, but no change', () => {
    const over = laneOf(hundredHourIn(0), HIRE_VFR, [LESSON]);
    expect(over.borders.some(({ comes }) => comes.length > 0)).toBe(true);
    expect(nextChange(over, DAY.from)).toBeNull();
  });

  it('time in service that is not known is no go throughout', () => {
    const aircraft = trainer({ ttisTenths: unknown('the total time in service of N0417W') });
    for (const over of answersOverTime(aircraft, HOME, DAY, [LESSON])) {
      expect(over.spans.every(({ answer }) => answer.outcome === 'no-go')).toBe(true);
    }
  });
});

describe('the window', () => {
  it('asks four lanes, and their spans tile it', () => {
    const lanes = answersOverTime(trainer(), HOME, DAY, []);
    expect(lanes.map(({ lane }) => lane)).toEqual(LANES);
    for (const { spans } of lanes) {
      expect(spans[0]?.from).toBe(DAY.from);
      expect(spans.at(-1)?.until).toBe(DAY.until);
    }
  });

  // What happens at the very beginning is no border, and neither is the end of the window.
  it.each([
    ['from a second before sunset', -1, ['light', 'dark']],
    ['from sunset', 0, ['dark']],
    ['from a second after', 1, ['dark']],
  ])('%s', (_name, seconds, suns) => {
    const window = { from: second(SUN.sunset, seconds), until: second(SUN.sunset, 600) };
    const over = laneOf(trainer(), PRIVATE_VFR, [], HOME, window);
    expect(over.spans.map((span) => (span.betweenSunsetAndSunrise ? 'dark' : 'light'))).toEqual(suns);
  });

  it.each([
    ['until a second before sunrise', -1, 1],
    ['until sunrise', 0, 1],
    ['until a second after', 1, 1],
    ['until two seconds after', 2, 2],
  ])('%s', (_name, seconds, count) => {
    const window = { from: second(SUN.sunrise, -600), until: second(SUN.sunrise, seconds) };
    expect(laneOf(trainer(), PRIVATE_VFR, [], HOME, window).spans).toHaveLength(count);
  });

  it.each([
    ['from the first second of light', 1, ['light']],
    ['from the last second of the dark', 0, ['dark', 'light']],
  ])('a window that begins %s', (_name, seconds, suns) => {
    const window = { from: second(SUN.sunrise, seconds), until: second(SUN.sunrise, 600) };
    const over = laneOf(trainer(), PRIVATE_VFR, [], HOME, window);
    expect(over.spans.map((span) => (span.betweenSunsetAndSunrise ? 'dark' : 'light'))).toEqual(suns);
  });

  it('refuses one that ends before it begins, and instants that are none', () => {
    const { from, until } = DAY;
    expect(() => answersOverTime(trainer(), HOME, { from: until, until: from }, [])).toThrow(RangeError);
    expect(() => answersOverTime(trainer(), HOME, { from, until: from }, [])).toThrow(RangeError);
    expect(() => answersOverTime(trainer(), HOME, { from: 'now', until }, [])).toThrow(RangeError);
  });
});
