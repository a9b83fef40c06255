/**
 * Plain normalising of what people write. Source: common practice, no source; which letters are forgiven is our own choice, and
 * stands in words-compared.ts beside each function.
 */
import { describe, expect, test } from 'vitest';
import {
  compareParts,
  inCommon,
  isOneSlipApart,
  meaningOf,
  partNamed,
  wordsOf,
} from '@/lib/rules/findings/words-compared';

describe('the words of a text', () => {
  test.each<[text: string, words: string[]]>([
    ['Left TYRE, worn!', ['left', 'tyre', 'worn']],
    ['', []],
    [' - ... ', []],
    ['Façade né', ['facade', 'ne']],
    ["doesn't can’t", ['doesnt', 'cant']],
    ['L/H brake and r/h brake', ['lh', 'brake', 'and', 'rh', 'brake']],
    ['oil/hose', ['oil', 'hose']],
    ['oil/h', ['oil', 'h']],
    ['l/hose', ['l', 'hose']],
    ['n/h', ['n', 'h']],
    ['Co-pilot seat', ['copilot', 'seat']],
    ['eco-pilot', ['eco', 'pilot']],
    ['com2 vor1', ['com', '2', 'vor', '1']],
    ['2nd', ['2nd']],
    ['cylinder #3', ['cylinder', 'number', '3']],
    ['cylinder #  3', ['cylinder', 'number', '3']],
    ['cylinder#34', ['cylinder', 'number', '34']],
    ['# three', ['three']],
  ])('%j', (text, words) => {
    expect(wordsOf(text)).toEqual(words);
  });
});

/** The words that the tables do not know, as they are held against each other. */
const unknown = (...words: string[]) => [...meaningOf(words).others];

describe('one of several', () => {
  test.each([
    // Just under, on, over: words of three letters keep their s.
    ['zas', 'zas'],
    ['zags', 'zag'],
    ['zaggs', 'zagg'],
    ['zess', 'zess'],
    ['zonus', 'zonus'],
    ['zanies', 'zany'],
    ['zoaches', 'zoach'],
    ['zoashes', 'zoash'],
    ['zoaxes', 'zoax'],
    ['zoasses', 'zoass'],
    ['zoates', 'zoate'],
    ['zorchest', 'zorchest'],
    ['zag', 'zag'],
  ])('%s is counted as %s', (word, one) => {
    expect(unknown(word)).toEqual([one]);
  });
  test('parts and troubles are known in the plural', () => {
    const { parts, troubles } = meaningOf(['tires', 'batteries', 'latches', 'leaks']);
    expect([...parts]).toEqual(['tyre', 'battery', 'door']);
    expect([...troubles]).toEqual(['leak']);
  });
});

describe('words that set nothing apart', () => {
  test.each([
    ['two letters', 'zy', []],
    ['three letters', 'zyx', ['zyx']],
    ['a digit before', '2zyx', []],
    ['a digit behind', 'zyx2', []],
    ['a plain word of English', 'really', []],
    ['one that would lose its s', 'does', []],
    ['a place in the plural', 'edges', []],
  ])('%s: %s', (_why, word, others) => {
    expect(unknown(word)).toEqual(others);
  });
  test('what is known as a part or a trouble is not told again among the others', () => {
    expect(unknown('tire', 'worn', 'zebra')).toEqual(['zebra']);
  });
});

describe('a misspelt word', () => {
  test.each([
    // Three letters are too few, four only when two are swapped, five and more with any one slip.
    ['fna', null],
    ['feul', 'fuel'],
    ['fuels', 'fuel'],
    ['fual', null],
    ['fuell', null],
    ['tiree', null],
    ['brak', null],
    ['brakr', 'brake'],
    ['ruder', 'rudder'],
    ['rudde', 'rudder'],
    ['rudderr', 'rudder'],
    ['blaed', 'propeller'],
    ['antena', 'antenna'],
    ['anetnna', 'antenna'],
    // Two slips.
    ['rudr', null],
    ['antnea', null],
    // The first letter is never wrong.
    ['budder', null],
    ['kudder', null],
    // As near to one as to another.
    ['rudber', null],
    ['brade', null],
  ])('%s: %s', (word, part) => {
    expect(partNamed(word)).toBe(part);
  });
  test('one that is no part names none', () => {
    expect(partNamed('worn')).toBeNull();
    expect(partNamed('zebra')).toBeNull();
  });
  // "leading" is a letter away from "leaking", "while" from "white", "small" and "still" from "stall".
  test.each(['leading', 'while', 'small', 'still'])('"%s" is a word of its own', (word) => {
    expect(meaningOf([word])).toEqual(meaningOf([]));
    expect(partNamed(word)).toBeNull();
    expect([...meaningOf([word, 'light']).parts]).toEqual(['light']);
  });
  test('is put right inside a name of several words', () => {
    expect([...meaningOf(['landign', 'light']).parts]).toEqual(['landing light']);
  });
});

describe('one slip', () => {
  test.each([
    ['brake', 'brake', true],
    // Changed: first letter, in the middle, the last.
    ['brake', 'drake', true],
    ['brake', 'broke', true],
    ['brake', 'brakr', true],
    ['brake', 'broce', false],
    // Left out and put in.
    ['brake', 'rake', true],
    ['brake', 'bake', true],
    ['brake', 'brak', true],
    ['brake', 'brakes', true],
    ['brake', 'bra', false],
    ['brake', 'brakest', false],
    ['brake', 'bkes', false],
    ['brake', 'bakee', false],
    // Swapped with the next, at the beginning, in the middle, at the end; not with another.
    ['brake', 'rbake', true],
    ['brake', 'barke', true],
    ['brake', 'braek', true],
    ['brake', 'arbke', false],
    ['brake', 'kraeb', false],
    ['brake', 'barek', false],
    ['brake', 'barks', false],
    ['a', 'b', true],
    ['', 'a', true],
    ['', 'ab', false],
  ])('%j and %j: %s', (one, other, expected) => {
    expect(isOneSlipApart(one, other)).toBe(expected);
    expect(isOneSlipApart(other, one)).toBe(expected);
  });
});

describe('words of both', () => {
  const common = (one: string, other: string) => inCommon(new Set([one]), new Set([other]));
  test.each([
    // Just under, on, over five letters, on either side.
    ['zeba', 'zeba', true],
    ['zeba', 'zoba', false],
    ['zeba', 'zebra', false],
    ['zebra', 'zeba', false],
    ['zebra', 'zabra', true],
    ['zebra', 'zebras', true],
    ['zebras', 'zebra', true],
    ['zebras', 'zabras', true],
    ['zebra', 'zabro', false],
    ['zebras', 'zabros', false],
  ])('%s and %s: %s', (one, other, expected) => {
    expect(common(one, other)).toEqual(expected ? [one] : []);
  });
  test('one among several is enough, and they come in order of the alphabet', () => {
    const one = new Set(['yonder', 'zebra', 'xenon']);
    expect(inCommon(one, new Set(['wobble', 'zebta', 'xenon', 'yonder']))).toEqual([
      'xenon',
      'yonder',
      'zebra',
    ]);
    expect(inCommon(one, new Set())).toEqual([]);
    expect(inCommon(new Set(), one)).toEqual([]);
  });
});

describe('parts of their own', () => {
  const isApart = (one: readonly string[], other: readonly string[]) =>
    compareParts(new Set(one), new Set(other)).isApart;
  test.each(['light', 'fuel', 'oil', 'skin', 'leg', 'hinge', 'wheel', 'lens', 'fuel tank'])(
    '"%s" alone sets nothing apart',
    (general) => {
      expect(isApart([general], ['rudder'])).toBe(false);
      expect(isApart(['rudder'], [general])).toBe(false);
      expect(isApart([general, 'battery'], ['rudder'])).toBe(true);
      expect(isApart(['battery'], [general, 'rudder'])).toBe(true);
    },
  );
  test('both must name one, and nothing in common', () => {
    expect(isApart(['battery'], ['rudder'])).toBe(true);
    expect(isApart(['battery'], [])).toBe(false);
    expect(isApart([], ['rudder'])).toBe(false);
    expect(isApart(['battery', 'flap'], ['rudder', 'flap'])).toBe(false);
    expect(isApart(['baggage door'], ['door'])).toBe(false);
    expect(isApart(['door', 'battery'], ['baggage door', 'rudder'])).toBe(false);
  });
});
