import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { reachedFrom } from './imports-in-code';
import { wordsInCode } from './words-in-code';
import { say } from './say.mjs';

/**
 * `npm run words`: reads the code for its words, sorts the Spanish ones into one file an area, and tells what is missing and what is
 * no longer said. `lib/words/en.json` is the list for a translator: each message with the files it stands in.
 */
const FOLDER = path.resolve(import.meta.dirname, '../words');
const AREAS = ['ui', 'lib', 'ramp', 'bench', 'desk', 'office'] as const;
type Area = (typeof AREAS)[number];

/** Whose words come only to their own pages (app/_words/more-words.tsx). */
const GROUND = /^app\/(?:bench|desk|office)\//;
const everywhere = reachedFrom((file) => file.startsWith('app/') && !GROUND.test(file));

const { messages, unreadable } = wordsInCode();
const spanish = Object.assign({}, ...readdirSync(path.join(FOLDER, 'es')).filter(isJson).map(read)) as Record<
  string,
  string
>;

const sorted = [...messages].sort(([a], [b]) => (a < b ? -1 : 1));
write('en.json', Object.fromEntries(sorted.map(([message, files]) => [message, files])));
for (const area of AREAS) {
  const ours = sorted.flatMap(([message, files]): [string, string][] => {
    const translated = spanish[message];
    return translated !== undefined && areaOf(files) === area ? [[message, translated]] : [];
  });
  write(`es/${area}.json`, Object.fromEntries(ours));
}

const missing = sorted.filter(([message]) => spanish[message] === undefined);
const leftOver = Object.keys(spanish).filter((message) => !messages.has(message));
say(
  `${messages.size} messages; ${missing.length} without Spanish; ${leftOver.length} no longer said, taken out.`,
);
for (const [message, files] of missing) say(`  ${files[0] ?? ''}: ${message}`);
for (const one of unreadable) say(`  cannot be read: ${one}`);
process.exitCode = missing.length + unreadable.length > 0 ? 1 : 0;

/**
 * Where the words of a message are kept: what is said in lib comes in one piece over the wire, so all of it is together
 * (lib/words/es/make.ts); bench, desk and office have files of their own, which a phone on the ramp never fetches.
 */
function areaOf(files: readonly string[]): Area {
  if (files.some((file) => file.startsWith('lib/'))) return 'lib';
  if (!files.every((file) => GROUND.test(file) && !everywhere.has(file))) {
    return files.every((file) => file.startsWith('app/ramp/')) ? 'ramp' : 'ui';
  }
  for (const area of ['bench', 'desk'] as const) {
    if (files.some((file) => file.startsWith(`app/${area}/`))) return area;
  }
  return 'office';
}

function isJson(name: string): boolean {
  return name.endsWith('.json');
}

function read(name: string): Record<string, string> {
  return JSON.parse(readFileSync(path.join(FOLDER, 'es', name), 'utf8')) as Record<string, string>;
}

function write(name: string, content: unknown): void {
  writeFileSync(path.join(FOLDER, name), `${JSON.stringify(content, null, 2)}\n`);
}
