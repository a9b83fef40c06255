/**
 * Cases for the comparison: the random aircraft and flights of tests/fixtures/arbitrary-case.ts as far as they are of the declared
 * class, and fleets of a given size for the measurement.
 */
import fc from 'fast-check';
import type { AircraftFacts, DiscrepancyFacts } from '@/lib/rules/aircraft';
import { known } from '@/lib/rules/facts';
import { deferralOf, discrepancyOf } from '../../fixtures/aircraft';
import { randomCase, type RandomCase } from '../../fixtures/arbitrary-case';
import { changeOfWriteUps } from '../../fixtures/changes-of-write-ups';
import { houseRule, houseRulesArbitrary } from '../../fixtures/house-rules';
import { inClass } from './library';

const SEED = 20_261_127;

/** Random cases of the class, as many as asked for. */
export function casesOfClass(count: number): {
  readonly cases: readonly RandomCase[];
  readonly drawn: number;
} {
  const cases: RandomCase[] = [];
  let drawn = 0;
  for (let seed = SEED; cases.length < count; seed += 1) {
    for (const one of fc.sample(randomCase, { numRuns: 1_000, seed })) {
      if (cases.length === count) break;
      drawn += 1;
      if (inClass(one.aircraft, one.use)) cases.push(one);
    }
  }
  return { cases, drawn };
}

/**
 * `count` write-ups on each aircraft: at random on every other one, which nearly always bars; on the rest such as may fly on with limits
 * (complete deferrals, judged damage, blemishes), which is the most work to say.
 */
export function crowded(count: number, cases: readonly RandomCase[]): readonly RandomCase[] {
  const pool = writeUpPool();
  return cases.map(({ aircraft, use }, at) => {
    const discrepancies = Array.from({ length: count }, (_, n) => {
      const random = pool[(at * 31 + n * 7) % pool.length] as DiscrepancyFacts;
      return numbered(at % 2 === 0 ? random : flyable(n), n + 1);
    });
    return { aircraft: roomy({ ...aircraft, discrepancies }), use };
  });
}

const ROOMY: readonly string[] = ['intercom', 'cabin-heat', 'taxi-light'];

function flyable(n: number): DiscrepancyFacts {
  const limits = { by: 'M. Oakridge', on: '2026-11-24', limit: 'in the table', source: 'maker' };
  if (n % 5 === 3) return discrepancyOf({ kind: 'damage', severity: known('watch'), withinLimits: limits });
  if (n % 5 === 4) return discrepancyOf({ kind: 'cosmetic', severity: known('note') });
  return discrepancyOf({ equipmentId: ROOMY[n % ROOMY.length] ?? '', deferral: deferralOf() });
}

const numbered = (d: DiscrepancyFacts, number: number): DiscrepancyFacts => ({
  ...d,
  id: `discrepancy-${number}`,
  number: `W-${String(number).padStart(4, '0')}`,
  deferral: d.deferral && { ...d.deferral, id: `deferral-${number}` },
});

const POOL = 500;
let kept: readonly DiscrepancyFacts[] | undefined;
function writeUpPool(): readonly DiscrepancyFacts[] {
  if (kept) return kept;
  const bare = {
    equipment: [],
    discrepancies: [],
    mel: known(null),
    directives: known([]),
  } as unknown as AircraftFacts;
  const changes = fc.sample(changeOfWriteUps, { numRuns: POOL, seed: SEED });
  kept = changes.flatMap((change) => {
    const { discrepancies, mel } = change(bare);
    return mel.known && mel.value !== null ? [] : discrepancies;
  });
  return kept;
}

/** An aircraft with room for many write-ups on the same line: as when a school keeps stores of a thing on one line. */
const roomy = (aircraft: AircraftFacts): AircraftFacts => ({
  ...aircraft,
  equipment: aircraft.equipment.map((row) =>
    ROOMY.includes(row.function) ? { ...row, installed: 300 } : row,
  ),
});

/** `count` rules of the house, drawn at random, the same for all aircraft of a measurement. */
export function withHouse(count: number, cases: readonly RandomCase[]): readonly RandomCase[] {
  const settings = fc
    .sample(houseRulesArbitrary, { numRuns: count * 4, seed: SEED })
    .flat()
    .slice(0, count)
    .map(({ setting }, at) => houseRule(setting, { ruleId: `rule-${String(at).padStart(4, '0')}` }));
  return cases.map(({ aircraft, use }) => ({ aircraft: { ...aircraft, houseRules: settings }, use }));
}

/** `count` lines on the equipment list in all: the list there is, and supplemental lines of the same functions. */
export function withLines(count: number, cases: readonly RandomCase[]): readonly RandomCase[] {
  return cases.map(({ aircraft, use }) => {
    const { equipment } = aircraft;
    const lines = Array.from({ length: count }, (_, at) => {
      const row = equipment[at % equipment.length] as AircraftFacts['equipment'][number];
      return at < equipment.length ? row : { ...row, id: `${row.id}-${at}`, name: `${row.name} ${at}` };
    });
    return { aircraft: { ...aircraft, equipment: lines }, use };
  });
}
