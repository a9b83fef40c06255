import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerForUse } from '@/lib/rules/answer';
import type { UseOfAircraft } from '@/lib/rules/operations';
import type { Answer, Outcome } from '@/lib/rules/verdict';
import { randomCase } from '../fixtures/arbitrary-case';
import { readSlowly, type Reading } from '../reference/evaluate';

/**
 * The rules against a second reading of the same paragraphs (tests/reference), written from their text: the same outcome and
 * the same barring paragraphs for every aircraft and use. Source: ../shared/regulations.md and the paragraphs each docstring of
 * lib/rules quotes. 2,000 cases here; WHEELCHOCK_CASES=100000 asks for more, WHEELCHOCK_SEED for others.
 */

const CASES = Number(process.env.WHEELCHOCK_CASES ?? 2_000);
const SEED = Number(process.env.WHEELCHOCK_SEED ?? 20_261_127);
/** Of each outcome at least so many of a hundred, or the comparison is about too little. */
const LEAST_SHARE = 5;

const barsOf = ({ lines }: Answer, ofHouse: boolean): string[] => [
  ...new Set(
    lines
      .filter(({ effect, house }) => effect === 'bars' && (house !== undefined) === ofHouse)
      .map(({ cite }) => cite.replace('14cfr', '')),
  ),
];

/**
 * Both sides as they are held against each other. What bars is the same set, with two exceptions that are about saying a thing once and
 * not about barring: what would be asked of an item that nobody confirmed, and, under a permit, a demand on equipment that a write-up
 * has said already. There the rules may say less than the slow reading, never more; the outcome is the same everywhere.
 */
function compared(answer: Answer, slow: Reading, use: UseOfAircraft) {
  const bars = barsOf(answer, false).toSorted();
  const saidOnce = bars.includes('house-caution') || use.specialFlightPermit !== null;
  const said = saidOnce ? slow.bars.filter((cite) => bars.includes(cite)) : slow.bars;
  // A rule of the house that looks at limits has nothing to look at in a flight that is barred.
  const house = (barring: boolean) => bars.length === 0 && barring;
  return {
    rules: { outcome: answer.outcome, bars, houseBars: house(barsOf(answer, true).length > 0) },
    slow: { outcome: slow.outcome, bars: said, houseBars: house(slow.houseBars) },
  };
}

/** Paragraphs that have to bar somewhere among the cases, or the generator no longer reaches them. */
const REACHED = [
  ...[
    '(1)',
    '(2)',
    '(3)',
    '(4)',
    '(5)',
    '(6)',
    '(7)',
    '(8)',
    '(9)',
    '(10)',
    '(11)',
    '(12)',
    '(13)',
    '(14)',
  ].map((item) => `91.205(b)${item}`),
  ...['(2)', '(3)', '(4)', '(5)', '(6)'].map((item) => `91.205(c)${item}`),
  ...['(2)', '(3)', '(4)', '(5)', '(6)', '(7)', '(8)', '(9)'].map((item) => `91.205(d)${item}`),
  ...[
    '91.7(a)',
    '91.9(b)',
    '91.203(a)(1)',
    '91.203(a)(2)',
    '47.40(a)',
    '91.205(a)',
    '91.209(a)(1)',
    '91.209(b)',
  ],
  ...[
    '91.207(a)(2)',
    '91.207(c)(1)',
    '91.207(c)(2)',
    '91.207(d)',
    '91.215(b)',
    '91.225',
    '91.171(a)(2)',
    '39.7',
  ],
  ...['91.213(a)', '91.213(a)(1)', '91.213(a)(2)', '91.213(a)(3)(ii)', '91.213(a)(5)', '91.213(b)(2)'],
  ...['91.213(d)(1)', '91.213(d)(2)(i)', '91.213(d)(2)(ii)', '91.213(d)(2)(iv)', '91.213(d)(3)(i)'],
  ...[
    '91.213(d)(3)(ii)',
    '91.213(d)(4)',
    'mmel-category-a',
    '91.403(a)',
    '91.403(c)',
    '91.405(a)',
    '91.405(c)',
  ],
  ...['91.407(a)(1)', '91.407(a)(2)', '91.407(b)', '91.409(a)', '91.409(b)', '91.411(a)(1)', '91.411(a)(2)'],
  ...[
    '91.411(a)(3)',
    '91.411(d)',
    '91.413(a)',
    '91.417(a)(2)(i)',
    '21.197(a)',
    '21.199',
    '21.199(a)',
    '21.199(b)',
  ],
  ...['43.9(a)', 'house-caution'],
];

describe('the rules and the slow reading', () => {
  it(
    `say the same of ${CASES.toLocaleString('en')} random cases, and all three answers come up`,
    { timeout: Math.max(120_000, CASES * 60) },
    () => {
      const seen: Record<Outcome, number> = { go: 0, 'go-with-limits': 0, 'no-go': 0 };
      const reached = new Set<string>();
      fc.assert(
        fc.property(randomCase, ({ aircraft, use }) => {
          const answer = answerForUse(aircraft, use);
          const { rules, slow } = compared(answer, readSlowly(aircraft, use), use);
          expect(rules).toEqual(slow);
          seen[answer.outcome] += 1;
          for (const cite of rules.bars) reached.add(cite);
        }),
        { numRuns: CASES, seed: SEED },
      );
      const shares = Object.entries(seen).map(
        ([outcome, count]) => [outcome, (100 * count) / CASES] as const,
      );
      console.info(shares.map(([outcome, share]) => `${outcome} ${share.toFixed(1)} %`).join(', '));
      for (const [outcome, share] of shares) expect(share, outcome).toBeGreaterThanOrEqual(LEAST_SHARE);
      // Fewer than these do not reach them all (the mutation run, which wants to be quick).
      if (CASES >= 2_000) expect(REACHED.filter((cite) => !reached.has(cite))).toEqual([]);
    },
  );
});
