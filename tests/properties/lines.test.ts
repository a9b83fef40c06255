import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { answerForUse } from '@/lib/rules/answer';
import { LAW } from '@/lib/rules/law';
import type { Line } from '@/lib/rules/verdict';
import { randomCase } from '../fixtures/arbitrary-case';

/**
 * Every line of every answer is whole: it says what it does, on which paragraph, why in a sentence, and what it is about, so that a
 * screen can lead there. Source: none, the promise of `Line` and `Subject` in lib/rules/verdict.ts.
 */

const EFFECTS = ['supports', 'notes', 'limits', 'bars'];
const SEED = Number(process.env.WHEELCHOCK_SEED ?? 20_261_127);

/** What a subject of a kind may be, by the ids among the facts. A flight, its permit and a person are none of the aircraft's facts. */
function idsOf(aircraft: AircraftFacts): Readonly<Record<string, readonly string[]>> {
  const { discrepancies, work, papers, requirements, equipment, directives } = aircraft;
  const ids = (rows: readonly { readonly id: string }[]) => rows.map(({ id }) => id);
  return {
    discrepancy: ids(discrepancies),
    deferral: discrepancies.flatMap(({ deferral }) => deferral?.id ?? []),
    work: ids(work),
    // One that nobody entered is named by its kind.
    paper: [
      ...ids(papers),
      ...['airworthiness-certificate', 'registration', 'flight-manual', 'weight-and-balance'].map(
        (kind) => `${aircraft.id}/${kind}`,
      ),
    ],
    requirement: [...ids(requirements), ...(directives.known ? ids(directives.value) : [])],
    equipment: [...ids(equipment), ...equipment.map((row) => row.function)],
    aircraft: [aircraft.id],
  };
}

const isWhole = ({ effect, cite, because, about }: Line, aircraft: AircraftFacts) => {
  expect(EFFECTS).toContain(effect);
  expect(LAW).toHaveProperty([cite]);
  // A sentence, and nothing that was not filled in.
  expect(because).toMatch(/^\S.*[.!?)]$/s);
  expect(because).not.toMatch(/undefined|\[object|NaN|null|Stryker/);
  if (about === undefined) return;
  expect(Object.keys(about).toSorted()).toEqual(['id', 'kind', 'label']);
  expect(about.label.trim()).not.toBe('');
  expect(about.id.trim()).not.toBe('');
  const known = idsOf(aircraft)[about.kind];
  if (known !== undefined) expect(known, `${about.kind} of ${because}`).toContain(about.id);
};

it('every line of an answer is whole', () => {
  fc.assert(
    fc.property(randomCase, ({ aircraft, use }) => {
      for (const line of answerForUse(aircraft, use).lines) isWhole(line, aircraft);
    }),
    { numRuns: 100, seed: SEED },
  );
});
