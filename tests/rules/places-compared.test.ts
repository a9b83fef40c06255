/**
 * Where two writings say a thing is. Source: common practice, no source (how one walks round a light aircraft, and the words of
 * position people use); which words are no sides is our own choice. Every row of the tables is written out here.
 */
import { describe, expect, test } from 'vitest';
import {
  areaInWords,
  comparePositions,
  nearness,
  positionsWritten,
  type Positions,
} from '@/lib/rules/findings/places-compared';

const AREAS: readonly (readonly [area: string, name: string, touches: string])[] = [
  ['approach', 'walking up', ''],
  ['cabin', 'cabin', 'cabin-power-on windshield'],
  ['cabin-power-on', 'cabin, power on', 'cabin'],
  ['left-rear-fuselage', 'rear fuselage, left', 'baggage tail right-rear-fuselage belly'],
  ['tail', 'tail', 'left-rear-fuselage right-rear-fuselage'],
  ['right-rear-fuselage', 'rear fuselage, right', 'tail left-rear-fuselage belly'],
  ['right-flap-aileron', 'right flap and aileron', 'right-tip-leading-edge right-wing-fuel right-main-gear'],
  ['right-tip-leading-edge', 'right tip and leading edge', 'right-flap-aileron right-wing-fuel'],
  ['right-wing-fuel', 'right wing fuel', 'right-flap-aileron right-tip-leading-edge right-main-gear'],
  ['right-main-gear', 'right main gear', 'right-flap-aileron right-wing-fuel belly'],
  ['nose-right', 'nose, right side', 'propeller nose-gear nose-left windshield belly'],
  ['propeller', 'propeller and inlets', 'nose-right nose-gear nose-left'],
  ['nose-gear', 'nose gear', 'nose-right propeller nose-left belly'],
  ['nose-left', 'nose, left side', 'nose-right propeller nose-gear windshield belly'],
  [
    'left-wing-fuel',
    'left wing fuel',
    'left-leading-edge left-wing-and-gear left-flap-aileron left-main-gear',
  ],
  ['left-leading-edge', 'left leading edge', 'left-wing-fuel left-wing-and-gear left-tip'],
  [
    'left-wing-and-gear',
    'left tip, aileron, flap and gear',
    'left-wing-fuel left-leading-edge left-flap-aileron left-tip left-main-gear',
  ],
  ['last-look', 'last look', ''],
  ['left-flap-aileron', 'left flap and aileron', 'left-wing-fuel left-wing-and-gear left-tip left-main-gear'],
  ['left-tip', 'left tip', 'left-leading-edge left-wing-and-gear left-flap-aileron'],
  ['left-main-gear', 'left main gear', 'left-wing-fuel left-wing-and-gear left-flap-aileron belly'],
  ['baggage', 'baggage', 'left-rear-fuselage'],
  [
    'belly',
    'belly',
    'left-rear-fuselage right-rear-fuselage right-main-gear nose-right nose-gear nose-left left-main-gear',
  ],
  ['windshield', 'windshield', 'cabin nose-right nose-left'],
];
const ANYWHERE = ['approach', 'cabin-power-on', 'last-look'];

describe('areas', () => {
  test.each(AREAS)('%s is called %s', (area, name) => {
    expect(areaInWords(area)).toBe(name);
  });
  test('one that is not known is printed as it stands', () => {
    expect(areaInWords('upper-left-wing')).toBe('upper left wing');
    expect(areaInWords('toString')).toBe('toString');
  });
  test.each(AREAS)('%s (%s) is near itself and touches: %s', (area, _name, list) => {
    const touches = list.split(' ');
    for (const [other] of AREAS) {
      const openness = ANYWHERE.includes(area) || ANYWHERE.includes(other) ? 'open' : 'apart';
      const expected = other === area ? 'same' : touches.includes(other) ? 'neighbours' : openness;
      expect(nearness(area, other), other).toBe(expected);
    }
  });
});

const written = (text: string, area = 'cabin', isAboutGear = false): Positions =>
  positionsWritten(area, text.split(' '), isAboutGear);
/** "side left, height upper": what a text says of positions, axis by axis. */
const said = (text: string, area = 'cabin', isAboutGear = false): string =>
  Object.entries(written(text, area, isAboutGear).axes)
    .flatMap(([axis, positions]) => [...positions].map((position) => `${axis} ${position}`))
    .join(', ');

describe('words of position', () => {
  test.each([
    ['side left', 'left lh l lt lhs'],
    ['side right', 'right rh r rt rhs starboard copilot copilots'],
    ['height upper', 'upper top roof'],
    ['height lower', 'lower bottom underside underneath belly'],
    ['length front', 'front forward fwd'],
    ['length rear', 'rear aft'],
    ['span inboard', 'inboard inner'],
    ['span outboard', 'outboard outer'],
    ['wheel nose', 'nosewheel'],
    ['wheel main', 'main mains'],
    ['wheel tail', 'tailwheel'],
  ])('%s: %s', (expected, words) => {
    for (const word of words.split(' ')) expect(said(`the ${word} thing`), word).toBe(expected);
  });
  test('other words say nothing, whatever an object calls its own', () => {
    expect(said('zebra toString constructor')).toBe('');
    expect(said('')).toBe('');
  });
  test.each('gear leg strut tire tires tyre tyres wheel fairing pant brake brakes'.split(' '))(
    '"nose %s" is the nose wheel',
    (part) => {
      expect(said(`nose ${part}`)).toBe('wheel nose');
      expect(said(`tail ${part}`)).toBe('');
    },
  );
  test('"nose" alone, or before anything else, is the nose', () => {
    expect(said('nose')).toBe('');
    expect(said('nose bowl')).toBe('');
    expect(said('gear nose')).toBe('');
  });
  test.each('com comm nav radio vor gps display cylinder cyl number no blade'.split(' '))(
    '"%s 2" is number 2',
    (thing) => {
      expect(said(`${thing} 2`)).toBe('number 2');
      expect(said(`${thing} two`)).toBe('');
      expect(said(`${thing} 12`)).toBe('');
      expect(said(`${thing} 2x`)).toBe('');
    },
  );
  test('a number behind another word is an amount', () => {
    expect(said('about 2')).toBe('');
  });
});

describe('"left" and "right" that are no sides', () => {
  test.each('after before now at where away when next behind'.split(' '))('"right %s"', (word) => {
    expect(said(`seen right ${word}`)).toBe('');
    expect(said(`seen left ${word}`)).toBe('side left');
  });
  test.each(
    'not all look looks looked feel feels sound sounds quite sit sits close closes fit fits'.split(' '),
  )('"%s right"', (word) => {
    expect(said(`${word} right`)).toBe('');
    expect(said(`${word} left`)).toBe('side left');
  });
  test.each('over open unlocked undone'.split(' '))('"left %s"', (word) => {
    expect(said(`door left ${word}`)).toBe('');
    expect(said(`door right ${word}`)).toBe('side right');
  });
  test.each('was were been tread much little nothing none pad bit material got thread'.split(' '))(
    '"%s left"',
    (word) => {
      expect(said(`${word} left`)).toBe('');
      expect(said(`${word} right`)).toBe('side right');
    },
  );
});

describe('the side of one part', () => {
  const sides = (text: string) =>
    [...written(text).sideOfPart].map(([part, positions]) => `${part}: ${[...positions].join(' ')}`);
  test.each([
    ['left brake', ['brake: left']],
    ['left main brake', ['brake: left']],
    ['left main gear brake', []],
    ['brake left side', []],
    ['left brake and right tire', ['brake: left', 'tyre: right']],
    ['left brake right brake', ['brake: left right']],
    ['left brake tire', ['brake: left']],
    ['upper brake', []],
    ['front left brake', ['brake: left']],
    ['copilot seat', ['seat: right']],
  ])('%s', (text, expected) => {
    expect(sides(text)).toEqual(expected);
  });
});

describe('positions from the area where nothing is written', () => {
  test.each<[area: string, text: string, gear: boolean, expected: string]>([
    ['left-wing-fuel', '', false, 'side left'],
    ['right-wing-fuel', '', false, 'side right'],
    ['left-wing-fuel', 'right cap', false, 'side right'],
    ['nose-left', '', false, ''],
    ['nose-right', '', false, ''],
    ['tail', '', false, ''],
    ['left-rear-fuselage', '', false, 'side left'],
    ['left-rear-fuselage', 'top', false, 'height upper'],
    ['right-rear-fuselage', 'underside', false, 'height lower'],
    ['right-rear-fuselage', 'left underside', false, 'side left, height lower'],
    ['left-tip', 'top', false, 'side left, height upper'],
    ['nose-gear', '', false, 'wheel nose'],
    ['nose-gear', 'main', false, 'wheel main'],
    ['left-main-gear', '', false, 'side left, wheel main'],
    ['right-main-gear', '', false, 'side right, wheel main'],
    ['left-wing-and-gear', '', false, 'side left'],
    ['left-wing-and-gear', '', true, 'side left, wheel main'],
    ['left-flap-aileron', '', true, 'side left'],
  ])('at %s, "%s", about the gear: %s', (area, text, gear, expected) => {
    expect(said(text, area, gear)).toBe(expected);
  });
});

describe('two writings held against each other', () => {
  test.each<[one: string, other: string, shared: string[], against: [string, string][]]>([
    ['', '', [], []],
    ['left', '', [], []],
    ['', 'left', [], []],
    ['left', 'lh', ['left'], []],
    ['left', 'right', [], [['left', 'right']]],
    ['left right', 'right', ['right'], []],
    ['left right', 'right left', ['left and right'], []],
    ['right and left', 'left and right', ['left and right'], []],
    ['upper', 'top', ['upper'], []],
    ['upper', 'bottom', [], [['upper', 'lower']]],
    ['front', 'aft', [], [['front', 'rear']]],
    ['inboard', 'outer', [], [['inboard', 'outboard']]],
    ['nose wheel', 'nosewheel', ['nose gear'], []],
    ['nosewheel', 'mains', [], [['nose gear', 'main gear']]],
    ['com 1', 'com 1', ['number 1'], []],
    ['com 1', 'com 2', [], [['number 1', 'number 2']]],
    ['front inboard upper left', 'upper left aft', ['left', 'upper'], [['front', 'rear']]],
    ['left', 'upper', [], []],
    // A part that both give a side goes before the sides of the whole text; one that only one of them does is not looked at.
    ['left brake right seat', 'right brake left seat', [], [['left', 'right']]],
    ['left brake right seat', 'left brake', ['left'], []],
    ['right brake left seat', 'left brake right seat', [], [['right', 'left']]],
    ['left seat right brake', 'left brake', [], [['right', 'left']]],
    ['left seat right brake', 'left tyre', ['left'], []],
    ['left brake', 'left tyre', ['left'], []],
    ['right seat left brake', 'left tyre right seat', ['right'], []],
    ['right seat left brake', 'right brake right seat', [], [['left', 'right']]],
    ['left brake right tyre', 'left tyre right seat', [], [['right', 'left']]],
    ['left brake', 'brake right', [], [['left', 'right']]],
    ['right seat left brake', 'brake right', ['right'], []],
  ])('"%s" and "%s"', (one, other, shared, against) => {
    expect(comparePositions(written(one), written(other))).toEqual({ shared, against });
  });
});
