import { inSpan } from '../telemetry/spans';
import { database, Prisma, type Tx } from './client';
import { isTransient } from './errors';

/**
 * Work in a transaction, told what time it is by the database's clock. That clock is the one that all servers share: what
 * is written is dated by it, however far a server's own has gone wrong.
 */
export type TimedWork<T> = (tx: Tx, at: Date) => Promise<T>;

interface Told {
  readonly ms: number;
}
const timeTold = ([row]: Told[]): Date => new Date(Math.floor(row?.ms ?? Number.NaN));

/**
 * Runs `work` in one transaction that sees and writes rows of this operator only: row-level security reads the
 * setting made first. Writes of one operator are put in line by an advisory lock taken before anything is read, so a
 * grounding write-up and a release cannot pass each other unseen, and the audit chain has one next row at a time.
 * A school writes a few times a minute; standing in line costs nothing there and saves every reasoning about races.
 */
export function writeInOperator<T>(operatorId: string, work: TimedWork<T>): Promise<T> {
  return retried('write', async () => {
    const client = await database();
    return client.$transaction(
      async (tx) => {
        await tx.$queryRaw`
          SELECT set_config('app.operator_id', ${operatorId}, true), pg_advisory_xact_lock(hashtextextended(${operatorId}, 0))::text`;
        // Asked when our turn has come, so that no row of the audit chain is dated before the one it follows.
        const told = await tx.$queryRaw<
          Told[]
        >`SELECT extract(epoch FROM clock_timestamp())::float8 * 1000 AS ms`;
        return work(tx, timeTold(told));
      },
      { isolationLevel: Prisma.TransactionIsolationLevel.ReadCommitted, maxWait: 10_000, timeout: 20_000 },
    );
  });
}

/** One consistent view of the operator's rows; nothing written inside would be right, so nothing can be. */
export function readInOperator<T>(operatorId: string, work: TimedWork<T>): Promise<T> {
  return retried('read', async () => {
    const client = await database();
    return client.$transaction(
      async (tx) => {
        await tx.$executeRaw`SET TRANSACTION READ ONLY`;
        const told = await tx.$queryRaw<Told[]>`
          SELECT set_config('app.operator_id', ${operatorId}, true), extract(epoch FROM clock_timestamp())::float8 * 1000 AS ms`;
        return work(tx, timeTold(told));
      },
      { isolationLevel: Prisma.TransactionIsolationLevel.RepeatableRead, maxWait: 10_000, timeout: 20_000 },
    );
  });
}

/** Who has this address? The only question asked before an operator is known. Sees that one person or nobody. */
export async function readForSignIn<T>(email: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  const client = await database();
  return client.$transaction(
    async (tx) => {
      await tx.$queryRaw`SELECT set_config('app.sign_in_email', ${email}, true)`;
      return work(tx);
      // As long as the others wait: a busy server is no reason to turn somebody away at the door.
    },
    { maxWait: 10_000 },
  );
}

/** Whose key is this? Asked before an operator is known, by the key's SHA-256. Sees that one key or none. */
export async function readForKey<T>(sha256: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  const client = await database();
  return client.$transaction(async (tx) => {
    await tx.$queryRaw`SELECT set_config('app.key_sha256', ${sha256}, true)`;
    return work(tx);
  });
}

/** Whose link is this? Asked before an operator is known, by the SHA-256 of its token. Sees that one link or none. */
export async function readForLink<T>(sha256: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  const client = await database();
  return client.$transaction(async (tx) => {
    await tx.$queryRaw`SELECT set_config('app.link_sha256', ${sha256}, true)`;
    return work(tx);
  });
}

/**
 * For setting up the first operator, by the SHA-256 of a token: sees that token's row or none, and nothing of any operator
 * until `enterOperator` names one. Nobody is signed in yet.
 */
export async function writeWithSetUpToken<T>(sha256: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  const client = await database();
  return client.$transaction(
    async (tx) => {
      await tx.$queryRaw`SELECT set_config('app.set_up_sha256', ${sha256}, true)`;
      return work(tx);
    },
    { isolationLevel: Prisma.TransactionIsolationLevel.ReadCommitted, maxWait: 10_000, timeout: 20_000 },
  );
}

/** Makes the rest of the transaction this operator's, in line with its other writes. */
export async function enterOperator(tx: Tx, operatorId: string): Promise<void> {
  await tx.$queryRaw`SELECT set_config('app.operator_id', ${operatorId}, true)`;
  await tx.$queryRaw`SELECT pg_advisory_xact_lock(hashtextextended(${operatorId}, 0))::text`;
}

/**
 * Writes what no decision hangs on (when a key was last used, what became of a delivery) without standing in line with
 * the operator's writes.
 */
export async function noteInOperator<T>(operatorId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  return retried('note', async () => {
    const client = await database();
    return client.$transaction(async (tx) => {
      await tx.$queryRaw`SELECT set_config('app.operator_id', ${operatorId}, true)`;
      return work(tx);
    });
  });
}

const ATTEMPTS = 3;

async function retried<T>(kind: 'write' | 'read' | 'note', run: () => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await inSpan('transaction', { 'wheelchock.transaction': kind }, run);
    } catch (error) {
      if (attempt >= ATTEMPTS || !isTransient(error)) throw error;
    }
  }
}
