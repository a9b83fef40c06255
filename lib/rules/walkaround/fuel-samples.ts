import type { Line } from '../verdict';
import type { Sample, SampleResult } from './answers';
import { said } from '../said';

/**
 * How the samples of one drain are judged. Sampling until clean is in the FAA's leaflet P-8740-35, where water and dirt come
 * from in AC 20-43C. That a drain gets a first sample and three repeats, and then is maintenance's, is our own design: no
 * document gives a number.
 */

/** Samples of a drain after the first one. */
export const SAMPLE_REPEATS = 3;

export interface SamplesVerdict {
  readonly answer: 'good' | 'finding' | 'not-looked-at';
  /** Key of the catalogue's finding that has to be raised, or null. */
  readonly findingKey: 'water-keeps-coming' | 'fuel-dirt' | 'fuel-wrong' | null;
  /** How often this drain can still be sampled before it is maintenance's. */
  readonly repeatsLeft: number;
  /** Why; null when no sample was taken. */
  readonly line: Line | null;
}

export const SAMPLE_WORDS: Readonly<Record<SampleResult, string>> = {
  clean: said('clean'),
  water: said('water'),
  sediment: said('rust or dirt'),
  'wrong-fuel': said('wrong fuel'),
};

const CALL_MAINTENANCE =
  'No flight. Maintenance has to drain and purge the tank and find where it comes from.';

/**
 * Judges the samples of one drain in the order taken. Wrong fuel is raised at once. Else the drain is good when the last
 * sample is clean and no sample from the third repeat on was not: one that is clean only then has been drained until it
 * happened to be. No sample is not looked at.
 */
export function judgeSamples(drain: string, samples: readonly Sample[]): SamplesVerdict {
  const last = samples.at(-1);
  if (!last)
    return { answer: 'not-looked-at', findingKey: null, repeatsLeft: SAMPLE_REPEATS + 1, line: null };
  const taken = `Drain ${drain}: ${samples.map(({ result }) => SAMPLE_WORDS[result]).join(', then ')}.`;
  if (samples.some(({ result }) => result === 'wrong-fuel')) {
    return raised('fuel-wrong', 0, `${taken} Do not start. ${CALL_MAINTENANCE}`);
  }
  const tooLate = samples.slice(SAMPLE_REPEATS).findLast(({ result }) => result !== 'clean');
  if (tooLate) return raised(keyOf(tooLate.result), 0, `${taken} ${saidAfterRepeats(tooLate.result)}`);
  const repeatsLeft = Math.max(0, SAMPLE_REPEATS + 1 - samples.length);
  if (last.result !== 'clean') {
    const stopped = 'The last sample was not clean. Left like this, no flight: maintenance has to look.';
    return raised(keyOf(last.result), repeatsLeft, `${taken} ${stopped}`);
  }
  const cleared = samples.some(({ result }) => result !== 'clean');
  const line: Line = cleared
    ? { effect: 'notes', cite: 'p-8740-35', because: `${taken} Sampled until clean; the next pilot is told.` }
    : { effect: 'supports', cite: 'p-8740-35', because: taken };
  return { answer: 'good', findingKey: null, repeatsLeft, line };
}

const keyOf = (result: SampleResult): 'water-keeps-coming' | 'fuel-dirt' =>
  result === 'sediment' ? 'fuel-dirt' : 'water-keeps-coming';

const saidAfterRepeats = (result: SampleResult): string =>
  `Still ${SAMPLE_WORDS[result]} after ${SAMPLE_REPEATS} repeats. ${CALL_MAINTENANCE}`;

const raised = (
  findingKey: NonNullable<SamplesVerdict['findingKey']>,
  repeatsLeft: number,
  because: string,
): SamplesVerdict => ({
  answer: 'finding',
  findingKey,
  repeatsLeft,
  line: { effect: 'bars', cite: 'ac20-43c', because },
});
