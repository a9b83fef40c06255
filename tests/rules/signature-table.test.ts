/**
 * docs/electronic-signatures.md against the repository: issue 4, "a table in docs maps each point to code and test". The points
 * are those of AC 120-78B as the table itself says how sure we are of them.
 */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const text = readFileSync('docs/electronic-signatures.md', 'utf8');

interface Point {
  readonly number: number;
  readonly what: string;
  readonly code: readonly string[];
  readonly tests: readonly { readonly file: string; readonly title: string }[];
}

const points: readonly Point[] = [...text.matchAll(/^\| +(\d+) +\|(.*)\|$/gm)].map(([, number, row = '']) => {
  const [what = '', , code = '', tests = ''] = row.split('|').map((cell) => cell.trim());
  return {
    number: Number(number),
    what,
    code: [...code.matchAll(/`([^`]+)`/g)].map(([, file = '']) => file),
    tests: [...tests.matchAll(/`([^`]+)` "([^"]+)"/g)].map(([, file = '', title = '']) => ({ file, title })),
  };
});

test('there are 28 points, numbered without a gap', () => {
  expect(points.map(({ number }) => number)).toEqual(Array.from({ length: 28 }, (_, index) => index + 1));
});

test('only backup, where data lies, and telling the authority have neither code nor test', () => {
  const bare = points.filter(({ code, tests }) => code.length === 0 || tests.length === 0);
  expect(bare.map(({ number }) => number)).toEqual([20, 27, 28]);
  for (const { code, tests } of bare) expect([...code, ...tests]).toEqual([]);
});

describe.each(points.filter(({ code }) => code.length > 0))('point $number: $what', ({ code, tests }) => {
  test.each(code)('its code is there: %s', (file) => {
    expect(existsSync(file)).toBe(true);
  });
  test.each(tests)('$file has the test "$title"', ({ file, title }) => {
    expect(existsSync(file)).toBe(true);
    const named = [`'${title}'`, `"${title}"`, `\`${title}\``];
    const source = readFileSync(file, 'utf8');
    expect(
      named.some((quoted) => new RegExp(`(test|it|describe)\\(\\s*${escaped(quoted)}`).test(source)),
    ).toBe(true);
  });
});

const escaped = (words: string): string => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

test('no cell names a test that the pattern above does not see', () => {
  const quotes = points.reduce((sum, { tests }) => sum + tests.length, 0);
  const cells = [...text.matchAll(/^\| +\d+ +\|.*\|$/gm)].map(([row]) => row.split('|').at(-2) ?? '');
  expect(cells.reduce((sum, cell) => sum + (cell.match(/"[^"]+"/g)?.length ?? 0), 0)).toBe(quotes);
  expect(quotes).toBeGreaterThan(30);
});

test('the procedure stands in this paper', () => {
  const procedure = text.split('## Procedure')[1] ?? '';
  for (const step of [
    'Owner',
    'Accounts',
    'Passwords',
    'Leaving',
    'Signing',
    'Correcting',
    'When the system is down',
    'On sale',
    'Training',
  ]) {
    expect(procedure).toContain(`**${step}.**`);
  }
});

test('how sure the source is stands above the table', () => {
  const [before = ''] = text.split('## The table');
  expect(before).toContain('**Checked**');
  expect(before).toContain('**Memory**');
  expect(before).toContain('11 December 2024');
});
