/** The page of `npm run prove`. Source: issue 7 ("results go to docs/proof.md with the commands"). */
import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { PAGE, withFigures } from '../prove/page';
import { PARTS } from '../prove/parts';
import type { Row } from '../prove/row';

const ROW: Row = {
  part: 'A part',
  what: 'a | in a cell',
  command: 'npm run prove -- a-part',
  measured: '7 of 7',
  wanted: '7',
  good: true,
};

test.each(PARTS)('$name has its place on the page, and takes nobody else’s', async (part) => {
  const before = await readFile(PAGE, 'utf8');
  const after = await withFigures(before, part, 'Measured then and there.', [ROW]);
  const cells = after.split('\n').find((line) => line.includes('a-part')) ?? '';
  expect(cells.split(/(?<!\\)\|/).map((cell) => cell.trim())).toEqual([
    '',
    'good',
    'A part',
    String.raw`a \| in a cell`,
    '7 of 7',
    '7',
    '`npm run prove -- a-part`',
    '',
  ]);
  const without = (page: string) => {
    const [begin, end] = [`<!-- figures of ${part.name} -->`, `<!-- end of ${part.name} -->`];
    return page.slice(0, page.indexOf(begin)) + page.slice(page.indexOf(end));
  };
  expect(without(after)).toBe(without(before));
});

test('a page without the marks is not written over', async () => {
  await expect(withFigures('# Something else', PARTS[0]!, '', [ROW])).rejects.toThrow('lost its marks');
});
