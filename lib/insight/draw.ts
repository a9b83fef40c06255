import { inEnglish } from '../words/translate';
import { scaleLinear } from 'd3-scale';
import { MINUTES_A_DAY } from '../rules/insight/days-lost';
import type { TimesFigure } from '../rules/insight/times';
import { chapterInWords, FIGURE_TITLES, headlineOf, type FigureId } from './figures';
import { counted } from '../rules/counted';
import { lostInWords, shareInWords } from './in-words';
import type { Mark, Picture } from './picture';
import type { InsightView } from './read-insight';

/** A phone's width, so that words are read there without being drawn small. */
const WIDTH = 336;
const ROW = 40;
/** More rows than this make a chart nobody reads; the table has them all. */
const MOST_ROWS = 24;
/** About the width of a letter, a little too wide rather than too narrow. */
const LETTER = 7.2;

interface Bar {
  readonly label: string;
  readonly value: number;
  readonly words: string;
  readonly look: 'bar' | 'warn';
}

/** The chart of one figure; null where there is nothing to draw. Every value is written beside its mark. */
export function pictureOf(view: InsightView, figure: FigureId): Picture | null {
  switch (figure) {
    case 'availability':
      return bars(
        view,
        figure,
        view.availability.rows.map(({ registration, permille }) => ({
          label: registration,
          value: permille ?? 0,
          words: shareInWords(permille),
          look: 'bar',
        })),
        { most: 1000, ticks: [0, 250, 500, 750, 1000], say: (value) => `${value / 10} %` },
      );
    case 'days-lost':
      return bars(
        view,
        figure,
        view.daysLost.rows.map((row) => ({
          label: chapterInWords(row),
          value: row.minutes,
          words: lostInWords(row.tenthsOfDays, row.minutes),
          look: 'bar',
        })),
        null,
      );
    case 'time-to-answer':
      return dots(view, figure, view.timeToAnswer);
    case 'time-to-repair':
      return dots(view, figure, view.timeToRepair);
    case 'repeat-rate':
      return bars(
        view,
        figure,
        view.repeatRate.byAircraft.map(({ registration, opened, repeats }) => ({
          label: registration,
          value: repeats,
          words: `${repeats} of ${opened}`,
          look: 'bar',
        })),
        null,
      );
    case 'deferral-age':
      return bars(
        view,
        figure,
        view.deferralAge.rows.map(({ registration, number, title, days, daysLeft }) => ({
          label: `${registration} ${number} ${title}`,
          value: days,
          words: `${counted(days, 'day')}${daysLeft !== null && daysLeft < 0 ? ', past its last day' : ''}`,
          look: daysLeft !== null && daysLeft < 0 ? 'warn' : 'bar',
        })),
        null,
      );
  }
}

interface Axis {
  readonly most: number;
  readonly ticks: readonly number[];
  readonly say: (value: number) => string;
}

/** One bar a row, its name and value above it. Without an axis the longest bar is the measure. */
function bars(view: InsightView, figure: FigureId, all: readonly Bar[], axis: Axis | null): Picture | null {
  if (all.length === 0) return null;
  const rows = all.slice(0, MOST_ROWS);
  const most = axis?.most ?? Math.max(1, ...rows.map(({ value }) => value));
  const x = scaleLinear().domain([0, most]).range([0, WIDTH]);
  const bottom = rows.length * ROW;
  const marks = rows.flatMap((row, index): Mark[] => {
    const y = index * ROW;
    return [
      { is: 'text', x: 0, y: y + 14, text: shortened(row.label, row.words), anchor: 'start', look: 'label' },
      { is: 'text', x: WIDTH, y: y + 14, text: row.words, anchor: 'end', look: 'value' },
      // Only where the whole is known: an empty frame would say that there could be more.
      ...(axis ? [{ is: 'rect', x: 0, y: y + 20, width: WIDTH, height: 12, look: 'track' } as const] : []),
      { is: 'rect', x: 0, y: y + 20, width: tidy(x(row.value)), height: 12, look: row.look },
    ];
  });
  const ticks = (axis?.ticks ?? []).flatMap((tick, index, { length }): Mark[] => [
    { is: 'line', x1: x(tick), x2: x(tick), y1: 18, y2: bottom + 2, look: 'grid' },
    {
      is: 'text',
      x: x(tick),
      y: bottom + 16,
      text: axis?.say(tick) ?? '',
      anchor: index === 0 ? 'start' : index === length - 1 ? 'end' : 'middle',
      look: 'axis',
    },
  ]);
  return {
    ...named(
      view,
      figure,
      rows.map(({ label, words }) => `${label}: ${words}`),
      all.length,
    ),
    width: WIDTH,
    height: bottom + (axis ? 24 : 0),
    marks: [...ticks, ...marks],
  };
}

/** Classes of time, each up to and without its end. Our own choice. */
const CLASSES: readonly { readonly label: string; readonly below: number }[] = [
  { label: 'under 1 hour', below: 60 },
  { label: '1 to 6 hours', below: 6 * 60 },
  { label: '6 to 24 hours', below: MINUTES_A_DAY },
  { label: '1 to 3 days', below: 3 * MINUTES_A_DAY },
  { label: '3 to 7 days', below: 7 * MINUTES_A_DAY },
  { label: '7 to 30 days', below: 30 * MINUTES_A_DAY },
  { label: '30 days and more', below: Infinity },
];

/** One dot a write-up, in rows from quick to slow; what waits still is a row of rings. */
function dots(view: InsightView, figure: FigureId, { rows }: TimesFigure): Picture | null {
  if (rows.length === 0) return null;
  const classes = CLASSES.map(({ label, below }, index) => {
    const from = CLASSES[index - 1]?.below ?? 0;
    const here = rows.filter(({ minutes }) => minutes !== null && minutes >= from && minutes < below);
    return { label, count: here.length, look: 'dot' as const };
  });
  const waiting = rows.filter(({ minutes }) => minutes === null).length;
  const lines = [
    ...classes,
    ...(waiting > 0 ? [{ label: 'waiting still', count: waiting, look: 'ring' as const }] : []),
  ];
  const most = Math.max(...lines.map(({ count }) => count));
  const step = Math.min(14, WIDTH / most);
  const r = tidy(Math.min(5, step * 0.42));
  const marks = lines.flatMap(({ label, count, look }, index): Mark[] => {
    const y = index * ROW;
    return [
      { is: 'text', x: 0, y: y + 14, text: label, anchor: 'start', look: 'label' },
      { is: 'text', x: WIDTH, y: y + 14, text: String(count), anchor: 'end', look: 'value' },
      { is: 'line', x1: 0, x2: WIDTH, y1: y + 34, y2: y + 34, look: 'grid' },
      ...Array.from({ length: count }, (_, one): Mark => ({
        is: 'circle',
        x: tidy(step * (one + 0.5)),
        y: y + 26,
        r,
        look,
      })),
    ];
  });
  return {
    ...named(
      view,
      figure,
      lines.map(({ label, count }) => `${label}: ${count}`),
      lines.length,
    ),
    width: WIDTH,
    height: lines.length * ROW,
    marks,
  };
}

function named(view: InsightView, figure: FigureId, said: readonly string[], of: number) {
  const { number, words } = headlineOf(inEnglish, view, figure);
  const more = of > said.length ? ` The first ${said.length} of ${of} are drawn.` : '';
  return { title: FIGURE_TITLES[figure], description: `${number} ${words}${more} ${said.join('; ')}.` };
}

/** The name cut so that the value beside it keeps its room; the table has it whole. */
function shortened(label: string, beside: string): string {
  const letters = Math.floor(WIDTH / LETTER) - beside.length - 2;
  return label.length > letters ? `${label.slice(0, letters - 1)}…` : label;
}

/** Two places are finer than any screen. */
const tidy = (length: number): number => Math.round(length * 100) / 100;
