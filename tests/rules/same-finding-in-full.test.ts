/**
 * The matcher "is it this one?", point by point as the head of lib/rules/findings/same-finding.ts says them. Points, families and
 * thresholds are our own; there is no outside source.
 */
import { describe, expect, test } from 'vitest';
import { likelyTheSame, type MatchDraft, type MatchWriteUp } from '@/lib/rules/findings/same-finding';

/** Place +20 and four words +16: shown with nothing else known of it. */
const filed: MatchWriteUp = {
  id: 'a',
  number: 'W-0001',
  title: '',
  station: 'cabin',
  place: '',
  words: 'zebra yonder xenon walrus',
  jasc: '',
  kind: 'wear',
  findingKey: null,
  state: 'open',
};
const typed: MatchDraft = {
  station: 'cabin',
  findingKey: null,
  kind: null,
  jasc: null,
  place: '',
  words: filed.words,
};
const PLACE = 'Same place: cabin.';
const WORDS = 'Both speak of: walrus, xenon, yonder, zebra.';

const compared = (draft: Partial<MatchDraft>, writeUp: Partial<MatchWriteUp> = {}) => {
  const found = likelyTheSame({ ...typed, ...draft }, [{ ...filed, ...writeUp }])[0];
  return found ? { score: found.score, because: found.because } : null;
};

test('place and words alone', () => {
  expect(compared({})).toEqual({ score: 36, because: [PLACE, WORDS] });
});

describe('the finding', () => {
  const title = 'Wobbly thing';
  const sameCode = 'Same part of the system: 7200.';
  const withCode = (mine: string, theirs: string) =>
    compared({ findingKey: mine, jasc: '7200' }, { findingKey: theirs, title, jasc: '7200' });

  test('the same one: its code adds nothing', () => {
    expect(withCode('oil-low', 'oil-low')).toEqual({
      score: 38 + 36,
      because: [`Same finding: ${title}.`, PLACE, WORDS],
    });
  });

  test('another one counts against it', () => {
    expect(withCode('oil-low', 'tyre-worn')).toEqual({
      score: -24 + 16 + 36,
      because: [`But another finding: ${title}.`, sameCode, PLACE, WORDS],
    });
  });

  // Two of every family; a finding may be of two families, and its friends are then no friends of one another.
  test.each([
    ['propeller-nick', 'propeller-bent'],
    ['propeller-erosion', 'propeller-crack'],
    ['tyre-worn', 'tyre-cut'],
    ['tyre-cord', 'tyre-flat-spot'],
    ['nose-strut-low', 'strut-leak'],
    ['brake-leak', 'brake-soft'],
    ['brake-pads-worn', 'brake-soft'],
    ['water-cleared', 'fuel-dirt'],
    ['water-keeps-coming', 'water-cleared'],
    ['fuel-stain', 'fuel-cap-seal'],
    ['fuel-drain-drips', 'fuel-stain'],
    ['engine-oil-leak', 'oil-low'],
    ['oil-cooler-leak', 'engine-oil-leak'],
    ['exhaust-crack', 'muffler-crack'],
    ['alternator-belt', 'battery-weak'],
    ['alternator-dead', 'alternator-belt'],
    ['position-light-dead', 'light-lens-broken'],
    ['landing-light-dead', 'light-lens-broken'],
    ['anticollision-light-dead', 'light-lens-broken'],
    ['pitot-blocked', 'pitot-heat-dead'],
    ['control-stiff', 'control-cable-wire'],
    ['control-stiff', 'surface-hinge-loose'],
    ['baffle-torn', 'inlet-nest'],
    ['cowl-fastener-missing', 'baffle-torn'],
  ])('%s is easily taken for %s, and the other way round', (one, other) => {
    const expected = {
      score: 20 + 16 + 36,
      because: [`A finding easily taken for this one: ${title}.`, sameCode, PLACE, WORDS],
    };
    expect(withCode(one, other)).toEqual(expected);
    expect(withCode(other, one)).toEqual(expected);
  });

  test.each([
    ['brake-leak', 'brake-pads-worn'],
    ['position-light-dead', 'landing-light-dead'],
    ['control-cable-wire', 'surface-hinge-loose'],
    ['inlet-nest', 'cowl-fastener-missing'],
    ['propeller-nick', 'tyre-worn'],
  ])('%s is not taken for %s', (one, other) => {
    expect(withCode(one, other)?.because[0]).toBe(`But another finding: ${title}.`);
  });

  test('where one of them has none, it says nothing', () => {
    expect(compared({ findingKey: 'oil-low' }, { title })).toEqual({ score: 36, because: [PLACE, WORDS] });
    expect(compared({}, { findingKey: 'oil-low', title })).toEqual({ score: 36, because: [PLACE, WORDS] });
  });
});

describe('the system', () => {
  const same = { findingKey: 'basic-instrument-faulty' };
  test.each([
    ['neither known', '', '', null, 36],
    ['one known', '3414', '', null, 36],
    ['the other known', '', '3414', null, 36],
    ['the same part of it', '3414', '3414', 'Same part of the system: 3414.', 36 + 16],
    ['the same system', '3416', '3414', 'Same system: 34.', 36 + 6],
    ['the end of one is the other’s beginning', '7134', '3414', null, null],
  ] as const)('%s', (_, mine, theirs, say, score) => {
    expect(compared({ jasc: mine }, { jasc: theirs })).toEqual(
      score === null ? null : { score, because: [...(say === null ? [] : [say]), PLACE, WORDS] },
    );
  });

  test('another system counts against it, and both are named', () => {
    expect(compared({ jasc: '7134', kind: 'wear' }, { jasc: '3414' })).toEqual({
      score: 36 - 10 + 4,
      because: ['But another system: 71, not 34.', 'Same kind of trouble: wear.', PLACE, WORDS],
    });
  });

  test('with the same finding another code is another of its kind; one that is not known is none', () => {
    expect(compared({ ...same, jasc: '3416' }, { ...same, jasc: '3414', title: 'T' })).toEqual({
      score: 38 - 34 + 36,
      because: ['Same finding: T.', 'But another of its kind: 3416, not 3414.', PLACE, WORDS],
    });
    expect(compared({ ...same, jasc: null }, { ...same, jasc: '3414', title: 'T' })?.score).toBe(38 + 36);
  });
});

test('the kind counts where the finding is not the same, and where it is known', () => {
  expect(compared({ kind: 'wear' })?.score).toBe(36 + 4);
  expect(compared({ kind: 'leak' })).toEqual({ score: 36, because: [PLACE, WORDS] });
  const same = { findingKey: 'oil-low', kind: 'wear' };
  expect(compared(same, { ...same, title: 'T' })?.because).toEqual(['Same finding: T.', PLACE, WORDS]);
});

describe('the words', () => {
  test('titles count where the finding is not the same, parts, troubles and other words', () => {
    const draft = { ...typed, words: 'zebra yonder', title: 'Strut leaking quokka' };
    const writeUp = { words: 'zebra yonder', title: 'Strut leaking quokka' };
    const both = 'Both speak of: strut, leak, quokka, yonder, zebra.';
    expect(compared(draft, writeUp)).toEqual({
      // 12 + 6 + 4 + 4 + 4, and no more than 28.
      score: 20 + 28,
      because: [PLACE, both],
    });
    expect(
      compared({ ...draft, findingKey: 'nose-strut-low' }, { ...writeUp, findingKey: 'strut-leak' })?.because,
    ).toEqual([`A finding easily taken for this one: ${writeUp.title}.`, PLACE, both]);
    expect(
      compared({ ...draft, findingKey: 'strut-leak' }, { ...writeUp, findingKey: 'strut-leak' })?.because,
    ).toEqual([`Same finding: ${writeUp.title}.`, PLACE, 'Both speak of: yonder, zebra.']);
  });

  test('nothing in common says nothing', () => {
    const same = { findingKey: 'oil-low' };
    expect(compared({ ...same, words: 'gnu' }, { ...same, title: 'T' })).toEqual({
      score: 38 + 20,
      because: ['Same finding: T.', PLACE],
    });
  });

  test('twins of one family, and only other parts, count against it by name', () => {
    const same = { findingKey: 'control-stiff', words: 'rudder stiff' };
    expect(compared(same, { ...same, title: 'T', words: 'elevator stiff' })).toEqual({
      score: 38 + 20 + 6 - 26,
      because: [
        'Same finding: T.',
        PLACE,
        'Both speak of: stiff.',
        'But another part: elevator, not rudder.',
      ],
    });
    expect(
      compared({ ...same, words: 'tyre, brake' }, { ...same, title: 'T', words: 'battery, alternator' }),
    ).toEqual({
      score: 38 + 20 - 16,
      because: ['Same finding: T.', PLACE, 'But another part: battery, alternator, not tyre, brake.'],
    });
  });
});

describe('what is seen from the wing with the gear', () => {
  const shared = (draft: Partial<MatchDraft>) =>
    compared(
      { station: 'left-wing-and-gear', ...draft },
      { station: 'left-main-gear', words: `${filed.words} ${draft.words ?? ''}` },
    )?.because.find((say) => say.startsWith('Same position'));

  test.each(['tyre-worn', 'brake-leak', 'wheel-cracked', 'gear-cotter-missing'])(
    '%s is at a main wheel',
    (findingKey) => {
      expect(shared({ findingKey })).toBe('Same position: left, main gear.');
    },
  );

  test.each(['tyre', 'wheel', 'brake', 'leg'])('so is what speaks of a %s', (part) => {
    expect(shared({ words: `zebra yonder xenon walrus ${part}` })).toBe('Same position: left, main gear.');
  });

  test('the rest is on the left, no more', () => {
    expect(shared({ findingKey: 'landing-light-dead' })).toBe('Same position: left.');
    expect(shared({})).toBe('Same position: left.');
  });
});

describe('equal scores', () => {
  const order = (...books: MatchWriteUp[]) =>
    likelyTheSame(typed, books).map(({ writeUp }) => `${writeUp.number}${writeUp.id}`);
  const one = (number: string, id: string): MatchWriteUp => ({ ...filed, number, id });

  test('go by number, and of one number by their own id, however they come', () => {
    const sorted = ['1a', '1b', '2a', '3c'];
    const [a, b, c, d] = [one('1', 'a'), one('1', 'b'), one('2', 'a'), one('3', 'c')];
    expect(order(a, b, c, d)).toEqual(sorted);
    expect(order(d, c, b, a)).toEqual(sorted);
    expect(order(b, d, a, c)).toEqual(sorted);
    expect(order(c, a, d, b)).toEqual(sorted);
  });
});
