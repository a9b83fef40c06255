/**
 * `npm run let-in -- <e-mail>`: a way back for a manager who has lost the second factor and the recovery codes, when no other
 * manager can reset them. Prints a link that works once: it sets a new password, takes the second factor away and ends every
 * session. Needs the owner's DATABASE_URL (or DATABASE_URL_FILE), or the database of a running `npm start`.
 */
import { openClient } from '../db/client';
import { enterOperator } from '../db/scope';
import { letIn, type NotLetIn } from '../people/let-in';
import { linkPath } from '../people/link-token';
import { LINK_HOURS } from '../people/make-link';
import { withClient } from './connection';
import { ownDatabaseUrl } from './own-database';
import { readSettingsFromFiles } from './production/settings-from-files.mjs';
import { Trouble, say } from './say.mjs';
import { runAsProgram } from './run-as-program';
import { siteAddress } from './set-up-token';

const WHY_NOT: Readonly<Record<NotLetIn, string>> = {
  unknown: 'Nobody signs in with that address. Look for a typing mistake; nothing was changed.',
  left: 'That person has left. Somebody who left is let in by a manager only: Office, People, return. Nothing was changed.',
  'no-manager':
    'That person is not a manager. A manager makes the link: Office, People. This command is for managers only; nothing was changed.',
};

/** Makes the link and gives its path with the token. Refuses in words for whoever is not a manager here. `ownerUrl` is the owner's. */
export async function letInByConsole(
  ownerUrl: string,
  typed: string,
  now = new Date(),
): Promise<{ path: string; expiresAt: string }> {
  const email = typed.trim().toLowerCase();
  if (!email.includes('@')) {
    throw new Trouble("Say whom, by the address they sign in with: npm run let-in -- 'name@school.example'");
  }
  // Says in plain words when there is no such server or database.
  await withClient(ownerUrl, async () => undefined);
  const client = openClient(ownerUrl);
  try {
    const answer = await client.$transaction(async (tx) => {
      // For an owner whom row security binds.
      await tx.$queryRaw`SELECT set_config('app.sign_in_email', ${email}, true)`;
      const person = await tx.person.findUnique({ where: { email }, select: { id: true, operatorId: true } });
      if (!person) return 'unknown';
      const { operatorId, id: personId } = person;
      await enterOperator(tx, operatorId);
      return letIn(tx, { operatorId, personId, now });
    });
    if (typeof answer === 'string') throw new Trouble(WHY_NOT[answer]);
    return { path: linkPath(answer.token), expiresAt: answer.expiresAt };
  } finally {
    await client.$disconnect();
  }
}

/** What is printed of it, to the console and nowhere else. */
export const linkInWords = (site: string, path: string): string =>
  `Open this address within ${LINK_HOURS['password-reset']} hours; it works once:\n\n` +
  `  ${new URL(path, site).href}\n\n` +
  'It sets a new password, takes the second factor and the recovery codes away, and ends every session. Hand it to that\n' +
  'person only. Nothing changes before it is used; earlier links of theirs have ended. The records say the console made it.';

async function command(): Promise<number> {
  readSettingsFromFiles(['DATABASE_URL']);
  const ownerUrl = process.env['DATABASE_URL'] || (await ownDatabaseUrl());
  const { path } = await letInByConsole(ownerUrl, process.argv[2] ?? '');
  say(linkInWords(siteAddress(), path));
  return 0;
}

runAsProgram(import.meta.url, command);
