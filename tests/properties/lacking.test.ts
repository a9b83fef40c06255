import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answersByOperation } from '@/lib/rules/answer';
import { known, unknown } from '@/lib/rules/facts';
import { lackingFor, ORDER } from '@/lib/rules/lacking';
import type { ReferenceBase } from '@/lib/rules/use-of-flight';
import { BASE, TODAY, trainer } from '../fixtures/aircraft';

/**
 * The promise of issue 6: set-up is done when the engine stops asking. Source: none but the issue. From an aircraft that is
 * complete and go for all eight kinds, facts are taken away, any and as many as may be: the list of what is lacking is then
 * non-empty exactly when some kind is no go, since nothing else can have made it so.
 */
const NOW = '2026-11-25T15:00:00Z';
interface Told {
  readonly aircraft: AircraftFacts;
  readonly base: ReferenceBase;
}
const COMPLETE: Told = {
  aircraft: trainer(),
  base: {
    ...BASE,
    transponderAirspace: known(true),
    adsbAirspace: known(true),
    controlledAirspace: known(true),
  },
};
const noGo = ({ aircraft, base }: Told): boolean =>
  answersByOperation(aircraft, base, TODAY, NOW).some(({ answer }) => answer.outcome === 'no-go');
const lacking = ({ aircraft, base }: Told) => lackingFor(aircraft, base, TODAY, NOW);

type Path = readonly string[];
type Row = Record<string, unknown>;
/** What can be taken away: each fact that is known, and each row of a list (nobody ever entered it). */
function removable(value: unknown, at: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [];
  const isFact = 'known' in value && value.known === true;
  const isRow = /^\d+$/.test(at.at(-1) ?? '');
  const inside = Object.entries(value).flatMap(([key, one]) => removable(one, [...at, key]));
  return isFact || isRow ? [at, ...inside] : inside;
}

function takeAway(told: Told, paths: readonly Path[]): Told {
  const left = structuredClone(told) as unknown as Row;
  // Deepest and last first, so that a row taken out moves no path that is still to come.
  for (const path of paths.toSorted((a, b) => (order(a) < order(b) ? 1 : -1))) {
    const owner = path.slice(0, -1).reduce<unknown>((at, key) => (at as Row | undefined)?.[key], left);
    const key = path.at(-1) ?? '';
    if (Array.isArray(owner)) owner.splice(Number(key), 1);
    else if (typeof owner === 'object' && owner !== null)
      (owner as Row)[key] = unknown(`fact ${path.join('.')}`);
  }
  return left as unknown as Told;
}
const order = (path: Path): string =>
  path.map((key) => (/^\d+$/.test(key) ? key.padStart(4, '0') : key)).join('/');

const FACTS = removable(COMPLETE);

it('starts from an aircraft of which nothing is lacking and nothing is no go', () => {
  expect(noGo(COMPLETE)).toBe(false);
  expect(lacking(COMPLETE)).toEqual([]);
  expect(FACTS.length).toBeGreaterThan(100);
});

it.each(FACTS.map((path) => [path.join('.'), path] as const))(
  'without %s: asks exactly when it decides',
  (_name, path) => {
    const told = takeAway(COMPLETE, [path]);
    expect(lacking(told).length > 0).toBe(noGo(told));
  },
);

it('without any of them: the same, and each is named with its paragraph, its kinds and its place', () => {
  fc.assert(
    fc.property(fc.subarray(FACTS, { minLength: 1, maxLength: 40 }), (paths) => {
      const told = takeAway(COMPLETE, paths);
      const found = lacking(told);
      expect(found.length > 0).toBe(noGo(told));
      for (const one of found) {
        expect(one.kinds.length).toBeGreaterThan(0);
        expect(ORDER).toContain(one.enterAt);
        expect(one.because).toMatch(/cannot be judged|can be judged by it/);
        expect(one.cites).toContain(one.cite);
      }
    }),
    { numRuns: 100 },
  );
});
