import { readdirSync, readFileSync } from 'node:fs';

/** Prints what survived, of all reports or of those files whose path holds the argument: `node tests/prove/mutation/survivors.mjs recall` */

const FOLDER = '.data/mutation';
const [asked = ''] = process.argv.slice(2);
const short = (text, most) => text.replaceAll(/\s+/g, ' ').trim().slice(0, most);

for (const name of readdirSync(FOLDER).filter((file) => /^report-.*\.json$/.test(file))) {
  const { files } = JSON.parse(readFileSync(`${FOLDER}/${name}`, 'utf8'));
  for (const [path, { source, mutants }] of Object.entries(files)) {
    if (!path.includes(asked)) continue;
    const alive = mutants.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
    if (alive.length > 0) process.stdout.write(`\n${path} (${name}): ${alive.length}\n`);
    for (const { location, status, mutatorName, replacement } of alive.toSorted(
      (one, other) => one.location.start.line - other.location.start.line,
    )) {
      const { line, column } = location.start;
      const note = status === 'NoCoverage' ? ' (no test comes by)' : '';
      process.stdout.write(
        `  ${line}:${column} ${mutatorName}${note}: ${short(source.split('\n')[line - 1], 100)}  =>  ${short(replacement, 80)}\n`,
      );
    }
  }
}
