import { DELIVERIES, GIVEN_UP, openJobQueue, type DeliveryJob } from '../db/job-queue';
import { log } from '../log';
import { whenClosing } from '../shutdown';
import { deliver, giveUp } from './deliver';

/** Deliveries sent side by side in one server: a receiver that is slow holds up only one of them. */
const SIDE_BY_SIDE = 3;
const TRY_TO_START_EVERY_MS = 60_000;
/** What is under way when the server is told to end may take this long. */
const STOP_WITHIN_MS = 12_000;

export interface Deliveries {
  /** Takes no further delivery and resolves when those under way are done with. */
  stop(): Promise<void>;
}

/** Works off the queue until stopped. Several servers may do so at once: the queue gives each delivery to one of them. */
export async function openDeliveries(url: string, pollingIntervalSeconds = 2): Promise<Deliveries> {
  const queue = openJobQueue(url);
  queue.on('error', logTrouble);
  await queue.start();
  const each = { batchSize: 1, pollingIntervalSeconds };
  for (let worker = 0; worker < SIDE_BY_SIDE; worker += 1) {
    await queue.work<DeliveryJob>(DELIVERIES, each, async ([job]) => job && deliver(job.data));
  }
  await queue.work<DeliveryJob>(GIVEN_UP, each, async ([job]) => job && giveUp(job.data));
  return { stop: () => queue.stop({ graceful: true, timeout: STOP_WITHIN_MS }) };
}

/**
 * Starts delivering for as long as this server runs. Trouble (no database yet, migrations not run) is logged and never
 * stops the server: what is told to other programs waits in the database meanwhile.
 */
export function startDeliveries(): void {
  const url = process.env.APP_DATABASE_URL;
  if (!url) return;
  let stopped = false;
  let running: Deliveries | null = null;
  let timer: NodeJS.Timeout | undefined;
  const start = async (): Promise<void> => {
    try {
      const opened = await openDeliveries(url);
      if (stopped) await opened.stop();
      else running = opened;
    } catch (error) {
      logTrouble(error);
      if (stopped) return;
      timer = setTimeout(() => void start(), TRY_TO_START_EVERY_MS);
      timer.unref();
    }
  };
  whenClosing(async () => {
    stopped = true;
    clearTimeout(timer);
    await running?.stop().catch(logTrouble);
  });
  void start();
}

function logTrouble(error: unknown): void {
  log.error('not sent', error, { about: 'deliveries' });
}
