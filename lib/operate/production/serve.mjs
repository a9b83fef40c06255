/**
 * The server in its container, and nothing else: it migrates nothing and builds nothing. One process, so that the signal to
 * end reaches it. Refuses the owner's address: with that, row security would be a promise only.
 */
import { createRequire } from 'node:module';
import { readSettingsFromFiles, refuse, requireSettings } from './settings-from-files.mjs';

try {
  readSettingsFromFiles(['APP_DATABASE_URL', 'NEXTAUTH_SECRET', 'SMTP_URL', 'PHOTO_S3_SECRET']);
  if (process.env['DATABASE_URL']) {
    throw new Error(
      'DATABASE_URL is the owner of the tables and does not belong to the server; only the migrate job gets it. ' +
        'Give the server APP_DATABASE_URL.',
    );
  }
  requireSettings({
    APP_DATABASE_URL: 'the database, as the web account',
    NEXTAUTH_SECRET: 'seals sessions and second factors; at least 32 characters, the same for every server',
    NEXTAUTH_URL: 'where browsers see the server, like https://wheelchock.school.example',
  });
} catch (error) {
  refuse(error);
}

const next = createRequire(import.meta.url).resolve('next/dist/bin/next');
process.argv = [
  process.execPath,
  next,
  'start',
  '--hostname',
  '0.0.0.0',
  '--port',
  process.env['PORT'] || '3000',
  // Longer than the proxy before it keeps its lines, as in lib/operate/web.ts.
  '--keepAliveTimeout',
  '75000',
];
await import(next);
