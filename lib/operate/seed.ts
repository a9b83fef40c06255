import { LOGINS_FOLLOW, demoState, noteDemo } from './demo-state';
import { Trouble, say } from './say.mjs';
import { runAsProgram } from './run-as-program';

/**
 * Loads the demo into a migrated database that has none, and prints its log-ins. Runs as a program of its own because
 * the services it goes through are written for the server (`--conditions=react-server`, see package.json).
 *
 * Takes DATABASE_URL (owner) and APP_DATABASE_URL (web account).
 */
async function command(): Promise<void> {
  const adminUrl = process.env['DATABASE_URL'];
  const appUrl = process.env['APP_DATABASE_URL'];
  if (!adminUrl || !appUrl) {
    throw new Trouble(
      'Loading the demo needs DATABASE_URL and APP_DATABASE_URL; npm run migrate prints the second.',
    );
  }
  const state = await demoState(adminUrl);
  if (state === 'other') {
    say('The database holds operators already; the demo is left out.');
    return;
  }
  if (state === 'cut short') {
    throw new Trouble(
      'An earlier loading of the demo was cut short. Start anew with: npm run demo -- --fresh',
    );
  }
  const { DEMO_LOGINS, loadDemo } = await import('./load-demo');
  if (state === 'none') {
    await noteDemo(adminUrl, 'loading');
    await loadDemo(adminUrl, appUrl, {});
    await noteDemo(adminUrl, 'loaded');
  }
  say(`${LOGINS_FOLLOW}\n${inColumns(DEMO_LOGINS)}`);
}

/** Rows of plain objects as aligned text. */
function inColumns(rows: readonly object[]): string {
  const cells = rows.map((row) =>
    Object.values(row).map((value) => (Array.isArray(value) ? value.join(', ') : String(value))),
  );
  const widths = (cells[0] ?? []).map((_, column) =>
    Math.max(...cells.map((row) => row[column]?.length ?? 0)),
  );
  return cells
    .map((row) => `  ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')}`.trimEnd())
    .join('\n');
}

runAsProgram(import.meta.url, () => command().then(() => 0));
