import type { OwedTest } from '../rules/aircraft';
import { said } from '../words/said';

/** What each test settles, by its kind and what it is made on. The reading of facts (lib/fleet/facts.ts) says the same. */
export const TESTS_BY: Readonly<Record<string, Readonly<Record<string, readonly OwedTest[]>>>> = {
  'static-test': { instrument: ['static-leak'] },
  'altimeter-transponder-test': {
    instrument: ['static-leak', 'altimeter-error'],
    avionics: ['transponder-error'],
  },
};

/** How a test is begun that settles an owed one. */
export const STARTS: Readonly<
  Record<
    OwedTest,
    {
      readonly workKind: 'static-test' | 'altimeter-transponder-test';
      readonly part: 'instrument' | 'avionics';
    }
  >
> = {
  'static-leak': { workKind: 'static-test', part: 'instrument' },
  'altimeter-error': { workKind: 'altimeter-transponder-test', part: 'instrument' },
  'transponder-error': { workKind: 'altimeter-transponder-test', part: 'avionics' },
};

const WORDS: Readonly<Record<OwedTest, string>> = {
  'static-leak': said('Static system test, 91.411(a)(2)'),
  'altimeter-error': said('Altimeter and altitude reporting test, 91.411(a)(3)'),
  'transponder-error': said('Transponder test, 91.413(b)'),
};

/** An owed test in words, with its paragraph. */
export const testInWords = (test: OwedTest): string => WORDS[test];

const TITLES: Readonly<Record<OwedTest, string>> = {
  'static-leak': said('Static system test after work'),
  'altimeter-error': said('Altimeter and altitude reporting test after work'),
  'transponder-error': said('Transponder test after work'),
};

/** The title under which the test is begun. */
export const testTitle = (test: OwedTest): string => TITLES[test];
