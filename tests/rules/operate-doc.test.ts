/** docs/operate.md holds every environment variable that code reads, and none besides. Source: issue 6, `docs/operate.md`. */
import { readdir, readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';

const READS = [
  /\bprocess\.env\.([A-Z][A-Z0-9_]+)/g,
  /\bprocess\.env\[['"]([A-Z][A-Z0-9_]+)['"]\]/g,
  /\benv\[['"]([A-Z][A-Z0-9_]+)['"]\]/g,
];
/** Lists of names that are read by a loop. */
const NAMED_IN = /['"]((?:PHOTO_S3|OTEL|SMTP|MAIL)_[A-Z0-9_]+)['"]/g;

async function sources(): Promise<string[]> {
  const files = ['instrumentation.ts', 'next.config.ts', 'playwright.config.ts'];
  for (const folder of ['lib', 'app']) {
    for (const file of await readdir(folder, { recursive: true })) {
      if (/\.(ts|tsx|mjs)$/.test(file) && !file.includes('generated')) files.push(`${folder}/${file}`);
    }
  }
  return files;
}

test('what is read is told, and what is told is read', async () => {
  const read = new Set<string>();
  for (const file of await sources()) {
    const text = await readFile(file, 'utf8');
    for (const pattern of [...READS, NAMED_IN])
      for (const [, name = ''] of text.matchAll(pattern)) read.add(name);
  }
  const doc = await readFile('docs/operate.md', 'utf8');
  const settings = doc.split(/^## /m).find((section) => section.startsWith('Settings')) ?? '';
  const told = [...settings.matchAll(/^\| `([A-Z][A-Z0-9_]+)`/gm)].map(([, name]) => name ?? '');
  expect(read.size).toBeGreaterThan(20);
  expect([...new Set(told)]).toEqual(told);
  expect(told.toSorted()).toEqual([...read].toSorted());
});
