import { database, Prisma, type Tx } from './client';
import { isTransient } from './errors';

/**
 * Runs `work` in one transaction that sees and writes rows of this operator only: row-level security reads the
 * setting made first. Writes of one operator are put in line by an advisory lock taken before anything is read, so a
 * grounding write-up and a release cannot pass each other unseen, and the audit chain has one next row at a time.
 * A school writes a few times a minute; standing in line costs nothing there and saves every reasoning about races.
 */
export function writeInOperator<T>(operatorId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  return retried(async () => {
    const client = await database();
    return client.$transaction(
      async (tx) => {
        await tx.$queryRaw`SELECT set_config('app.operator_id', ${operatorId}, true)`;
        await tx.$queryRaw`SELECT pg_advisory_xact_lock(hashtextextended(${operatorId}, 0))::text`;
        return work(tx);
      },
      { isolationLevel: Prisma.TransactionIsolationLevel.ReadCommitted, maxWait: 10_000, timeout: 20_000 },
    );
  });
}

/** One consistent view of the operator's rows; nothing written inside would be right, so nothing can be. */
export function readInOperator<T>(operatorId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  return retried(async () => {
    const client = await database();
    return client.$transaction(
      async (tx) => {
        await tx.$executeRaw`SET TRANSACTION READ ONLY`;
        await tx.$queryRaw`SELECT set_config('app.operator_id', ${operatorId}, true)`;
        return work(tx);
      },
      { isolationLevel: Prisma.TransactionIsolationLevel.RepeatableRead, maxWait: 10_000, timeout: 20_000 },
    );
  });
}

/** Who has this address? The only question asked before an operator is known. Sees that one person or nobody. */
export async function readForSignIn<T>(email: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  const client = await database();
  return client.$transaction(async (tx) => {
    await tx.$queryRaw`SELECT set_config('app.sign_in_email', ${email}, true)`;
    return work(tx);
  });
}

/** Whose key is this? Asked before an operator is known, by the key's SHA-256. Sees that one key or none. */
export async function readForKey<T>(sha256: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  const client = await database();
  return client.$transaction(async (tx) => {
    await tx.$queryRaw`SELECT set_config('app.key_sha256', ${sha256}, true)`;
    return work(tx);
  });
}

/**
 * Writes what no decision hangs on (when a key was last used, what became of a delivery) without standing in line with
 * the operator's writes.
 */
export async function noteInOperator<T>(operatorId: string, work: (tx: Tx) => Promise<T>): Promise<T> {
  return retried(async () => {
    const client = await database();
    return client.$transaction(async (tx) => {
      await tx.$queryRaw`SELECT set_config('app.operator_id', ${operatorId}, true)`;
      return work(tx);
    });
  });
}

const ATTEMPTS = 3;

async function retried<T>(run: () => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await run();
    } catch (error) {
      if (attempt >= ATTEMPTS || !isTransient(error)) throw error;
    }
  }
}
