/**
 * Days lost by chapter, times to answer and repair, repeat rate, deferral age. No outside source defines them: the
 * definitions are our own and stand beside each figure. Sums by hand. Percentiles: tests/outside/insight-quantiles.test.ts.
 */
import { describe, expect, test } from 'vitest';
import { chapterOf, daysLostFigure, tenthsOfDays, titleOfChapter } from '@/lib/rules/insight/days-lost';
import { deferralAgeFigure } from '@/lib/rules/insight/deferral-age';
import type { AircraftHistory, Judged, WriteUpHistory } from '@/lib/rules/insight/history';
import { LEAST_FOR_PERCENTILES, nearestRank, spreadOf } from '@/lib/rules/insight/quantile';
import { REPEAT_RATE_DEFINITION, repeatRateFigure } from '@/lib/rules/insight/repeat-rate';
import { REPEAT_DAYS, REPEAT_FLIGHTS } from '@/lib/rules/repeat-defect';
import { firstAnswer, timeToAnswerFigure, timeToRepairFigure } from '@/lib/rules/insight/times';
import { aircraftHistory, deferralHistory, writeUpHistory } from '../fixtures/histories';

/** 2 to 10 November 2026 at the base. */
const WINDOW = { from: '2026-11-02T06:00:00Z', until: '2026-11-11T06:00:00Z' };
const windowOf = () => WINDOW;
const NOW = '2026-11-20T18:00:00Z';
const at = (text: string) => `2026-11-${text}:00Z`;
const fleet = (...writeUps: WriteUpHistory[]): AircraftHistory[] => [aircraftHistory({ writeUps })];

describe('days lost by chapter', () => {
  test.each([
    { minutes: 71, tenths: 0 },
    { minutes: 72, tenths: 1 },
    { minutes: 73, tenths: 1 },
    { minutes: 215, tenths: 1 },
    { minutes: 216, tenths: 2 },
    { minutes: 1440, tenths: 10 },
  ])('$minutes minutes are $tenths tenths of a day', ({ minutes, tenths }) => {
    expect(tenthsOfDays(minutes)).toBe(tenths);
  });

  test.each([
    { jasc: '3340', chapter: '33', title: 'Lights' },
    { jasc: '', chapter: null, title: 'No system code' },
    { jasc: '9900', chapter: '99', title: 'Not in the table' },
  ])('code "$jasc" is chapter $chapter, $title', ({ jasc, chapter, title }) => {
    expect(chapterOf(jasc)).toBe(chapter);
    expect(titleOfChapter(chapter)).toBe(title);
  });

  test('two chapters at once each count, one chapter twice at once counts once: 3.0 d summed, 2.5 d stood', () => {
    const one = aircraftHistory({
      writeUps: [
        // Lights: 36 h, and 12 h inside them.
        writeUpHistory(at('03T06:00'), at('04T18:00')),
        writeUpHistory(at('03T06:00'), at('03T18:00'), { jasc: '3350' }),
        // Landing gear: 24 h, of which 12 h beside the lights.
        writeUpHistory(at('04T06:00'), at('05T06:00'), { jasc: '3230' }),
      ],
    });
    // Lights again on another aircraft, 12 h of it inside the window: it began 2 h before.
    const other = aircraftHistory({
      id: 'a2',
      registration: 'N02',
      writeUps: [writeUpHistory(at('02T04:00'), at('02T18:00'))],
    });
    const figure = daysLostFigure([one, other], windowOf);
    expect(figure.rows).toEqual([
      { chapter: '33', title: 'Lights', minutes: 48 * 60, tenthsOfDays: 20, writeUps: 3, aircraft: 2 },
      { chapter: '32', title: 'Landing Gear', minutes: 24 * 60, tenthsOfDays: 10, writeUps: 1, aircraft: 1 },
    ]);
    // Stood: 48 h of the first aircraft, 12 h of the other.
    expect([figure.summedTenths, figure.stoodTenths]).toEqual([30, 25]);
    expect(figure.counts).toEqual({ aircraft: 2, writeUps: 4 });
  });

  test('what grounded nothing and what lies outside the window is in no chapter', () => {
    const looks: Judged = {
      at: at('03T06:00'),
      by: 'opening',
      kind: 'cosmetic',
      severity: 'note',
      withinLimits: false,
    };
    const figure = daysLostFigure(
      fleet(
        writeUpHistory(at('03T06:00'), null, { judged: [looks] }),
        writeUpHistory(at('01T06:00'), at('02T06:00')),
        writeUpHistory(at('11T06:00')),
      ),
      windowOf,
    );
    expect(figure).toMatchObject({ rows: [], summedTenths: 0, counts: { writeUps: 0 } });
  });
});

describe('nearest rank (worked examples of the textbook method, from memory)', () => {
  test.each([
    { percent: 5, value: 15 },
    { percent: 30, value: 20 },
    { percent: 40, value: 20 },
    { percent: 41, value: 35 },
    { percent: 50, value: 35 },
    { percent: 100, value: 50 },
  ])('of 15, 20, 35, 40, 50 the $percent th is $value', ({ percent, value }) => {
    expect(nearestRank([50, 15, 40, 20, 35], percent)).toBe(value);
  });

  test('refuses no values and what is no percentage', () => {
    expect(() => nearestRank([], 50)).toThrow(RangeError);
    for (const percent of [0, 101, 0.5]) expect(() => nearestRank([1], percent)).toThrow(RangeError);
  });

  test.each([
    { count: 4, median: null },
    { count: 5, median: 3 },
    { count: 6, median: 3 },
  ])('$count values: median $median', ({ count, median }) => {
    expect(LEAST_FOR_PERCENTILES).toBe(5);
    const spread = spreadOf(Array.from({ length: count }, (_, index) => index + 1));
    expect(spread).toMatchObject({ count, median, least: 1, most: count });
  });
});

describe('time to answer', () => {
  const answered = (openedAt: string, minutes: number, number: string) =>
    writeUpHistory(openedAt, null, {
      id: number,
      number,
      judged: [
        { at: openedAt, by: 'opening', kind: 'damage', severity: null, withinLimits: false },
        {
          at: new Date(Date.parse(openedAt) + minutes * 60_000).toISOString(),
          by: 'person',
          kind: 'damage',
          severity: 'grounding',
          withinLimits: false,
        },
      ],
    });

  test('of 10, 20, 30, 40 and 300 minutes the median is 30 and the 90th percentile 300; one waits', () => {
    const figure = timeToAnswerFigure(
      fleet(
        ...[300, 10, 40, 20, 30].map((minutes, index) => answered(at('03T10:00'), minutes, `W-${index}`)),
        writeUpHistory(at('04T18:00'), null, { id: 'waits', number: 'W-9' }),
      ),
      windowOf,
      NOW,
    );
    // Rank ceil(0.5 × 5) = 3, ceil(0.9 × 5) = 5.
    expect(figure.spread).toEqual({ count: 5, median: 30, ninetieth: 300, least: 10, most: 300 });
    expect(figure.counts).toEqual({ opened: 6, waiting: 1, otherwise: 0 });
    expect(figure.rows.map(({ minutes }) => minutes)).toEqual([10, 20, 30, 40, 300, null]);
    // 4 to 20 November at the same hour: 16 days.
    expect(figure.rows.at(-1)).toMatchObject({ by: 'waiting', waitingMinutes: 16 * 1440 });
  });

  test.each([
    { openedAt: at('02T05:59'), opened: 0 },
    { openedAt: at('02T06:00'), opened: 1 },
    { openedAt: at('02T06:01'), opened: 1 },
    { openedAt: at('11T05:59'), opened: 1 },
    { openedAt: at('11T06:00'), opened: 0 },
    { openedAt: at('11T06:01'), opened: 0 },
  ])('opened $openedAt: $opened in the window', ({ openedAt, opened }) => {
    expect(timeToAnswerFigure(fleet(writeUpHistory(openedAt)), windowOf, NOW).counts.opened).toBe(opened);
  });

  test('the first of judgement, within limits, deferral and closing answers; the catalogue does not', () => {
    const open = writeUpHistory(at('03T10:00'));
    expect(firstAnswer(open)).toBeNull();
    const closed = { ...open, closedAt: at('05T10:00'), closedHow: 'serviced' };
    expect(firstAnswer(closed)).toEqual({ at: at('05T10:00'), by: 'serviced' });
    const deferred = { ...closed, deferrals: [deferralHistory(at('04T10:00'))] };
    expect(firstAnswer(deferred)?.by).toBe('deferred');
    const within: Judged = {
      at: at('03T12:00'),
      by: 'person',
      kind: 'damage',
      severity: 'watch',
      withinLimits: true,
    };
    expect(firstAnswer({ ...deferred, judged: [...open.judged, within] })?.by).toBe('within limits');
  });

  test('a cosmetic note asks for no answer until somebody gives one', () => {
    const looks = (severity: Judged['severity']) =>
      writeUpHistory(at('03T10:00'), null, {
        judged: [{ at: at('03T10:00'), by: 'opening', kind: 'cosmetic', severity, withinLimits: false }],
      });
    const counts = (severity: Judged['severity']) =>
      timeToAnswerFigure(fleet(looks(severity)), windowOf, NOW).counts;
    expect(counts('note')).toEqual({ opened: 1, waiting: 0, otherwise: 1 });
    expect(counts(null)).toEqual({ opened: 1, waiting: 1, otherwise: 0 });
  });
});

test('time to repair: repaired ones alone, followed past the window; others and open ones apart', () => {
  const figure = timeToRepairFigure(
    fleet(
      writeUpHistory(at('03T10:00'), at('03T11:30')),
      // Opened in the window, repaired after it: 7 days.
      writeUpHistory(at('10T10:00'), at('17T10:00')),
      writeUpHistory(at('04T10:00'), at('04T11:00'), { closedHow: 'could-not-duplicate' }),
      writeUpHistory(at('05T10:00')),
    ),
    windowOf,
    NOW,
  );
  expect(figure.rows.map(({ minutes }) => minutes)).toEqual([90, 7 * 1440, null]);
  expect(figure.counts).toEqual({ opened: 4, waiting: 1, otherwise: 1 });
  // Two are too few for a percentile.
  expect(figure.spread).toEqual({ count: 2, median: null, ninetieth: null, least: 90, most: 7 * 1440 });
});

describe('repeat rate', () => {
  test('its definition says the window that is used', () => {
    expect(REPEAT_RATE_DEFINITION).toContain(`within ${REPEAT_DAYS} days or ${REPEAT_FLIGHTS} flights of`);
  });

  const opened = (count: number) =>
    Array.from({ length: count }, (_, index) =>
      writeUpHistory(at(`0${index + 3}T10:00`), null, { id: `w${index}`, number: `W-${index}` }),
    );
  const repeats = new Map([['w0', { earlierNumber: 'W-0000', days: 12, how: 'repaired' }]]);

  test.each([
    { count: 4, percent: null },
    { count: 5, percent: 20 },
    // 1 of 6 is 16.67 %, cut.
    { count: 6, percent: 16 },
  ])('one of $count: $percent', ({ count, percent }) => {
    const figure = repeatRateFigure(fleet(...opened(count)), windowOf, repeats);
    expect(figure).toMatchObject({ percent, counts: { opened: count, repeats: 1 } });
    expect(figure.rows).toMatchObject([{ number: 'W-0', earlierNumber: 'W-0000', days: 12 }]);
    expect(figure.byAircraft).toEqual([{ registration: 'N01', opened: count, repeats: 1 }]);
  });

  test('a repeat outside the window and an aircraft without write-ups are not counted', () => {
    const before = writeUpHistory(at('01T10:00'), null, { id: 'w0' });
    const figure = repeatRateFigure(fleet(before), windowOf, repeats);
    expect(figure).toMatchObject({ rows: [], byAircraft: [], percent: null, counts: { opened: 0 } });
  });
});

describe('deferral age', () => {
  const deferred = (begunAt: string, endedAt: string | null, number: string) =>
    writeUpHistory(begunAt, endedAt, { number, deferrals: [deferralHistory(begunAt, { endedAt })] });

  test.each([
    // Midnight at the base is 06:00 in UTC; now is noon of the 20th there.
    { begunAt: at('19T05:59'), days: 2 },
    { begunAt: at('19T06:00'), days: 1 },
    { begunAt: at('20T06:00'), days: 0 },
  ])('begun $begunAt: $days days on the calendar of the base', ({ begunAt, days }) => {
    const figure = deferralAgeFigure(fleet(deferred(begunAt, null, 'W-1')), windowOf, NOW, new Map());
    expect(figure.rows).toMatchObject([{ days, endsOn: null, daysLeft: null }]);
  });

  test('open ones oldest first with their end, whatever the window; ended ones by how long they lasted', () => {
    const young = deferred(at('18T18:00'), null, 'W-2');
    const old = deferred('2026-09-21T18:00:00Z', null, 'W-1');
    const ends = new Map([[old.deferrals[0]!.id, '2026-11-18']]);
    const gone = deferred('2026-10-30T18:00:00Z', at('04T18:00'), 'W-3');
    const goneAfter = deferred(at('01T18:00'), at('11T06:00'), 'W-4');
    const figure = deferralAgeFigure(fleet(young, old, gone, goneAfter), windowOf, NOW, ends);
    // 21 September to 20 November: 9 + 31 + 20 days.
    expect(figure.rows).toMatchObject([
      { number: 'W-1', days: 60, begunOn: '2026-09-21', endsOn: '2026-11-18', daysLeft: -2 },
      { number: 'W-2', days: 2 },
    ]);
    expect(figure.endedRows).toMatchObject([{ number: 'W-3', days: 5, endedOn: '2026-11-04' }]);
    expect(figure.ended).toMatchObject({ count: 1, median: null, least: 5 });
    expect(figure.counts).toEqual({ open: 2, ended: 1 });
  });
});
