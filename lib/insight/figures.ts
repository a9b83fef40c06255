import type { TimesFigure } from '../rules/insight/times';
import { counted } from '../rules/counted';
import { daysInWords, lengthInWords, lostInWords, shareInWords } from './in-words';
import type { InsightView } from './read-insight';

/** The figures, in the order in which they are shown; also their addresses for download. */
export const FIGURES = [
  'availability',
  'days-lost',
  'time-to-answer',
  'time-to-repair',
  'repeat-rate',
  'deferral-age',
] as const;
export type FigureId = (typeof FIGURES)[number];

export const isFigure = (text: string): text is FigureId => (FIGURES as readonly string[]).includes(text);

export const FIGURE_TITLES: Readonly<Record<FigureId, string>> = {
  availability: 'Availability',
  'days-lost': 'Days lost by system',
  'time-to-answer': 'From write-up to answer',
  'time-to-repair': 'From write-up to repair',
  'repeat-rate': 'Repeats',
  'deferral-age': 'Age of deferrals',
};

/** What a figure says in one glance: a number, and the sentence that goes on from it. */
export interface Headline {
  readonly number: string;
  readonly words: string;
  /** How many aircraft and write-ups it stands on, and what is not in it. */
  readonly standsOn: string;
  readonly definition: string;
}

export function headlineOf(view: InsightView, figure: FigureId): Headline {
  switch (figure) {
    case 'availability':
      return ofAvailability(view);
    case 'days-lost':
      return ofDaysLost(view);
    case 'time-to-answer':
      return ofTimes(
        view.timeToAnswer,
        'answered',
        'to the first answer',
        'without an answer',
        'asked for none',
      );
    case 'time-to-repair':
      return ofTimes(view.timeToRepair, 'repaired', 'to the signed repair', 'open', 'closed another way');
    case 'repeat-rate':
      return ofRepeats(view);
    case 'deferral-age':
      return ofDeferrals(view);
  }
}

function ofAvailability({ availability, about }: InsightView): Headline {
  const { permille, counts, definition, rows } = availability;
  const absent = rows.length - counts.aircraft;
  return {
    number: permille === null ? 'No record' : shareInWords(permille),
    words:
      permille === null
        ? 'of these aircraft in this period.'
        : `of the time nothing on record grounded ${about}.`,
    standsOn:
      `Stands on ${aircraft(counts.aircraft)} and ${counted(counts.writeUps, 'write-up')} that grounded.` +
      (absent > 0 ? ` ${aircraft(absent)} with no record yet.` : ''),
    definition,
  };
}

function ofDaysLost({ daysLost }: InsightView): Headline {
  const { rows, stoodTenths, counts, definition } = daysLost;
  const [most] = rows;
  const minutes = rows.reduce((sum, row) => sum + row.minutes, 0);
  return {
    number: lostInWords(stoodTenths, minutes),
    words: most
      ? `aircraft stood for write-ups, most for ${chapterInWords(most)}: ${lostInWords(most.tenthsOfDays, most.minutes)}.`
      : 'no aircraft stood for a write-up.',
    standsOn: `Stands on ${counted(counts.writeUps, 'write-up')} of ${aircraft(counts.aircraft)}. The chapters sum to ${daysInWords(daysLost.summedTenths)}.`,
    definition,
  };
}

function ofTimes(
  { spread, counts, rows, definition }: TimesFigure,
  done: string,
  to: string,
  open: string,
  otherwise: string,
): Headline {
  const { count, median, ninetieth, least, most } = spread;
  const longest = Math.max(0, ...rows.map(({ waitingMinutes }) => waitingMinutes ?? 0));
  const apart = [
    ...(counts.waiting > 0
      ? [`${counts.waiting} still ${open}, the longest for ${lengthInWords(longest)}`]
      : []),
    ...(counts.otherwise > 0 ? [`${counts.otherwise} ${otherwise}`] : []),
  ];
  const range =
    least === null || most === null
      ? ''
      : least === most
        ? ` It took ${lengthInWords(least)}.`
        : ` From ${lengthInWords(least)} to ${lengthInWords(most)}.`;
  return {
    number: median === null ? `${count} ${done}` : lengthInWords(median),
    words:
      median === null || ninetieth === null
        ? `in this period: too few for a median.${range}`
        : `${to} for the middle one of ${counted(count, 'write-up')}; nine in ten within ${lengthInWords(ninetieth)}.`,
    standsOn: `Stands on ${count} ${done} of ${counts.opened} opened.${apart.length > 0 ? ` Apart: ${apart.join('; ')}.` : ''}`,
    definition,
  };
}

function ofRepeats({ repeatRate }: InsightView): Headline {
  const { percent, counts, definition } = repeatRate;
  const share = `${counts.repeats} of ${counts.opened}`;
  return {
    number: percent === null ? share : `${percent} %`,
    words:
      percent === null
        ? 'write-ups came back: too few for a percentage.'
        : `of the write-ups came back: ${share}.`,
    standsOn: `Stands on ${counted(counts.opened, 'write-up')} opened.`,
    definition,
  };
}

function ofDeferrals({ deferralAge }: InsightView): Headline {
  const { rows, ended, counts, definition } = deferralAge;
  const [oldest] = rows;
  const over = rows.filter(({ daysLeft }) => daysLeft !== null && daysLeft < 0).length;
  const lasted =
    ended.median !== null
      ? ` Of ${ended.count} that ended in the period the middle one lasted ${counted(ended.median, 'day')}.`
      : ended.least === null || ended.most === null
        ? ' None ended in the period.'
        : ` ${ended.count} ended in the period, too few for a median: ${ended.least} to ${counted(ended.most, 'day')}.`;
  return {
    number: `${counts.open} open`,
    words:
      (oldest ? `the oldest for ${counted(oldest.days, 'day')}.` : 'no deferral now.') +
      (over > 0 ? ` ${over} past the last day.` : ''),
    standsOn: `Stands on ${counted(counts.open, 'open deferral')}.${lasted}`,
    definition,
  };
}

const aircraft = (count: number): string => counted(count, 'aircraft', 'aircraft');

/** "33 Lights"; "No system code" alone. */
export const chapterInWords = ({ chapter, title }: { chapter: string | null; title: string }): string =>
  chapter === null ? title : `${chapter} ${title}`;
