import { createHmac } from 'node:crypto';
import { database } from '../db/client';
import { log } from '../log';

/** Wrong tries of one sender. A school has one address: eight pilots may each forget their password six times (our choice). */
export const SENDER_TRIES = 50;
export const SENDER_MINUTES = 10;

/** A sender's tries to sign in, counted in the database: it holds over restarts and over several servers. */
export interface Sender {
  /** Counts one more try, before it is judged. False: too many were wrong, and this one is not judged at all. */
  knocks(): Promise<boolean>;
  /** The try was right, and so was none. */
  wasRight(): Promise<void>;
}

/** Where a request comes from is not known (`lib/access/sender.ts`): its tries are counted by account only. */
export const UNKNOWN_SENDER: Sender = { knocks: async () => true, wasRight: async () => undefined };

/**
 * Against one password tried at many accounts, and against many slow hashes for addresses that nobody has, which the lock of
 * an account does not see. What is kept is a hash under the secret of the sessions: from a copy of the table nobody
 * reads who was there.
 */
export function senderLimit(sender: string, secret: string): Sender {
  const whose = createHmac('sha256', secret).update(`sign-in from ${sender}`).digest('hex');
  return {
    async knocks() {
      const client = await database();
      const [counted] = await client.$queryRaw<{ tries: number }[]>`
        SELECT count_knock(${whose}, ${SENDER_MINUTES}::int) AS tries`;
      const tries = counted?.tries ?? Number.POSITIVE_INFINITY;
      // Once a while is enough to know of it; and not where from, which the proxy's own log says.
      if (tries === SENDER_TRIES + 1) log.warn('sign-in held up');
      return tries <= SENDER_TRIES;
    },
    async wasRight() {
      const client = await database();
      await client.$queryRaw`SELECT forget_knock(${whose})::text`;
    },
  };
}
