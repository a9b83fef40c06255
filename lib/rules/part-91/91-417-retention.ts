import type { CalendarDate } from '../facts';
import type { CiteId } from '../law';
import { retentionOf, type RecordKind, type RecordToKeep, type Retention } from './91-417-records';

/**
 * 14 CFR 91.417(b) put to a use: how long the law asks for the records somebody signed, and so for the name in them.
 * 43.9(a)(3) and (4) and 43.11(a)(4) want name or signature, and kind and number of the certificate, in the entry; 91.417
 * says how long the entry is kept. This program deletes no record; it says here whether the law still asks for it.
 */

/** How long each kind of record is asked for, for a table on paper and on screen. Dates come from `retentionOf`. */
export const KEPT_FOR: Readonly<Record<RecordKind, { readonly words: string; readonly cite: CiteId }>> = {
  work: { words: '1 year after the work, and until it is repeated or superseded', cite: '14cfr91.417(b)(1)' },
  inspection: { words: 'until the next one takes its place, and at least 1 year', cite: '14cfr91.417(b)(1)' },
  'altimeter-transponder-test': {
    words: 'left out by 91.417(a); kept here until the next test',
    cite: '14cfr91.417(a)',
  },
  directive: { words: 'always, and handed over with the aircraft', cite: '14cfr91.417(b)(2)' },
  'life-limit': { words: 'always, and handed over with the aircraft', cite: '14cfr91.417(b)(2)' },
  overhaul: { words: 'always, and handed over with the aircraft', cite: '14cfr91.417(b)(2)' },
  major: { words: 'always, and handed over with the aircraft', cite: '14cfr91.417(b)(2)' },
  'total-time': { words: 'always, and handed over with the aircraft', cite: '14cfr91.417(b)(2)' },
  list: {
    words: 'until every item is repaired and the aircraft approved for return to service',
    cite: '14cfr91.417(b)(3)',
  },
  judgement: { words: 'not named by 91.417; kept with the record it belongs to', cite: '14cfr91.417(a)' },
};

/** What the law still asks for of the records somebody signed. */
export interface NamesKept {
  readonly records: number;
  /** Of them still asked for on the day. */
  readonly asked: number;
  /** The longest of the ends; null where there are no records. */
  readonly longest: Retention | null;
}

/** Open ends outlast days; the aircraft outlasts all. */
function rank(keep: Retention['keepThrough']): string {
  switch (keep) {
    case 'with-the-aircraft':
      return '4';
    case 'until-repaired':
      return '3';
    case 'until-the-next':
      return '2';
    case 'not-named':
      return '0';
    default:
      return `1 ${keep}`;
  }
}

/** How long the law asks for these records, seen on this day (at the base). */
export function namesKept(records: readonly RecordToKeep[], on: CalendarDate): NamesKept {
  const ends = records.map((record) => retentionOf(record, on));
  const longest = ends.reduce<Retention | null>(
    (most, one) => (most === null || rank(one.keepThrough) > rank(most.keepThrough) ? one : most),
    null,
  );
  return { records: ends.length, asked: ends.filter(({ asked }) => asked).length, longest };
}
