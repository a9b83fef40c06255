import { readFile, readdir, rm, stat, truncate, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { checkBackup } from '@/lib/operate/backup/check';
import { Trouble } from '@/lib/operate/say.mjs';

/** Changes of one bit; each in another file, somewhere in it. */
const BITS = 40;
const OTHERS = 12;

/**
 * Hurts a backup in one place after the other, puts each right again, and gives what the check did not refuse. The places
 * follow from a fixed number, so that each run does the same to the same backup.
 */
export async function hurtOneByOne(folder: string): Promise<{ tried: number; missed: string[] }> {
  const found = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = found
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
    .toSorted();
  const next = numbers(20261127);
  const one = () => files[next() % files.length] ?? '';
  const missed: string[] = [];
  let tried = 0;
  const hurt = async (what: string, file: string, act: (place: string, bytes: Buffer) => Promise<void>) => {
    const place = path.join(folder, file);
    const whole = await readFile(place);
    await act(place, whole);
    tried += 1;
    if (!(await refused(folder))) missed.push(`${what} of ${file}`);
    await writeFile(place, whole);
  };
  for (let at = 0; at < BITS; at += 1) {
    // The manifest and the sums are hurt for certain.
    const file = ['manifest.json', 'SHA256SUMS'][at] ?? one();
    const bit = next();
    await hurt(`bit ${bit}`, file, async (place, whole) => {
      const bytes = Buffer.from(whole);
      const byte = (bit >> 3) % bytes.length;
      bytes[byte] = (bytes[byte] ?? 0) ^ (1 << (bit & 7));
      await writeFile(place, bytes);
    });
  }
  for (let at = 0; at < OTHERS; at += 1) {
    await hurt('a cut', one(), async (place) => truncate(place, next() % (await stat(place)).size));
    await hurt('the lack', one(), (place) => rm(place));
  }
  await checkBackup(folder);
  return { tried, missed };
}

/** Refused in words for a person that name a file, not by a mishap. */
async function refused(folder: string): Promise<boolean> {
  try {
    await checkBackup(folder);
    return false;
  } catch (error) {
    return error instanceof Trouble && /SHA256SUMS|manifest\.json|\.gz\b/.test(error.message);
  }
}

/** Numbers from 0 to 2^31 - 1 that look like any (mulberry32). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 1) & 0x7fffffff;
  };
}
