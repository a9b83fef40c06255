import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';

const RULES = 'lib/rules';

/** Lines drawn together: most of what is mutated lies within so many. */
const WINDOW = 10;

/** The same lines on every machine, so that a figure can be had again. After tests were written against what a lot showed, draw another. */
const LOT = 'wheelchock 2';

/**
 * Lines of all files of lib/rules, drawn by lot, as Stryker wants them named (`file:11-20`): every window of ten lines has one
 * chance in `oneIn`. All of them take hours; these tell within a few hundredths what all would come to.
 */
export async function sampleOfRules(oneIn: number): Promise<string[]> {
  const drawn: string[] = [];
  const names = await readdir(RULES, { recursive: true });
  for (const name of names.filter((one) => one.endsWith('.ts')).toSorted()) {
    const file = path.posix.join(RULES, name.split(path.sep).join('/'));
    const lines = (await readFile(file, 'utf8')).split('\n').length;
    for (let first = 1; first <= lines; first += WINDOW) {
      const lot = createHash('sha256').update(`${LOT} ${file} ${first}`).digest().readUInt32BE(0);
      if (lot % oneIn === 0) drawn.push(`${file}:${first}-${Math.min(first + WINDOW - 1, lines)}`);
    }
  }
  return drawn;
}

/** Where the share of all lies with 95 % confidence, in per cent (Wilson 1927; NIST/SEMATECH e-Handbook 7.2.4.1, from memory). */
export function wilson(noticed: number, all: number): readonly [number, number] {
  if (all === 0) return [0, 100];
  const z = 1.959964;
  const share = noticed / all;
  const middle = share + z ** 2 / (2 * all);
  const half = z * Math.sqrt((share * (1 - share)) / all + z ** 2 / (4 * all ** 2));
  const whole = 1 + z ** 2 / all;
  return [(100 * (middle - half)) / whole, (100 * (middle + half)) / whole];
}
