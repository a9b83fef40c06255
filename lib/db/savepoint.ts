import { log } from '../log';
import type { Tx } from './client';
import { isTransient, isUnreachable } from './errors';

export type Aside<T> = { readonly done: true; readonly value: T } | { readonly done: false };

/**
 * Does `work` in the transaction without putting the rest of it at risk: when it fails, what it wrote is undone, the
 * failure stands in the log, and the transaction goes on. A lost connection and a conflict the database asks us to try
 * again are thrown, and so is a statement that took too long: then the whole transaction has to be done again.
 */
export async function aside<T>(tx: Tx, about: string, work: () => Promise<T>): Promise<Aside<T>> {
  await tx.$executeRaw`SAVEPOINT aside`;
  try {
    const value = await work();
    await tx.$executeRaw`RELEASE SAVEPOINT aside`;
    return { done: true, value };
  } catch (error) {
    if (isTransient(error) || isUnreachable(error)) throw error;
    await tx.$executeRaw`ROLLBACK TO SAVEPOINT aside`;
    await tx.$executeRaw`RELEASE SAVEPOINT aside`;
    log.error('set aside', error, { about });
    return { done: false };
  }
}
