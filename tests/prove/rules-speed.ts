/**
 * `npm run prove`, the rules core alone: answers a second on one core, and how the time grows with write-ups, house rules and lines of
 * the equipment list; in one run and in turns with json-rules-engine, a general-purpose rules library from npm that is given the same
 * facts and the same rules written its own way (rules-speed/library.ts says for which class of cases). Both must say the same of every
 * case, those of the measurement too: the outcome, and each paragraph with what it does.
 *
 * Bound: three minutes of one core. WHEELCHOCK_CASES asks for more cases to compare.
 */
import { answerForUse } from '@/lib/rules/answer';
import type { RandomCase } from '../fixtures/arbitrary-case';
import { report, type Row } from './row';
import { casesOfClass, crowded, withHouse, withLines } from './rules-speed/cases';
import { libraryAnswer, RULE_COUNT } from './rules-speed/library';
import { exponent, growth, timed, type Sized, type Times } from './rules-speed/measure';

const PART = 'rules core';
const COMMAND = 'node --conditions=react-server --import tsx tests/prove/rules-speed.ts';
const CASES = Number(process.env.WHEELCHOCK_CASES ?? 2_400);
/** Fewer would compare too little. */
const LEAST_CASES = 2_000;
/** Of each outcome, of a hundred compared. */
const LEAST_SHARE = 3;
/** Aircraft of one measurement. */
const FLEET = 4;
const FINDINGS = [0, 1, 2, 5, 10, 20, 50, 100, 200];
const HOUSE = [0, 10, 30, 100, 300];
const LINES = [10, 30, 100, 300];
/** Each write-up compared with each other would show 2. */
const MOST_EXPONENT = 1.2;

async function differences(cases: readonly RandomCase[]) {
  const outcomes = { go: 0, 'go-with-limits': 0, 'no-go': 0 };
  let different = 0;
  let lines = 0;
  for (const { aircraft, use } of cases) {
    const answer = answerForUse(aircraft, use);
    const said = [...new Set(answer.lines.map(({ effect, cite }) => `${effect} ${cite}`))].sort();
    const library = await libraryAnswer(aircraft, use);
    const same = answer.outcome === library.outcome && said.join() === library.said.join();
    if (!same) {
      different += 1;
      if (different <= 5) console.error({ core: answer.outcome, said, library });
    }
    outcomes[answer.outcome] += 1;
    lines += said.length;
  }
  return { different, outcomes, lines };
}

/** Times by size, each size with its own aircraft. */
async function bySize(what: string, sizes: readonly number[], make: (size: number) => readonly RandomCase[]) {
  const times: { readonly size: number; readonly times: Times; readonly cases: readonly RandomCase[] }[] = [];
  for (const size of sizes) {
    const cases = make(size);
    const one = { size, times: await timed(cases), cases };
    times.push(one);
    const { core, library } = one.times;
    console.log(`${what} ${size}: core ${core.toFixed(3)} ms, library ${library.toFixed(3)} ms an answer`);
  }
  const of = (side: keyof Times): Sized[] => times.map(({ size, times: ms }) => ({ size, ms: ms[side] }));
  return { core: of('core'), library: of('library'), cases: times.flatMap(({ cases }) => cases) };
}

const rate = (ms: number): string => Math.round(1_000 / ms).toLocaleString('en');
const at = (points: readonly Sized[], size: number): number =>
  points.find((point) => point.size === size)?.ms ?? Number.NaN;
/** Of the sizes from `from` on, beyond an answer with none. */
const from = (points: readonly Sized[], least: number): number =>
  growth(
    at(points, 0),
    points.filter(({ size }) => size >= least),
  );

const row = (what: string, measured: string, wanted: string, good: boolean): Row => ({
  part: PART,
  what,
  command: COMMAND,
  measured,
  wanted,
  good,
});

const { cases, drawn } = casesOfClass(CASES);
console.log(`${cases.length} of ${drawn} random cases are of the class; ${RULE_COUNT} rules in the library`);
const healthy = cases
  .filter(({ aircraft, use }) => answerForUse(aircraft, use).outcome !== 'no-go')
  .slice(0, FLEET);
const findings = await bySize('write-ups', FINDINGS, (size) => crowded(size, healthy));
const house = await bySize('house rules', HOUSE, (size) => withHouse(size, crowded(2, healthy)));
const lines = await bySize('equipment lines', LINES, (size) => withLines(size, crowded(2, healthy)));
const measuredCases = [...findings.cases, ...house.cases, ...lines.cases];
const compared = await differences([...cases, ...measuredCases]);

const all = cases.length + measuredCases.length;
const shares = Object.values(compared.outcomes).map((count) => (100 * count) / all);
const ratio = (size: number): string => (at(findings.library, size) / at(findings.core, size)).toFixed(1);
const both = (core: number, library: number) => `core ${core.toFixed(2)}, library ${library.toFixed(2)}`;
const grows = {
  findings: [from(findings.core, 5), from(findings.library, 5)] as const,
  house: [from(house.core, 10), from(house.library, 10)] as const,
  lines: [exponent(lines.core), exponent(lines.library)] as const,
};
const most = `core at most ${MOST_EXPONENT}`;

report([
  row(
    `same answers as ${RULE_COUNT} rules in json-rules-engine 7.3.1: outcome, and each paragraph with its effect`,
    `${compared.different} differences in ${all.toLocaleString('en')} cases (${shares.map((share) => share.toFixed(0)).join(' / ')} % go / limits / no go, ${(compared.lines / all).toFixed(0)} paragraphs each)`,
    `0 in at least ${LEAST_CASES.toLocaleString('en')}, each outcome at least ${LEAST_SHARE} %`,
    compared.different === 0 && all >= LEAST_CASES && shares.every((share) => share >= LEAST_SHARE),
  ),
  row(
    'answers a second on one core, by write-ups an aircraft (0 / 2 / 10 / 200)',
    `core ${[0, 2, 10, 200].map((size) => rate(at(findings.core, size))).join(' / ')}, library ${[0, 2, 10, 200].map((size) => rate(at(findings.library, size))).join(' / ')}`,
    'core not slower than the library at any size',
    FINDINGS.every((size) => at(findings.core, size) <= at(findings.library, size)),
  ),
  row(
    'how many times faster than the library, by write-ups (0 / 10 / 200)',
    [0, 10, 200].map(ratio).join(' / '),
    'more than 1',
    [0, 10, 200].every((size) => Number(ratio(size)) > 1),
  ),
  row(
    'growth with write-ups, 5 to 200: exponent of the time beyond an answer with none',
    both(...grows.findings),
    most,
    grows.findings[0] <= MOST_EXPONENT,
  ),
  row(
    'growth with rules of the house, 10 to 300: exponent of the time beyond an answer with none',
    both(...grows.house),
    most,
    grows.house[0] <= MOST_EXPONENT,
  ),
  row(
    'growth with lines of the equipment list, 10 to 300: exponent',
    both(...grows.lines),
    most,
    grows.lines[0] <= MOST_EXPONENT,
  ),
]);
