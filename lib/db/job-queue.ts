import PgBoss from 'pg-boss';
import { database, type Tx } from './client';

/** Queues that migration 0005 made; the second takes what could not be done in the end. */
export const DELIVERIES = 'webhook-deliveries';
export const GIVEN_UP = 'webhook-deliveries-given-up';

/** What a job carries: whose and which. What is to be sent stays under row security. */
export interface DeliveryJob {
  readonly operatorId: string;
  readonly deliveryId: string;
}

/** Only ever sends, on a transaction it is lent. How often and how long to try stands with the queue in the database. */
const sender = new PgBoss({
  db: { executeSql: () => Promise.reject(new Error('Jobs are sent in a transaction.')) },
  migrate: false,
  supervise: false,
  schedule: false,
});

/** Puts a delivery in line in the caller's transaction: no job without its row, and no row without its job. */
export async function sendDeliveryJob(tx: Tx, job: DeliveryJob): Promise<void> {
  const id = await sender.send(DELIVERIES, job, {
    db: {
      // Prisma hands an object to a `jsonb` parameter as it is; the rest are plain values.
      executeSql: async (text, values) => ({ rows: await tx.$queryRawUnsafe<unknown[]>(text, ...values) }),
    },
  });
  if (id === null) throw new Error(`The queue ${DELIVERIES} is missing; run the migrations.`);
}

/** How many deliveries wait to be sent, those to be tried again among them. Of all operators: a number and nothing else. */
export async function deliveriesWaiting(): Promise<number> {
  const client = await database();
  const [row] = await client.$queryRaw<{ waiting: number }[]>`
    SELECT count(*)::int AS waiting FROM pgboss.job WHERE name = ${DELIVERIES} AND state < 'active'`;
  return row?.waiting ?? 0;
}

/** Opens the queue as the application's role, which may make no tables: the owner made them at migration. */
export const openJobQueue = (url: string): PgBoss =>
  new PgBoss({
    connectionString: url,
    application_name: 'wheelchock jobs',
    max: 4,
    migrate: false,
    schedule: false,
    supervise: true,
    // A job of a server that died is tried again soon after its time is up.
    maintenanceIntervalSeconds: 30,
  });
