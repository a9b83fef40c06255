import type { TimesFigure } from '../rules/insight/times';
import { daysInWords, lengthInWords, lostInWords, shareInWords } from './in-words';
import { type Translate } from '../words/translate';
import type { InsightView } from './read-insight';
import { said } from '../words/said';

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
  availability: said('Availability'),
  'days-lost': said('Days lost by system'),
  'time-to-answer': said('From write-up to answer'),
  'time-to-repair': said('From write-up to repair'),
  'repeat-rate': said('Repeats'),
  'deferral-age': said('Age of deferrals'),
};

/** What a figure says in one glance: a number, and the sentence that goes on from it. */
export interface Headline {
  readonly number: string;
  readonly words: string;
  /** How many aircraft and write-ups it stands on, and what is not in it. */
  readonly standsOn: string;
  readonly definition: string;
}

export function headlineOf(t: Translate, view: InsightView, figure: FigureId): Headline {
  switch (figure) {
    case 'availability':
      return ofAvailability(t, view);
    case 'days-lost':
      return ofDaysLost(t, view);
    case 'time-to-answer':
      return ofTimes(t, view.timeToAnswer, ANSWERED);
    case 'time-to-repair':
      return ofTimes(t, view.timeToRepair, REPAIRED);
    case 'repeat-rate':
      return ofRepeats(t, view);
    case 'deferral-age':
      return ofDeferrals(t, view);
  }
}

/** Sentences that follow one another. */
const together = (...sentences: readonly (string | false)[]): string => sentences.filter(Boolean).join(' ');

function ofAvailability(t: Translate, { availability, about }: InsightView): Headline {
  const { permille, counts, definition, rows } = availability;
  const absent = rows.length - counts.aircraft;
  return {
    number: permille === null ? t('No record') : shareInWords(permille),
    words:
      permille === null
        ? t('of these aircraft in this period.')
        : t('of the time nothing on record grounded {about}.', { about: t(about) }),
    standsOn: together(
      t(
        'Stands on {aircraft, plural, one {# aircraft} other {# aircraft}} and {writeUps, plural, one {# write-up} other {# write-ups}} that grounded.',
        counts,
      ),
      absent > 0 &&
        t('{absent, plural, one {# aircraft} other {# aircraft}} with no record yet.', { absent }),
    ),
    definition,
  };
}

function ofDaysLost(t: Translate, { daysLost }: InsightView): Headline {
  const { rows, stoodTenths, counts, definition } = daysLost;
  const [most] = rows;
  const minutes = rows.reduce((sum, row) => sum + row.minutes, 0);
  return {
    number: t(lostInWords(stoodTenths, minutes)),
    words: most
      ? t('aircraft stood for write-ups, most for {chapter}: {days}.', {
          chapter: chapterInWords(most),
          days: t(lostInWords(most.tenthsOfDays, most.minutes)),
        })
      : t('no aircraft stood for a write-up.'),
    standsOn: t(
      'Stands on {writeUps, plural, one {# write-up} other {# write-ups}} of {aircraft, plural, one {# aircraft} other {# aircraft}}. The chapters sum to {days}.',
      { ...counts, days: t(daysInWords(daysLost.summedTenths)) },
    ),
    definition,
  };
}

/** How the two figures of time are said; each a whole sentence, because languages order words in their own way. */
interface TimeWords {
  readonly few: string;
  readonly spread: string;
  readonly standsOn: string;
  readonly waiting: string;
  readonly otherwise: string;
}

const ANSWERED: TimeWords = {
  few: said('{count} answered'),
  spread: said(
    'to the first answer for the middle one of {count, plural, one {# write-up} other {# write-ups}}; nine in ten within {most}.',
  ),
  standsOn: said('Stands on {count} answered of {opened} opened.'),
  waiting: said('{n} still without an answer, the longest for {longest}'),
  otherwise: said('{n} asked for none'),
};

const REPAIRED: TimeWords = {
  few: said('{count} repaired'),
  spread: said(
    'to the signed repair for the middle one of {count, plural, one {# write-up} other {# write-ups}}; nine in ten within {most}.',
  ),
  standsOn: said('Stands on {count} repaired of {opened} opened.'),
  waiting: said('{n} still open, the longest for {longest}'),
  otherwise: said('{n} closed another way'),
};

function ofTimes(
  t: Translate,
  { spread, counts, rows, definition }: TimesFigure,
  words: TimeWords,
): Headline {
  const { count, median, ninetieth, least, most } = spread;
  const longest = Math.max(0, ...rows.map(({ waitingMinutes }) => waitingMinutes ?? 0));
  const apart = [
    ...(counts.waiting > 0
      ? [t(words.waiting, { n: counts.waiting, longest: t(lengthInWords(longest)) })]
      : []),
    ...(counts.otherwise > 0 ? [t(words.otherwise, { n: counts.otherwise })] : []),
  ];
  const range =
    least !== null &&
    most !== null &&
    (least === most
      ? t('It took {time}.', { time: t(lengthInWords(least)) })
      : t('From {least} to {most}.', { least: t(lengthInWords(least)), most: t(lengthInWords(most)) }));
  return {
    number: median === null ? t(words.few, { count }) : t(lengthInWords(median)),
    words:
      median === null || ninetieth === null
        ? together(t('in this period: too few for a median.'), range)
        : t(words.spread, { count, most: t(lengthInWords(ninetieth)) }),
    standsOn: together(
      t(words.standsOn, { count, opened: counts.opened }),
      apart.length > 0 && t('Apart: {apart}.', { apart: apart.join('; ') }),
    ),
    definition,
  };
}

function ofRepeats(t: Translate, { repeatRate }: InsightView): Headline {
  const { percent, counts, definition } = repeatRate;
  const share = t('{repeats} of {opened}', { repeats: counts.repeats, opened: counts.opened });
  return {
    number: percent === null ? share : `${percent} %`,
    words:
      percent === null
        ? t('write-ups came back: too few for a percentage.')
        : t('of the write-ups came back: {share}.', { share }),
    standsOn: t('Stands on {opened, plural, one {# write-up} other {# write-ups}} opened.', {
      opened: counts.opened,
    }),
    definition,
  };
}

function ofDeferrals(t: Translate, { deferralAge }: InsightView): Headline {
  const { rows, ended, counts, definition } = deferralAge;
  const [oldest] = rows;
  const over = rows.filter(({ daysLeft }) => daysLeft !== null && daysLeft < 0).length;
  const lasted =
    ended.median !== null
      ? t(
          'Of {count} that ended in the period the middle one lasted {days, plural, one {# day} other {# days}}.',
          { count: ended.count, days: ended.median },
        )
      : ended.least === null || ended.most === null
        ? t('None ended in the period.')
        : t(
            '{count} ended in the period, too few for a median: {least} to {most, plural, one {# day} other {# days}}.',
            { count: ended.count, least: ended.least, most: ended.most },
          );
  return {
    number: t('{open} open', { open: counts.open }),
    words: together(
      oldest
        ? t('the oldest for {days, plural, one {# day} other {# days}}.', { days: oldest.days })
        : t('no deferral now.'),
      over > 0 && t('{over} past the last day.', { over }),
    ),
    standsOn: together(
      t('Stands on {open, plural, one {# open deferral} other {# open deferrals}}.', { open: counts.open }),
      lasted,
    ),
    definition,
  };
}

/** "33 Lights"; "No system code" alone. */
export const chapterInWords = ({ chapter, title }: { chapter: string | null; title: string }): string =>
  chapter === null ? title : `${chapter} ${title}`;
