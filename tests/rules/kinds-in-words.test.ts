import { expect, test } from 'vitest';
import { kindsInWords } from '../../lib/rules/kinds-in-words';
import { OPERATION_KINDS } from '../../lib/rules/operations';

// Our own wording; no outside source. Every phrase set must name exactly the kinds given.
test.each([
  { title: 'none', kinds: () => false, words: [] },
  { title: 'all', kinds: () => true, words: ['for any flight'] },
  { title: 'night', kinds: (k) => k.light === 'night', words: ['at night'] },
  { title: 'night for hire', kinds: (k) => k.light === 'night' && k.hire, words: ['at night for hire'] },
  {
    title: 'IFR, and night for hire',
    kinds: (k) => k.rules === 'IFR' || (k.light === 'night' && k.hire),
    words: ['under IFR', 'at night for hire'],
  },
  {
    title: 'one kind',
    kinds: (k) => k.light === 'night' && k.rules === 'IFR' && k.hire,
    words: ['at night under IFR for hire'],
  },
] as { title: string; kinds: (k: (typeof OPERATION_KINDS)[number]) => boolean; words: string[] }[])(
  '$title',
  ({ kinds, words }) => {
    expect(kindsInWords(OPERATION_KINDS.filter(kinds))).toEqual(words);
  },
);
