/** The order in which rows of the figures stand, and what of several things counts. The definitions are ours, no source. */
import { describe, expect, test } from 'vitest';
import { daysLostFigure, chapterOf } from '@/lib/rules/insight/days-lost';
import { deferralAgeFigure } from '@/lib/rules/insight/deferral-age';
import type { AircraftHistory, WriteUpHistory } from '@/lib/rules/insight/history';
import { spreadOf } from '@/lib/rules/insight/quantile';
import { repeatRateFigure } from '@/lib/rules/insight/repeat-rate';
import { firstAnswer, timeToAnswerFigure } from '@/lib/rules/insight/times';
import { jascChapter } from '@/lib/rules/jasc';
import { citeInWords, DOUBTS } from '@/lib/rules/law/in-words';
import { aircraftHistory, deferralHistory, writeUpHistory } from '../fixtures/histories';

const at = (time: string): string => `2026-11-${time}:00Z`;
const NOW = at('20T18:00');
const windowOf = () => ({ from: at('02T06:00'), until: at('11T06:00') });
const fleet = (...writeUps: readonly WriteUpHistory[]): AircraftHistory[] => [aircraftHistory({ writeUps })];
const grounding = (from: string, until: string, jasc: string, number: string) =>
  writeUpHistory(from, until, {
    id: number,
    number,
    jasc,
    judged: [{ at: from, by: 'opening', kind: 'damage', severity: 'grounding', withinLimits: false }],
  });

test('days lost: most first; of the same the lower chapter, and those without a code last', () => {
  const day = (number: string, jasc: string) => grounding(at('03T06:00'), at('04T06:00'), jasc, number);
  for (const writeUps of [
    [day('1', ''), day('2', '3340'), day('3', '2434')],
    [day('3', '2434'), day('1', ''), day('2', '3340')],
    [day('2', '3340'), day('3', '2434'), day('1', '')],
  ]) {
    const longest = grounding(at('03T06:00'), at('05T06:00'), '6100', '4');
    expect(daysLostFigure(fleet(...writeUps, longest), windowOf).rows.map(({ chapter }) => chapter)).toEqual([
      '61',
      '24',
      '33',
      null,
    ]);
  }
});

test.each([
  ['3340', '33'],
  ['334', null],
  ['33401', null],
  ['x3340', null],
  ['', null],
])('the chapter of "%s" is %s', (jasc, chapter) => {
  expect(chapterOf(jasc)).toBe(chapter);
});

test('deferrals that are equally old stand by their number', () => {
  const open = (number: string, begunAt: string) =>
    writeUpHistory(begunAt, null, { number, deferrals: [deferralHistory(begunAt, { id: number })] });
  const [one, two, old] = [
    open('W-1', at('18T18:00')),
    open('W-2', at('18T18:00')),
    open('W-3', at('01T18:00')),
  ];
  for (const order of [
    [one, two, old],
    [two, one, old],
    [old, two, one],
  ] as const) {
    const { rows } = deferralAgeFigure(fleet(...order), windowOf, NOW, new Map());
    expect(rows.map(({ number }) => number)).toEqual(['W-3', 'W-1', 'W-2']);
  }
});

// The window runs from 2 November 06:00 on, up to and without 11 November 06:00.
test.each([
  [at('02T05:59'), 0],
  [at('02T06:00'), 1],
  [at('02T06:01'), 1],
  [at('11T05:59'), 1],
  [at('11T06:00'), 0],
  [at('11T06:01'), 0],
])('a deferral that ended %s: counted %i times', (endedAt, ended) => {
  const writeUp = writeUpHistory(at('01T18:00'), endedAt, {
    deferrals: [deferralHistory(at('01T18:00'), { endedAt })],
  });
  expect(deferralAgeFigure(fleet(writeUp), windowOf, NOW, new Map()).counts.ended).toBe(ended);
  const always = () => ({ from: at('01T00:00'), until: null });
  expect(deferralAgeFigure(fleet(writeUp), always, NOW, new Map()).counts.ended).toBe(1);
});

test('what waits stands last, the longest waiting first, and of those by number', () => {
  const waits = (number: string, openedAt: string) => writeUpHistory(openedAt, null, { id: number, number });
  const rows = [waits('W-4', at('05T10:00')), waits('W-3', at('04T10:00')), waits('W-2', at('05T10:00'))];
  const answered = writeUpHistory(at('06T10:00'), at('06T11:00'), { number: 'W-9' });
  for (const order of [rows, rows.toReversed(), [rows[1]!, rows[0]!, rows[2]!]]) {
    const figure = timeToAnswerFigure(fleet(...order, answered), windowOf, NOW);
    expect(figure.rows.map(({ number }) => number)).toEqual(['W-9', 'W-3', 'W-2', 'W-4']);
    expect(figure.rows[0]).toMatchObject({ by: 'repaired', minutes: 60, waitingMinutes: null });
  }
});

test('a window without an end holds all that was opened since', () => {
  const open = () => ({ from: at('02T06:00'), until: null });
  expect(timeToAnswerFigure(fleet(writeUpHistory(at('19T06:00'))), open, NOW).counts.opened).toBe(1);
});

test('the earliest of several answers counts, in whatever order they are kept', () => {
  const person = (time: string) =>
    ({ at: at(time), by: 'person', kind: 'damage', severity: 'watch', withinLimits: false }) as const;
  const writeUp = writeUpHistory(at('03T10:00'), at('09T10:00'), {
    judged: [person('08T10:00'), person('06T10:00'), person('07T10:00')],
  });
  expect(firstAnswer(writeUp)).toEqual({ at: at('06T10:00'), by: 'judged' });
  expect(timeToAnswerFigure(fleet({ ...writeUp, judged: [], closedAt: null }), windowOf, NOW).counts).toEqual(
    {
      opened: 1,
      waiting: 1,
      otherwise: 0,
    },
  );
});

test('a note that is not cosmetic waits for an answer', () => {
  const note = writeUpHistory(at('03T10:00'), null, {
    judged: [{ at: at('03T10:00'), by: 'opening', kind: 'wear', severity: 'note', withinLimits: false }],
  });
  expect(timeToAnswerFigure(fleet(note), windowOf, NOW).counts).toMatchObject({ waiting: 1, otherwise: 0 });
});

test('repeats stand by aircraft and number, and each aircraft counts its own', () => {
  const writeUp = (id: string, number: string) => writeUpHistory(at('03T10:00'), null, { id, number });
  const aircraft = (registration: string, ...writeUps: WriteUpHistory[]) =>
    aircraftHistory({ id: registration, registration, writeUps });
  const planes = [
    aircraft('N03', writeUp('c', 'W-5')),
    aircraft('N01', writeUp('b', 'W-4'), writeUp('a', 'W-2'), writeUp('d', 'W-3')),
    aircraft('N02', writeUp('e', 'W-1')),
  ];
  const repeated = { earlierNumber: 'W-0', days: 1, how: 'repaired' };
  const repeats = new Map(['a', 'b', 'c', 'd'].map((id) => [id, repeated]));
  for (const order of [planes, planes.toReversed(), [planes[1]!, planes[0]!, planes[2]!]]) {
    const figure = repeatRateFigure(order, windowOf, repeats);
    expect(figure.rows.map(({ registration, number }) => `${registration} ${number}`)).toEqual([
      'N01 W-2',
      'N01 W-3',
      'N01 W-4',
      'N03 W-5',
    ]);
    expect(figure.byAircraft).toEqual([
      { registration: 'N01', opened: 3, repeats: 3 },
      { registration: 'N02', opened: 1, repeats: 0 },
      { registration: 'N03', opened: 1, repeats: 1 },
    ]);
  }
});

test('no values have neither a least nor a most', () => {
  expect(spreadOf([])).toEqual({ count: 0, median: null, ninetieth: null, least: null, most: null });
});

describe('paragraphs and chapters in words', () => {
  test.each([
    ['14cfr91.213(d)(3)(ii)', '14 CFR 91.213(d)(3)(ii)'],
    ['14cfr43appA(c)', '14 CFR part 43 appendix A(c)'],
    ['14cfr43appD', '14 CFR part 43 appendix D'],
    ['14cfr5appE(a)', '14 CFR part 5 appendix E(a)'],
    ['house-rule', 'house-rule'],
    ['see 14cfr43appA', 'see 14cfr43appA'],
  ])('%s is said "%s"', (cite, words) => {
    expect(citeInWords(cite)).toBe(words);
  });

  test('what was not read word by word is said to be doubtful, what was is not', () => {
    expect(DOUBTS.memory).toMatch(/memory/);
    expect(Object.keys(DOUBTS).length).toBeGreaterThan(1);
  });

  // The FAA's code table: chapter 33 is Lights.
  test.each([
    ['3340', { code: '33', title: 'Lights' }],
    ['9999', null],
    ['', null],
  ])('the chapter of code "%s"', (code, chapter) => {
    expect(jascChapter(code)).toEqual(chapter);
  });
});
