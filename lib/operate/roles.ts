import { createHash } from 'node:crypto';
import type pg from 'pg';
import { codeOf, databaseIn, withAccount, withClient } from './connection';
import { newSecret } from './secrets';
import { Trouble } from './say.mjs';

/** The group the migrations grant to. It cannot log in and owns nothing. */
export const APP_GROUP = 'wheelchock_app';

/** PostgreSQL cuts names at 63 bytes. */
const LONGEST_NAME = 63;

/**
 * The web server's account for one database: `wc_` and the database's name. A name that had to be changed to fit
 * carries a short sum of the whole, so that two databases never share an account by accident.
 */
export function loginRoleFor(database: string): string {
  const plain = `wc_${database.toLowerCase().replace(/[^a-z0-9_]/g, '_')}`;
  if (plain === `wc_${database}` && plain.length <= LONGEST_NAME) {
    return plain;
  }
  const sum = createHash('sha256').update(database).digest('hex').slice(0, 8);
  return `${plain.slice(0, LONGEST_NAME - 9)}_${sum}`;
}

/** Makes the group if the server has none. Two installations may do this at the same moment. */
export async function ensureGroup(client: pg.Client): Promise<void> {
  const { rowCount } = await client.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [APP_GROUP]);
  if (rowCount !== 0) {
    return;
  }
  try {
    await client.query(`CREATE ROLE ${APP_GROUP} NOLOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS`);
  } catch (error) {
    if (codeOf(error) !== '42710' && codeOf(error) !== '23505') {
      throw mayNotMakeRoles(error);
    }
  }
}

/**
 * Makes (or puts right) the web server's account and gives its address. `remembered` is the password of an earlier
 * run: it stays when it still opens the door, so that a running server is not locked out.
 */
export async function ensureLogin(client: pg.Client, adminUrl: string, remembered?: string): Promise<string> {
  const role = loginRoleFor(databaseIn(adminUrl));
  const name = client.escapeIdentifier(role);
  try {
    const { rowCount } = await client.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [role]);
    if (rowCount === 0) {
      await client.query(`CREATE ROLE ${name} LOGIN INHERIT NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS`);
    }
    const { rows } = await client.query<{ version: number }>(
      `SELECT current_setting('server_version_num')::int AS version`,
    );
    const inherit = (rows[0]?.version ?? 0) >= 160000 ? ' WITH INHERIT TRUE' : '';
    await client.query(`GRANT ${APP_GROUP} TO ${name}${inherit}`);
    await client.query(`ALTER ROLE ${name} SET timezone = 'UTC'`);
    if (remembered !== undefined) {
      const url = withAccount(adminUrl, role, remembered);
      if (await opens(url)) {
        return url;
      }
    }
    const password = remembered ?? newSecret();
    await client.query(`ALTER ROLE ${name} PASSWORD ${client.escapeLiteral(password)}`);
    return withAccount(adminUrl, role, password);
  } catch (error) {
    throw error instanceof Trouble ? error : mayNotMakeRoles(error);
  }
}

/**
 * Refuses an account for the web server that the row policies would not bind: a superuser, one that bypasses row
 * security, one that may make roles or databases, one outside the group, or one that owns tables here.
 */
export async function checkAppAccount(appUrl: string): Promise<void> {
  await withClient(appUrl, async (client) => {
    const { rows } = await client.query<Record<string, boolean>>(
      `SELECT rolsuper AS "is a superuser",
              rolbypassrls AS "bypasses row security",
              rolcreaterole AS "may make roles",
              rolcreatedb AS "may make databases",
              NOT pg_has_role(oid, (SELECT g.oid FROM pg_roles g WHERE g.rolname = $1), 'USAGE')
                AS "does not have the rights of ${APP_GROUP}",
              EXISTS (SELECT 1 FROM pg_class c WHERE c.relowner = r.oid AND c.relkind IN ('r', 'p'))
                AS "owns tables in this database"
         FROM pg_roles r WHERE rolname = current_user`,
      [APP_GROUP],
    );
    const faults = Object.entries(rows[0] ?? { 'is not known': true })
      .filter(([, holds]) => holds !== false)
      .map(([fault]) => fault);
    if (faults.length > 0) {
      throw new Trouble(
        `The account in APP_DATABASE_URL may not serve the web: it ${faults.join(', ')}. ` +
          `Row security would not keep operators apart. Use an account made with ` +
          `CREATE ROLE name LOGIN PASSWORD '...' IN ROLE ${APP_GROUP}; or leave APP_DATABASE_URL out.`,
      );
    }
  });
}

async function opens(url: string): Promise<boolean> {
  try {
    await withClient(url, async () => undefined);
    return true;
  } catch {
    return false;
  }
}

function mayNotMakeRoles(cause: unknown): Trouble {
  return new Trouble(
    `The account in DATABASE_URL could not make the roles Wheelchock needs (${String(cause)}). Give it CREATEROLE, or ` +
      `have an administrator run: CREATE ROLE ${APP_GROUP} NOLOGIN; CREATE ROLE wheelchock_web LOGIN PASSWORD '...' ` +
      `IN ROLE ${APP_GROUP}; and set APP_DATABASE_URL to the second.`,
    { cause },
  );
}
