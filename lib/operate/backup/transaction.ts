import { openClient, type Tx } from '../../db/client';
import { withClient } from '../connection';

/** Longer than any backup takes; the server must not end it in the middle. */
const A_DAY_MS = 24 * 60 * 60 * 1000;

/**
 * One transaction of the owner's for a whole backup or a whole restore. Values come as text in one way only, whatever the
 * server's settings are, so that the same rows always give the same sums. `reading` sees one moment and cannot write.
 */
export async function longTransaction<T>(
  ownerUrl: string,
  kind: 'reading' | 'writing',
  work: (tx: Tx) => Promise<T>,
): Promise<T> {
  // Says in plain words when there is no such server or database.
  await withClient(ownerUrl, async () => undefined);
  const client = openClient(ownerUrl);
  try {
    return await client.$transaction(
      async (tx) => {
        if (kind === 'reading') await tx.$executeRawUnsafe('SET TRANSACTION READ ONLY');
        for (const setting of SETTINGS) await tx.$executeRawUnsafe(`SET LOCAL ${setting}`);
        return work(tx);
      },
      {
        isolationLevel: kind === 'reading' ? 'RepeatableRead' : 'ReadCommitted',
        maxWait: 30_000,
        timeout: A_DAY_MS,
      },
    );
  } finally {
    await client.$disconnect();
  }
}

const SETTINGS = [
  'statement_timeout = 0',
  'idle_in_transaction_session_timeout = 0',
  // Waiting for somebody else's lock is no work.
  `lock_timeout = '60s'`,
  `TimeZone = 'UTC'`,
  `DateStyle = 'ISO, YMD'`,
  `IntervalStyle = 'postgres'`,
  `bytea_output = 'hex'`,
  'extra_float_digits = 1',
] as const;
