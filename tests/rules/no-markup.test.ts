/**
 * Stored words are never markup, and nobody's words are an address that is followed. React writes every word as text, so what is
 * left are the ways round it; none may stand in the source. Sources: issue 7 ("stored XSS in words and file names"); React's
 * documentation of dangerouslySetInnerHTML; HTML standard for what runs scripts, from memory.
 */
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { fileName } from '@/lib/papers/paper';

let sources: { file: string; text: string }[];
beforeAll(async () => {
  const files = (
    await Promise.all(
      ['app', 'lib'].map(async (folder) =>
        (await readdir(folder, { recursive: true })).map((file) => path.join(folder, file)),
      ),
    )
  ).flat();
  sources = await Promise.all(
    files
      .filter((file) => /\.(ts|tsx|mjs)$/.test(file) && !file.includes('generated'))
      .map(async (file) => ({ file, text: await readFile(file, 'utf8') })),
  );
});

test.each([
  [
    'HTML out of a string',
    /dangerouslySetInnerHTML|\.(?:inner|outer)HTML\b|insertAdjacentHTML|document\.write|createContextualFragment|DOMParser|srcDoc/,
  ],
  ['code out of a string', /\beval\(|new Function\(|setTimeout\(\s*['"`]|setInterval\(\s*['"`]|javascript:/],
  ['scripts, frames and objects of our own', /<script\b|<iframe\b|<object\b|<embed\b|next\/script/],
  ['an attribute by a name that somebody chose', /setAttribute\((?!['"])/],
])('nowhere is there %s', (_, pattern) => {
  expect(sources.length).toBeGreaterThan(500);
  const browser = sources.filter(({ file }) => file.startsWith('app/') && !file.startsWith('app/_guard/'));
  expect(browser.filter(({ text }) => pattern.test(text)).map(({ file }) => file)).toEqual([]);
});

// What people type that could be an address: of a webhook, of a document, of a source. Shown, never followed. (React 19 also
// refuses `javascript:` in a link, which helps only where a link is.)
test('no link leads where somebody typed', () => {
  const typed =
    /\b(?:href|src|action|formAction)=\{[^}]*\b(?:url|website|source|document|reference|limitSource)\b/;
  const found = sources.filter(({ file, text }) => file.endsWith('.tsx') && typed.test(text));
  expect(found.map(({ file }) => file)).toEqual(['app/ramp/_parts/mark-photo.tsx']);
});

test('the one `url` is of a picture that the phone holds in memory', () => {
  const { text = '' } = sources.find(({ file }) => file === 'app/ramp/_parts/picture-url.ts') ?? {};
  expect(text).toMatch(/URL\.createObjectURL\(picture\)/);
});

// RFC 6266, 4.3; RFC 9110, 5.5: a quote ends the name, a line break the header, a slash is a path.
test.each([
  'N0"; filename="evil.html',
  'N0\r\nSet-Cookie: a=b',
  '../../etc/passwd',
  '<script>',
  'N0\u202Efdp.exe',
  '=cmd',
  '',
])('a paper of an aircraft called %j has a plain name', (registration) => {
  expect(fileName(registration, registration, registration)).toMatch(/^[A-Za-z0-9-]*\.pdf$/);
});
