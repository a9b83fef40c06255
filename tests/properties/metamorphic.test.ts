import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AircraftFacts, DeferralFacts } from '@/lib/rules/aircraft';
import { answerForUse } from '@/lib/rules/answer';
import { known } from '@/lib/rules/facts';
import type { UseOfAircraft } from '@/lib/rules/operations';
import type { Outcome } from '@/lib/rules/verdict';
import {
  deferralOf,
  discrepancyOf,
  equipmentRow,
  melItemOf,
  permitOf,
  requirementRow,
  trainer,
  useOf,
  withEquipment,
} from '../fixtures/aircraft';
import { randomCase, type RandomCase } from '../fixtures/arbitrary-case';
import { changeOfWriteUps } from '../fixtures/changes-of-write-ups';
import { at, knownPaths, otherValues, withoutFact, type Path } from '../fixtures/facts-taken-away';
import { houseRule } from '../fixtures/house-rules';

/**
 * What a change of the facts may do to an answer, over every fact there is: found by its shape, so that a field added later is
 * among them without anybody thinking of it. Source: none, the promises of the core itself; only how long a deferral lasts is
 * from 91.207(f)(10)(ii), the repair categories of policy letter 25 and 91.405(c).
 */

/** With WHEELCHOCK_CASES set (npm run prove) twenty times as many. */
const runs = (few: number): number => (process.env.WHEELCHOCK_CASES === undefined ? few : few * 20);

const RANK: Record<Outcome, number> = { 'no-go': 0, 'go-with-limits': 1, go: 2 };
const rankOf = ({ aircraft, use }: RandomCase): number => RANK[answerForUse(aircraft, use).outcome];

/** A fact by its field: "equipment.*.confirmed". */
const fieldOf = (path: Path): string => path.map((key) => (/^\d+$/.test(key) ? '*' : key)).join('.');

/** Somewhere in here is every kind of fact that the types know. */
const EVERYTHING: RandomCase = {
  aircraft: withEquipment(
    trainer({
      directives: known([
        { id: 'd', number: '1', title: 'D', equipmentId: 'clock', requiresOperable: false },
      ]),
      lastOil: known({ tenthsQuart: 70, at: '2026-11-25T15:00:00Z' }),
      lastWalkaround: known({ at: '2026-11-25T15:00:00Z' }),
      mel: known({
        reference: 'MEL 1',
        letterAboard: known(true),
        enforceCategories: true,
        extension: null,
        items: [melItemOf({ category: 'A', categoryADays: known(5) })],
      }),
      requirements: [
        ...trainer().requirements,
        requirementRow('life-limit', 'Limit', '2026-01-10', 44_000, { id: 'limit', intervalTenths: 9000 }),
      ],
      discrepancies: [discrepancyOf({ equipmentId: 'cabin-heat', deferral: deferralOf({ basis: 'mel' }) })],
      work: [{ id: 'work-1', title: 'Work', state: 'signed', checkFlight: known('flown'), testsOwed: [] }],
      houseRules: [
        houseRule({ kind: 'oil-minimum', leastTenthsQuart: 60, oldestHours: 12 }),
        houseRule({ kind: 'walkaround-before-flight', oldestHours: 12 }, { ruleId: 'rule-2' }),
      ],
    }),
    equipmentRow('other', 'Spare', '2500'),
  ),
  use: useOf({ rules: 'IFR', usesVor: known(true) }),
};

describe('a fact taken away', () => {
  it('the case with everything flies, so that each of its facts can only make it worse', () => {
    expect(rankOf(EVERYTHING)).toBe(RANK['go-with-limits']);
    // Fields of the types that hold facts today; a new one makes it more.
    expect(new Set(knownPaths(EVERYTHING).map(fieldOf)).size).toBeGreaterThanOrEqual(45);
  });

  it.each([...new Map(knownPaths(EVERYTHING).map((path) => [fieldOf(path), path]))])(
    '%s: never improves the answer',
    (_field, path) => {
      expect(rankOf(withoutFact(EVERYTHING, path))).toBeLessThanOrEqual(rankOf(EVERYTHING));
    },
  );

  /**
   * The promise itself: not knowing is never better than knowing the worst. Whatever else a fact could have been, with any of those
   * values barring, unknown bars too. This needs no case that happens to hang on the one fact.
   */
  it.each([...new Map(knownPaths(EVERYTHING).map((path) => [fieldOf(path), path])).keys()])(
    '%s: not known is no better than any value it could have',
    (field) => {
      const paths = knownPaths(EVERYTHING).filter((path) => fieldOf(path) === field);
      // Rows of a list differ in what they are for: a few of them, the last included, which nothing but the list asks for.
      for (const path of [...new Set([...paths.slice(0, 2), ...paths.slice(-1)])]) {
        const notKnown = rankOf(withoutFact(EVERYTHING, path));
        for (const other of otherValues(EVERYTHING, path)) {
          expect(notKnown, `${path.join('.')} ${JSON.stringify(at(other, path))}`).toBeLessThanOrEqual(
            rankOf(other),
          );
        }
      }
    },
  );

  it('of any random case: not known is no better than any value it could have', { timeout: 900_000 }, () => {
    const barred = new Set<string>();
    fc.assert(
      fc.property(randomCase, fc.nat(), (given, pick) => {
        const paths = knownPaths(given);
        for (const step of [0, 71]) {
          const path = paths[(pick + step) % paths.length] ?? [];
          const notKnown = rankOf(withoutFact(given, path));
          for (const other of [given, ...otherValues(given, path)]) {
            const known = rankOf(other);
            if (known === RANK['no-go'] && rankOf(given) > known) barred.add(fieldOf(path));
            expect(notKnown, `${path.join('.')} ${JSON.stringify(at(other, path))}`).toBeLessThanOrEqual(
              known,
            );
          }
        }
      }),
      { numRuns: runs(150), seed: 20_261_127 },
    );
    // The property is about something: of many fields some other value stops a flight that went.
    expect(barred.size).toBeGreaterThan(4);
  });

  it('never turns no go into go: all the facts of a field at once', { timeout: 900_000 }, () => {
    fc.assert(
      fc.property(randomCase, fc.nat(), (given, pick) => {
        const paths = knownPaths(given);
        const field = fieldOf(paths[pick % paths.length] ?? []);
        const poorer = paths
          .filter((path) => fieldOf(path) === field)
          .reduce((facts, path) => withoutFact(facts, path), given);
        expect(rankOf(poorer), field).toBeLessThanOrEqual(rankOf(given));
      }),
      { numRuns: runs(100), seed: 20_261_127 },
    );
  });
});

describe('one more open discrepancy', () => {
  it('of any kind, deferred or not, never improves an answer', { timeout: 900_000 }, () => {
    fc.assert(
      fc.property(randomCase, changeOfWriteUps, (given, change) => {
        const [more] = change(given.aircraft).discrepancies;
        if (more === undefined) return;
        const added = { ...more, id: 'one-more', number: 'W-9999' };
        // A deferral is more than a discrepancy: somebody took the item out of use. The write-up alone is what is new.
        const aircraft = {
          ...given.aircraft,
          discrepancies: [...given.aircraft.discrepancies, { ...added, deferral: null }],
        };
        expect(rankOf({ ...given, aircraft })).toBeLessThanOrEqual(rankOf(given));
      }),
      { numRuns: runs(200), seed: 20_261_127 },
    );
  });

  it('that a permit names never gives a plain go', () => {
    fc.assert(
      fc.property(randomCase, (given) => {
        const covers = given.aircraft.discrepancies.map(({ id }) => id);
        const use = { ...given.use, specialFlightPermit: permitOf({ covers }) };
        expect(rankOf({ ...given, use })).toBeLessThan(RANK.go);
      }),
      { numRuns: runs(100), seed: 20_261_127 },
    );
  });
});

/** A healthy aircraft with one thing deferred in good order; what ends the deferral is the property's. */
const withDeferral = (
  deferral: Partial<DeferralFacts>,
  change: Partial<AircraftFacts> = {},
  item = 'cabin-heat',
) =>
  trainer({
    discrepancies: [discrepancyOf({ equipmentId: item, deferral: deferralOf(deferral) })],
    // Nothing else may run out meanwhile.
    requirements: trainer().requirements.map((row) => ({
      ...row,
      ...(row.lastDone.known ? { lastDone: known({ ...row.lastDone.value, on: '2026-11-20' }) } : {}),
      fixedExpiry: row.fixedExpiry === null ? null : '2030-01-31',
    })),
    ...change,
  });
const on = (day: string, use: Partial<UseOfAircraft> = {}): UseOfAircraft =>
  useOf({ departAt: `${day}T16:00:00Z`, arriveAt: `${day}T17:30:00Z`, departOn: day, arriveOn: day, ...use });
const dayAfter = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);

/** A day of recording near enough that no inspection of `withDeferral` runs out within 120 days and twice ten. */
const recordedDay = fc.integer({ min: 0, max: 60 }).map((days) => dayAfter('2026-11-20', days));

describe('deferral never outlives its end', () => {
  it.each([
    ['A', 5],
    ['B', 3],
    ['C', 10],
    ['D', 120],
  ] as const)('category %s: %i days, extended or not, and not one more', (category, days) => {
    fc.assert(
      fc.property(
        recordedDay,
        fc.integer({ min: -5, max: 140 }),
        fc.integer({ min: 0, max: 60 }),
        fc.constantFrom(null, ['B', 'C'] as const, [category] as const),
        (recordedOn, extra, later, categories) => {
          const end = dayAfter(recordedOn, days);
          const extendedThrough = dayAfter(end, extra);
          const item = melItemOf({ category, categoryADays: known(5) });
          const mel = {
            reference: 'MEL 1',
            letterAboard: known(true),
            enforceCategories: true,
            extension: categories && { categories, reference: 'D095' },
            items: [item],
          };
          const plane = withDeferral({ basis: 'mel', recordedOn, extendedThrough }, { mel: known(mel) });
          // Once, in B and C alone, where the letter says so, and by no more than the same interval again.
          const may = ['B', 'C'].includes(category) && categories?.includes(category as 'B') === true;
          const longest = dayAfter(end, days);
          const asked = extendedThrough > longest ? longest : extendedThrough;
          const last = may && asked > end ? asked : end;
          expect(answerForUse(plane, on(last)).outcome).toBe('go-with-limits');
          expect(answerForUse(plane, on(dayAfter(last, 1 + later))).outcome).toBe('no-go');
          // A flight that lands after midnight has outlived it too.
          expect(answerForUse(plane, on(last, { arriveOn: dayAfter(last, 1) })).outcome).toBe('no-go');
        },
      ),
      { numRuns: runs(15), seed: 20_261_127 },
    );
  });

  // 91.207(f)(10)(ii): not more than 90 days after the first removal; day 1 is the day after it.
  it('a transmitter taken out: 90 days, however often it was taken out again', () => {
    fc.assert(
      fc.property(
        recordedDay,
        fc.integer({ min: 0, max: 80 }),
        fc.integer({ min: 1, max: 60 }),
        (first, again, over) => {
          const removed = (firstRemovedOn: string): Partial<DeferralFacts> => ({
            method: 'removed',
            maintenanceRecordSigned: true,
            eltRemoval: { firstRemovedOn, recordComplete: true },
          });
          const plane = withDeferral(removed(first), {}, 'elt');
          const second = discrepancyOf({
            id: 'discrepancy-2',
            number: 'W-0002',
            equipmentId: 'elt',
            deferral: deferralOf({ id: 'deferral-2', ...removed(dayAfter(first, again)) }),
          });
          const twice = { ...plane, discrepancies: [...plane.discrepancies, second] };
          for (const one of [plane, twice]) {
            expect(answerForUse(one, on(dayAfter(first, 90))).outcome).toBe('go-with-limits');
            expect(answerForUse(one, on(dayAfter(first, 90 + over))).outcome).toBe('no-go');
          }
        },
      ),
      { numRuns: runs(25), seed: 20_261_127 },
    );
  });

  // 91.405(c): the next required inspection; one that passed without a word ends it, whatever else is in order.
  it('an inspection that passed without a word ends it, for good', () => {
    fc.assert(
      fc.property(
        recordedDay,
        fc.array(fc.constantFrom('inspected' as const, null), { minLength: 1, maxLength: 4 }),
        (recordedOn, dispositions) => {
          const inspectionsSince = dispositions.map((disposition, at) => ({
            name: 'Annual inspection',
            on: dayAfter(recordedOn, at),
            disposition,
          }));
          const day = dayAfter(recordedOn, 5);
          const plane = withDeferral({ recordedOn, inspectionsSince, determination: deferredOn(recordedOn) });
          const silent = dispositions.includes(null);
          expect(answerForUse(plane, on(day)).outcome).toBe(silent ? 'no-go' : 'go-with-limits');
        },
      ),
      { numRuns: runs(25), seed: 20_261_127 },
    );
  });

  it('and a later flight never gets a better answer from a deferral that has a date', () => {
    fc.assert(
      fc.property(randomCase, fc.integer({ min: 1, max: 200 }), ({ aircraft, use }, days) => {
        const deferred = aircraft.discrepancies.filter(({ deferral }) => deferral !== null);
        if (deferred.length === 0) return;
        const later = {
          ...use,
          departOn: dayAfter(use.departOn, days),
          arriveOn: dayAfter(use.arriveOn, days),
        };
        const ends = (at: UseOfAircraft) =>
          answerForUse(aircraft, at).lines.filter(
            ({ effect, cite }) =>
              effect === 'bars' && (cite.startsWith('mmel-category') || cite.startsWith('14cfr91.405(c)')),
          ).length;
        expect(ends(later)).toBeGreaterThanOrEqual(ends(use));
      }),
      { numRuns: runs(120), seed: 20_261_127 },
    );
  });
});

const deferredOn = (day: string): DeferralFacts['determination'] => {
  const { determination } = deferralOf();
  return determination.known ? known({ ...determination.value, on: day }) : determination;
};

/** Every list anywhere in the facts, in another order: found by its shape as well. */
function turned<T>(value: T, by: number): T {
  if (Array.isArray(value)) {
    const rows = value.map((one: unknown) => turned(one, by));
    const at = rows.length === 0 ? 0 : by % rows.length;
    return [...rows.slice(at), ...rows.slice(0, at)].reverse() as T;
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [key, turned(part as unknown, by)]),
  ) as T;
}

describe('the order of input', () => {
  it('never matters: all lists of all facts, the outcome and what bars', { timeout: 900_000 }, () => {
    fc.assert(
      fc.property(randomCase, fc.nat({ max: 50 }), ({ aircraft, use }, by) => {
        const said = (facts: AircraftFacts, of: UseOfAircraft) => {
          const { outcome, lines } = answerForUse(facts, of);
          // The permit's own limits are read out in the order in which it states them.
          return { outcome, lines: lines.map((line) => JSON.stringify(line)).toSorted() };
        };
        expect(said(turned(aircraft, by), turned(use, by))).toEqual(said(aircraft, use));
      }),
      { numRuns: runs(150), seed: 20_261_127 },
    );
  });
});
