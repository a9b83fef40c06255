/**
 * Stamps: "this was made from exactly these sources". A stamp lies inside the thing it speaks of
 * (`node_modules`, the generated client, `.next`), so that deleting the thing deletes the claim too.
 */
import { createHash } from 'node:crypto';
import { mkdir, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from './places.mjs';

/**
 * Every file under the given paths, in a stable order. A path that does not exist gives nothing.
 * @param {string[]} paths relative to the root; files or folders
 * @param {(relative: string) => boolean} [skip]
 * @returns {Promise<string[]>}
 */
async function filesUnder(paths, skip = () => false) {
  const found = [];
  for (const relative of paths) {
    if (skip(relative)) {
      continue;
    }
    const entries = await readdir(path.join(ROOT, relative), { withFileTypes: true }).catch((error) => {
      if (error.code === 'ENOTDIR') {
        return 'file';
      }
      if (error.code === 'ENOENT') {
        return 'nothing';
      }
      throw error;
    });
    if (entries === 'file') {
      found.push(relative);
    } else if (Array.isArray(entries)) {
      const inside = entries.map((entry) => `${relative}/${entry.name}`);
      found.push(...(await filesUnder(inside, skip)));
    }
  }
  return found.sort();
}

/**
 * One sum over names and contents.
 * @param {string[]} paths relative to the root
 * @param {(relative: string) => boolean} [skip]
 * @returns {Promise<string>} sha256, hexadecimal
 */
export async function sumOf(paths, skip) {
  const sum = createHash('sha256');
  for (const relative of await filesUnder(paths, skip)) {
    const content = await readFile(path.join(ROOT, relative));
    sum.update(`${relative}\0${content.length}\0`).update(content);
  }
  return sum.digest('hex');
}

/**
 * Does the stamp say that the thing was made from this sum?
 * @param {string} stampFile relative to the root
 * @param {string} sum
 */
export async function isStamped(stampFile, sum) {
  const written = await readFile(path.join(ROOT, stampFile), 'utf8').catch(() => '');
  return written.trim() === sum;
}

/**
 * Takes the claim away before the thing is made again, so that a half-made thing carries none.
 * @param {string} stampFile
 */
export async function removeStamp(stampFile) {
  await rm(path.join(ROOT, stampFile), { force: true });
}

/**
 * @param {string} stampFile
 * @param {string} sum
 */
export async function writeStamp(stampFile, sum) {
  const file = path.join(ROOT, stampFile);
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, `${sum}\n`);
}
