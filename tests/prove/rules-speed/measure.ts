/**
 * Time a side takes for an answer, both sides in turns in one process, and how it grows. Time of the processor, not of the clock on the
 * wall: other programs on the machine do not count, the collector of garbage does.
 */
import { answerForUse } from '@/lib/rules/answer';
import type { RandomCase } from '../../fixtures/arbitrary-case';
import { libraryAnswer } from './library';

/** Milliseconds an answer. */
export interface Times {
  readonly core: number;
  readonly library: number;
}

const ROUNDS = 5;
/** A block of one side is at least so long, so that the clock's step and single pauses do not count. */
const BLOCK_MS = 40;
const WARM_MS = 200;

type Answering = (one: RandomCase) => unknown;
const bySide: Readonly<Record<keyof Times, Answering>> = {
  core: ({ aircraft, use }) => answerForUse(aircraft, use),
  library: ({ aircraft, use }) => libraryAnswer(aircraft, use),
};

const processorMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000;
};

/** All cases again and again until `ms` have passed; milliseconds an answer. */
async function block(side: keyof Times, cases: readonly RandomCase[], ms: number): Promise<number> {
  const answering = bySide[side];
  const begun = processorMs();
  let answers = 0;
  do {
    for (const one of cases) {
      const answer = answering(one);
      // The core answers at once; waiting for what is there already would count against it.
      if (answer instanceof Promise) await answer;
    }
    answers += cases.length;
  } while (processorMs() - begun < ms);
  return (processorMs() - begun) / answers;
}

/** Both sides in turns, the one that begins changing; of each the round that was least disturbed. */
export async function timed(cases: readonly RandomCase[]): Promise<Times> {
  const taken = { core: [] as number[], library: [] as number[] };
  for (const side of ['core', 'library'] as const) await block(side, cases, WARM_MS);
  for (let round = 0; round < ROUNDS; round += 1) {
    const sides = round % 2 === 0 ? (['core', 'library'] as const) : (['library', 'core'] as const);
    for (const side of sides) taken[side].push(await block(side, cases, BLOCK_MS));
  }
  return { core: Math.min(...taken.core), library: Math.min(...taken.library) };
}

export interface Sized {
  readonly size: number;
  readonly ms: number;
}

/** Slope of a line through the logarithms (least squares): 1 grows as the size, 2 as its square. */
export function exponent(points: readonly Sized[]): number {
  const logs = points.map(({ size, ms }) => [Math.log(size), Math.log(ms)] as const);
  const mean = (at: 0 | 1) => logs.reduce((sum, point) => sum + point[at], 0) / logs.length;
  const [meanX, meanY] = [mean(0), mean(1)];
  const over = logs.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  return over / logs.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
}

/** Less than this of an answer is not told from noise. */
const NOISE = 0.05;

/**
 * Exponent of what the things counted cost beyond an answer without any, as a base that is always there would hide how they grow. Where
 * fewer than three sizes cost more than noise, of the whole answer.
 */
export function growth(base: number, points: readonly Sized[]): number {
  const beyond = points
    .map(({ size, ms }) => ({ size, ms: ms - base }))
    .filter(({ ms }) => ms > base * NOISE);
  return exponent(beyond.length < 3 ? points : beyond);
}
