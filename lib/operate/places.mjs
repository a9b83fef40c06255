/** Where things are kept on disk, seen from the repository's root. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The repository's root. */
export const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Everything a run leaves behind and wants to find again: database files, secrets, who is running. */
export const DATA = path.join(ROOT, '.data');

/**
 * A path inside the repository.
 * @param {...string} parts
 * @returns {string}
 */
export function inRepository(...parts) {
  return path.join(ROOT, ...parts);
}
