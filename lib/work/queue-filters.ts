/** Filters of the queue, by what stands in a row. Pure: browser and tests share it. The limits are our own choice (issue 4 names the filters). */
import type { BenchRow } from './read-bench';
import { said } from '../words/said';

/** Empty text: not filtered by it. */
export interface QueueFilter {
  readonly base: string;
  readonly aircraft: string;
  /** Chapter of the JASC table, two digits. */
  readonly chapter: string;
  readonly age: string;
  readonly due: string;
}

export const NO_FILTER: QueueFilter = { base: '', aircraft: '', chapter: '', age: '', due: '' };

export interface FilterChoice {
  readonly value: string;
  readonly label: string;
}

type Filtered = Pick<BenchRow, 'baseIdent' | 'registration' | 'chapter' | 'ageDays' | 'deferralEnds'>;

const AGES: Readonly<Record<string, (days: number) => boolean>> = {
  today: (days) => days <= 0,
  'over-7': (days) => days > 7,
  'over-30': (days) => days > 30,
};

const DUES: Readonly<Record<string, (inDays: number | null) => boolean>> = {
  'in-7': (days) => days !== null && days >= 0 && days <= 7,
  'in-30': (days) => days !== null && days >= 0 && days <= 30,
  passed: (days) => days !== null && days < 0,
  none: (days) => days === null,
};

export const AGE_CHOICES: readonly FilterChoice[] = [
  { value: 'today', label: said('Today') },
  { value: 'over-7', label: said('Over 7 days') },
  { value: 'over-30', label: said('Over 30 days') },
];

export const DUE_CHOICES: readonly FilterChoice[] = [
  { value: 'in-7', label: said('In 7 days') },
  { value: 'in-30', label: said('In 30 days') },
  { value: 'passed', label: said('Passed') },
  { value: 'none', label: said('No date') },
];

/** Whether a row is shown under a filter. */
export const isShown = (row: Filtered, filter: QueueFilter): boolean =>
  (filter.base === '' || row.baseIdent === filter.base) &&
  (filter.aircraft === '' || row.registration === filter.aircraft) &&
  (filter.chapter === '' || row.chapter?.code === filter.chapter) &&
  (AGES[filter.age]?.(row.ageDays) ?? true) &&
  (DUES[filter.due]?.(row.deferralEnds?.inDays ?? null) ?? true);

/** What can be chosen, from the rows there are. */
export function filterChoices(rows: readonly Filtered[]): Record<keyof QueueFilter, readonly FilterChoice[]> {
  return {
    base: distinct(rows.map(({ baseIdent }) => ({ value: baseIdent, label: baseIdent }))),
    aircraft: distinct(rows.map(({ registration }) => ({ value: registration, label: registration }))),
    chapter: distinct(
      rows.flatMap(({ chapter }) =>
        chapter ? [{ value: chapter.code, label: `${chapter.code} ${chapter.title}` }] : [],
      ),
    ),
    age: AGE_CHOICES,
    due: DUE_CHOICES,
  };
}

/** A filter read from an address. A value that fits nothing any more is none. */
export function filterFrom(
  read: (name: keyof QueueFilter) => string | null,
  rows: readonly Filtered[],
): QueueFilter {
  const choices = filterChoices(rows);
  const known = (name: keyof QueueFilter): string => {
    const asked = read(name);
    return asked !== null && choices[name].some(({ value }) => value === asked) ? asked : '';
  };
  return {
    base: known('base'),
    aircraft: known('aircraft'),
    chapter: known('chapter'),
    age: known('age'),
    due: known('due'),
  };
}

const distinct = (choices: readonly FilterChoice[]): readonly FilterChoice[] =>
  [...new Map(choices.map((choice) => [choice.value, choice])).values()].sort((a, b) =>
    a.value < b.value ? -1 : 1,
  );
