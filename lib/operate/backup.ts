/**
 * `npm run backup -- <folder>`: everything as it is at one moment, into a new folder. `npm run backup -- --check <folder>`
 * looks a backup over without a database. docs/operate.md says how often, and where to.
 */
import { checkBackup } from './backup/check';
import { readSums, SUMS } from './backup/manifest';
import { withPlace } from './backup/where';
import { writeBackup } from './backup/write';
import { runAsProgram } from './run-as-program';
import { Trouble, say } from './say.mjs';

const USAGE =
  'Say where to: npm run backup -- <new folder>; or npm run backup -- --check <folder of a backup>.';

async function command(): Promise<number> {
  const words = process.argv.slice(2);
  const isCheck = words[0] === '--check';
  const [folder, ...more] = isCheck ? words.slice(1) : words;
  if (!folder || folder.startsWith('-') || more.length > 0) throw new Trouble(USAGE);
  return isCheck ? check(folder) : backUp(folder);
}

async function backUp(folder: string): Promise<number> {
  const manifest = await withPlace(false, ({ ownerUrl, photos }) => writeBackup(ownerUrl, folder, photos));
  const rows = manifest.tables.reduce((all, table) => all + table.rows, 0);
  const { files, verified, operators, keptApart } = manifest;
  say(
    `Backed up to ${folder}: ${rows} rows of ${manifest.tables.length} tables, ${operators.length} operators, ` +
      `${files.count - files.lost.length} files${files.kept === 'bucket' ? ' named (their bytes are in the bucket)' : ''}.`,
  );
  if (verified === null) {
    say('The database is older than this program, so chains and signatures were not verified.');
  }
  say(`Not in it, keep apart:\n${keptApart.map((what) => `  ${what}`).join('\n')}`);
  const bad = [
    ...(verified?.faults ?? []).map((fault) => `does not verify: ${fault}`),
    ...files.lost.map(({ key, why }) => `file ${key}: ${why}`),
  ];
  for (const what of bad) console.error(what);
  if (bad.length > 0) {
    console.error(
      `The backup is whole, but what it holds was not: ${bad.length} faults, above. Look into them now.`,
    );
  }
  return (await check(folder)) || (bad.length > 0 ? 1 : 0);
}

async function check(folder: string): Promise<number> {
  const { manifest, rows, files, sum } = await checkBackup(folder);
  const count = (await readSums(folder)).size;
  say(
    `Verified the backup of ${manifest.takenAt}: ${count} files, ${rows} rows of ${manifest.tables.length} tables, ` +
      `${files} photos and proofs are as they were written.`,
  );
  say(`Sum of ${SUMS}, to be written down elsewhere: ${sum}`);
  return 0;
}

runAsProgram(import.meta.url, command);
