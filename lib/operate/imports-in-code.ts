import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

export const ROOT = path.resolve(import.meta.dirname, '../..');

/** The TypeScript files of a folder of the repository, in order. */
export const codeIn = (folder: string): string[] =>
  readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll(path.sep, '/')}`)
    .filter((name) => /\.tsx?$/.test(name))
    .sort();

/** The files of app that those chosen come to by their imports, themselves included. */
export function reachedFrom(chosen: (file: string) => boolean): ReadonlySet<string> {
  const all = new Set(codeIn('app'));
  const reached = new Set([...all].filter(chosen));
  for (const file of reached) {
    const text = readFileSync(path.join(ROOT, file), 'utf8');
    for (const [, from = ''] of text.matchAll(/(?:from|import\()\s*'([^']+)'/g)) {
      const asked = from.startsWith('@/') ? from.slice(2) : path.posix.join(path.posix.dirname(file), from);
      const found = [`${asked}.ts`, `${asked}.tsx`].find((name) => all.has(name));
      if (found !== undefined && (from.startsWith('.') || from.startsWith('@/'))) reached.add(found);
    }
  }
  return reached;
}
