/** What decides an answer, in a few words for the board. Our design, no source. */
import { expect, it } from 'vitest';
import { headline } from '@/lib/rules/answer';
import type { Line } from '@/lib/rules/verdict';

const line = (change: Partial<Line>): Line => ({
  effect: 'bars',
  cite: '14cfr91.7(a)',
  because: 'First sentence. Second one.',
  ...change,
});
const of = (...lines: readonly Line[]) => headline({ outcome: 'no-go', lines });

it.each([
  // A write-up is known on the board by its words, not by its number.
  [
    'a write-up',
    line({ about: { kind: 'discrepancy', id: 'd', label: 'W-0001 Taxi light out' } }),
    'Taxi light out',
  ],
  [
    'a deferral',
    line({ about: { kind: 'deferral', id: 'd', label: 'W-0001 Taxi light out' } }),
    'Taxi light out',
  ],
  ['its number alone is cut off', line({ about: { kind: 'deferral', id: 'd', label: 'Taxi' } }), 'Taxi'],
  ['equipment', line({ about: { kind: 'equipment', id: 'e', label: 'Taxi light' } }), 'First sentence'],
  ['nothing', line({}), 'First sentence'],
] as const)('%s', (_what, deciding, words) => {
  expect(of(deciding)).toBe(words);
  expect(of(line({ effect: 'notes', because: 'A note.' }), { ...deciding, effect: 'limits' })).toBe(words);
});

it('none decides', () => {
  expect(of(line({ effect: 'supports' }))).toBe('Nothing looked at');
  expect(headline({ outcome: 'go', lines: [line({ effect: 'notes' })] })).toBe('In order');
});

// After 60 letters at most, between words where there are any.
it.each([
  ['x'.repeat(59), 'x'.repeat(59)],
  ['x'.repeat(60), 'x'.repeat(60)],
  ['x'.repeat(61), `${'x'.repeat(60)}…`],
  [`${'x'.repeat(30)} ${'y'.repeat(40)}`, `${'x'.repeat(30)}…`],
])('cuts %s', (text, words) => {
  expect(of(line({ because: text }))).toBe(words);
});
