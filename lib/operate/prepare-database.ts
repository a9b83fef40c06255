import { runOrStop } from './children.mjs';
import { withClient } from './connection';
import { dropMadeObjects } from './made-objects';
import { LOGINS_FOLLOW, demoState } from './demo-state';
import { type Migrated, type MigrateOptions, migrate } from './migrate';
import { say } from './say.mjs';

/** Takes away what Wheelchock made in a database, after saying so. Everything else in it stays. */
export async function startAnew(adminUrl: string, database: string): Promise<void> {
  say(`Deleting everything Wheelchock made in the database ${database}; other objects in it stay.`);
  await withClient(adminUrl, dropMadeObjects);
}

/**
 * Migrates, and loads the demo where none is. A demo whose loading was cut short is made anew.
 * Gives the web account's address and the log-ins as text. `settings` are the web server's own that the demo is loaded
 * under as well, such as where photos are kept.
 */
export async function prepareDatabase(
  adminUrl: string,
  options: MigrateOptions,
  settings: Record<string, string | undefined> = {},
): Promise<{ appUrl: Migrated['appUrl']; logins: string }> {
  let migrated = await migrate(adminUrl, options);
  if (migrated.applied.length > 0) {
    say(`Migrated the database: ${migrated.applied.join(', ')}`);
  }
  let state = await demoState(adminUrl);
  if (state === 'cut short') {
    say('The last run was cut short while it loaded the demo; it is loaded anew.');
    await withClient(adminUrl, dropMadeObjects);
    migrated = await migrate(adminUrl, options);
    state = 'none';
  }
  if (state === 'none') {
    say('Loading the demo ...');
  }
  const printed = await runOrStop(
    'Loading the demo',
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', 'lib/operate/seed.ts'],
    { env: { ...settings, DATABASE_URL: adminUrl, APP_DATABASE_URL: migrated.appUrl } },
  );
  const at = printed.lastIndexOf(LOGINS_FOLLOW);
  return { appUrl: migrated.appUrl, logins: printed.slice(Math.max(at, 0)).trimEnd() };
}
