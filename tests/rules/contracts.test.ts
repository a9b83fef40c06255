/**
 * Wrong uses of the rules must not compile. The check is made by `npm test -- types`: a `@ts-expect-error` with nothing
 * to expect is an error itself. Source: the binding rules of the project (every line has its paragraph; unknown is not
 * known).
 */
import { expectTypeOf, test } from 'vitest';
import type { Fact } from '@/lib/rules/facts';
import type { CiteId } from '@/lib/rules/law';
import { joinLines, type Line, type Outcome } from '@/lib/rules/verdict';

test('a verdict line needs a paragraph, and one that is in the registry', () => {
  // @ts-expect-error a line without a cite
  const without: Line = { effect: 'bars', because: 'no reason given' };
  // @ts-expect-error a paragraph that the registry does not know
  const unregistered: Line = { effect: 'bars', cite: '14cfr91.999', because: 'x' };
  void [without, unregistered];
  expectTypeOf<Line['cite']>().toEqualTypeOf<CiteId>();
});

test('a fact that may be unknown cannot be used as known', () => {
  const hours = (fact: Fact<number>) => {
    // @ts-expect-error the value is there only once `known` was asked
    const unasked: number = fact.value;
    void unasked;
    return fact.known ? fact.value : null;
  };
  expectTypeOf(hours).returns.toEqualTypeOf<number | null>();
});

test('there are three outcomes, and no boolean', () => {
  expectTypeOf(joinLines([]).outcome).toEqualTypeOf<Outcome>();
  expectTypeOf<Outcome>().toEqualTypeOf<'go' | 'go-with-limits' | 'no-go'>();
});
