/**
 * What a screen makes of the words of the stream. Source: issue 5, "nothing stale shown as fresh"; the rest is common practice,
 * no source.
 */
import { describe, expect, test } from 'vitest';
import { ageInWords } from '@/app/_ui/age';
import { hear, HEARD_NOTHING, isLive, readWord, SILENT_AFTER_MS, type Heard } from '@/app/_ui/live/words';
import { readChange } from '@/lib/live/change';
import { inEnglish } from '@/lib/words/translate';

const NOW = 1_000_000;
const numbered: Heard = { ...HEARD_NOTHING, numbered: true, shownSeq: 7 };
const beat = (seq: number | null, listening = true) => ({ kind: 'beat', seq, listening }) as const;

describe('a screen that knows how far the records were when it was drawn', () => {
  test.each([
    ['a change before it', { kind: 'change', seq: 6 }, false],
    ['the change it shows', { kind: 'change', seq: 7 }, false],
    ['a change after it', { kind: 'change', seq: 8 }, true],
    ['a beat before it', beat(6), false],
    ['a beat at it', beat(7), false],
    ['a beat after it: a word was lost', beat(8), true],
    ['a beat without a number: the database is silent', beat(null, false), false],
    ['that words may be lost: the beat that follows tells', { kind: 'again' }, false],
    ['that the stream broke', { kind: 'down' }, true],
  ] as const)('%s', (_, word, look) => {
    const after = hear(numbered, word, NOW);
    expect(after.look).toBe(look);
    // Only a new drawing raises what is shown: a look that failed is asked for again by the next beat.
    expect(after.heard.shownSeq).toBe(7);
  });
});

test('a screen without a number looks once at the start, then at what is newer', () => {
  const looks: boolean[] = [];
  let heard = HEARD_NOTHING;
  for (const word of [beat(7), beat(7), { kind: 'change', seq: 8 }, beat(8), beat(9)] as const) {
    const after = hear(heard, word, NOW);
    looks.push(after.look);
    heard = after.heard;
  }
  expect(looks).toEqual([true, false, true, false, true]);
  expect(hear(heard, { kind: 'again' }, NOW).look).toBe(true);
});

describe('whether a change would be told', () => {
  const { heard } = hear(numbered, beat(7), NOW);
  test.each([
    ['at the beat', heard, NOW, true],
    ['just before the silence is too long', heard, NOW + SILENT_AFTER_MS - 1, true],
    ['when it is as long as it may be', heard, NOW + SILENT_AFTER_MS, true],
    ['just after', heard, NOW + SILENT_AFTER_MS + 1, false],
    ['after the clock was put back', heard, NOW - 1, false],
    ['before any beat', numbered, NOW, false],
    ['when the server does not listen', hear(numbered, beat(7, false), NOW).heard, NOW, false],
    ['after the stream broke', hear(heard, { kind: 'down' }, NOW).heard, NOW, false],
  ])('%s', (_, after, now, live) => expect(isLive(after, now)).toBe(live));
});

test.each([
  ['change', { seq: 3 }, { kind: 'change', seq: 3 }],
  ['change', {}, null],
  ['change', { seq: '3' }, null],
  ['beat', { at: 'now', seq: 3, listening: true }, { kind: 'beat', seq: 3, listening: true }],
  ['beat', { seq: null, listening: 'yes' }, { kind: 'beat', seq: null, listening: false }],
  ['again', null, { kind: 'again' }],
  ['down', {}, { kind: 'down' }],
  ['of a newer version', {}, null],
  [undefined, 'text', null],
])('a message %s %j is read as %j', (kind, data, word) => expect(readWord(kind, data)).toEqual(word));

const OPERATOR = '0d7a3a52-6a3c-4b51-9a0e-6a5b5a0c1d2e';
test.each([
  [JSON.stringify({ operatorId: OPERATOR, seq: 1 }), { operatorId: OPERATOR, seq: 1 }],
  [JSON.stringify({ operatorId: OPERATOR, seq: 0 }), null],
  [JSON.stringify({ operatorId: OPERATOR, seq: 1.5 }), null],
  [JSON.stringify({ operatorId: 'x', seq: 1 }), null],
  ['{', null],
  ['null', null],
  [undefined, null],
])('a notification %s is read as %j', (payload, change) => expect(readChange(payload)).toEqual(change));

test.each([
  [null, 'age not known'],
  [0, '0 s ago'],
  [999, '0 s ago'],
  [1000, '1 s ago'],
  [59_999, '59 s ago'],
  [60_000, '1 min 0 s ago'],
  [125_000, '2 min 5 s ago'],
  [3_599_999, '59 min 59 s ago'],
  [3_600_000, '1 h ago'],
])('%s ms old: %s', (ms, words) => expect(ageInWords(inEnglish, ms)).toBe(words));
