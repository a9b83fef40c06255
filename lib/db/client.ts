import { PrismaPg } from '@prisma/adapter-pg';
import { PrismaClient, Prisma } from './generated/client';

export { Prisma };
/** The transaction a verb works in. Only `scope.ts` hands these out. */
export type Tx = Prisma.TransactionClient;

/**
 * Opens the database as the application's role.
 * UTC is forced on every connection because the driver adapter writes instants without an offset: right only when
 * the session zone is UTC (see tests/services/instants.test.ts).
 */
export function openClient(url: string): PrismaClient {
  const adapter = new PrismaPg({
    connectionString: url,
    max: 10,
    connectionTimeoutMillis: 10_000,
    idleTimeoutMillis: 30_000,
    statement_timeout: 20_000,
    idle_in_transaction_session_timeout: 30_000,
    options: '-c TimeZone=UTC',
  });
  return new PrismaClient({ adapter });
}

const holder = globalThis as typeof globalThis & { wheelchockDatabase?: Promise<PrismaClient> };

/**
 * The one client of this process, opened on first use from APP_DATABASE_URL after the role was found harmless.
 * Refuses to open for a role that could walk around row-level security: tenancy would only seem to work.
 */
export function database(): Promise<PrismaClient> {
  holder.wheelchockDatabase ??= openChecked();
  return holder.wheelchockDatabase;
}

async function openChecked(): Promise<PrismaClient> {
  const url = process.env.APP_DATABASE_URL;
  if (!url) throw new Error('APP_DATABASE_URL is not set. Start with `npm run demo`, or see README.md.');
  const client = openClient(url);
  try {
    await refusePowerfulRole(client);
    return client;
  } catch (error) {
    await client.$disconnect();
    holder.wheelchockDatabase = undefined;
    throw error;
  }
}

/** Throws when the connected role is superuser, bypasses row security, or owns a table of ours. */
export async function refusePowerfulRole(client: PrismaClient): Promise<void> {
  const [role] = await client.$queryRaw<{ name: string; super: boolean; bypass: boolean; owns: boolean }[]>`
    SELECT r.rolname::text AS name, r.rolsuper AS super, r.rolbypassrls AS bypass,
      EXISTS (SELECT 1 FROM pg_class c WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace
        AND pg_has_role(r.oid, c.relowner, 'USAGE')) AS owns
    FROM pg_roles r WHERE r.rolname = current_user`;
  if (!role || role.super || role.bypass || role.owns) {
    throw new Error(
      `The database role ${role?.name ?? '?'} is superuser, may bypass row security or owns the tables. ` +
        'APP_DATABASE_URL must name the application role that `npm run migrate` makes.',
    );
  }
}

/** For scripts and tests: closes the client so that the next use opens a new one. */
export async function closeDatabase(): Promise<void> {
  const open = holder.wheelchockDatabase;
  holder.wheelchockDatabase = undefined;
  if (open) await (await open).$disconnect();
}
