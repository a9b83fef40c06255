/**
 * `npm run restore -- <folder>`: a backup into an empty database (DATABASE_URL, or the one of `npm start`). Keeps nothing
 * unless rows, chains, signatures and files are those of the backup. `--without-files` leaves photos and proofs for later.
 */
import { restoreBackup } from './backup/restore-into';
import { withPlace } from './backup/where';
import { runAsProgram } from './run-as-program';
import { Trouble, say } from './say.mjs';
import { keptSecret } from './secrets';

const WITHOUT = '--without-files';

async function command(): Promise<number> {
  const words = process.argv.slice(2);
  const [folder, ...more] = words.filter((word) => word !== WITHOUT);
  if (!folder || folder.startsWith('-') || more.length > 0) {
    throw new Trouble(`Say which backup: npm run restore -- <folder> [${WITHOUT}].`);
  }
  const withoutFiles = words.includes(WITHOUT);
  const { manifest, rows, auditRows, verified, filesVerified, migrated, appUrl } = await withPlace(
    true,
    async ({ ownerUrl, photos, passwordName }) => {
      const chosen = process.env['APP_DATABASE_URL'] || undefined;
      const appPassword = chosen === undefined ? await keptSecret(passwordName) : undefined;
      return restoreBackup(ownerUrl, folder, { appUrl: chosen, appPassword, photos, withoutFiles });
    },
  );
  say(
    `Restored the state of ${manifest.takenAt} and verified it: ${rows} rows of ${manifest.tables.length} tables by count and ` +
      `sum, ${auditRows} audit rows of ${manifest.operators.length} chains, ${verified.signatures} signatures, ` +
      `${filesVerified} files.`,
  );
  if (migrated.length > 0) say(`Then applied: ${migrated.join(', ')}`);
  if (withoutFiles) say(`Photos and proofs (${manifest.files.count}) were left for later.`);
  for (const fault of verified.faults) say(`As when it was backed up, does not verify: ${fault}`);
  for (const { key, why } of manifest.files.lost) say(`As when it was backed up, file ${key}: ${why}`);
  if (process.env['DATABASE_URL'] && !process.env['APP_DATABASE_URL']) {
    say('The web server’s account (keep this address secret):');
    say(`APP_DATABASE_URL=${appUrl}`);
  }
  return 0;
}

runAsProgram(import.meta.url, command);
