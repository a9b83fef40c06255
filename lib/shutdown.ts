/**
 * How a server leaves: told to end (SIGTERM, SIGINT), it first only says so at /api/health/ready, so that whatever shares out
 * requests sends it no more; after DRAIN_SECONDS it ends its streams and takes no further work; what is under way may
 * finish, but not for longer than FINISH_WITHIN_MS.
 *
 * The waiting needs NEXT_MANUAL_SIG_HANDLE=true, as the container sets it: otherwise Next itself closes the door at the
 * signal, and this only tells the parts of this program. Kept on globalThis because the framework loads routes as bundles.
 */
import { subscribe } from 'node:diagnostics_channel';
import type { Server, ServerResponse } from 'node:http';
import { log } from './log';

const FINISH_WITHIN_MS = 20_000;
const LONGEST_DRAIN_SECONDS = 120;

interface Leaving {
  draining: boolean;
  /** What has to be ended before the server can be. */
  readonly closing: Set<() => unknown>;
  readonly servers: Set<Server>;
  underWay: number;
}
const holder = globalThis as typeof globalThis & { wheelchockLeaving?: Leaving };

/** Whether the server was told to end. */
export const isDraining = (): boolean => ofProcess().draining;

/** `work` is done when the server ends, after the waiting. Gives back how to take it off the list. */
export function whenClosing(work: () => unknown): () => void {
  const { closing } = ofProcess();
  closing.add(work);
  return () => closing.delete(work);
}

type Environment = Readonly<Record<string, string | undefined>>;

/** How long to wait after the signal. Throws, in words for whoever runs the server, when DRAIN_SECONDS is no such number. */
export function drainSeconds(env: Environment = process.env): number {
  const text = env['DRAIN_SECONDS']?.trim() || '0';
  const seconds = Number(text);
  if (!/^\d{1,3}$/.test(text) || seconds > LONGEST_DRAIN_SECONDS) {
    throw new Error(`DRAIN_SECONDS=${text} is not a whole number from 0 to ${LONGEST_DRAIN_SECONDS}.`);
  }
  return seconds;
}

/** Whether this program closes the server itself (see above). */
const closesItself = (env: Environment = process.env) => Boolean(env['NEXT_MANUAL_SIG_HANDLE']);

/** Called once at the start, before the first request, so that the server and what is under way are known at the end. */
export function watchRequests(): void {
  const leaving = ofProcess();
  subscribe('http.server.request.start', (message) => {
    const { server, response } = message as { server: Server; response: ServerResponse };
    leaving.servers.add(server);
    leaving.underWay += 1;
    response.once('close', () => {
      leaving.underWay -= 1;
    });
  });
}

function ofProcess(): Leaving {
  if (!holder.wheelchockLeaving) {
    const leaving: Leaving = { draining: false, closing: new Set(), servers: new Set(), underWay: 0 };
    holder.wheelchockLeaving = leaving;
    for (const signal of ['SIGTERM', 'SIGINT'] as const) {
      process.once(signal, () => {
        if (!leaving.draining) void leave(leaving);
      });
    }
  }
  return holder.wheelchockLeaving;
}

async function leave(leaving: Leaving): Promise<void> {
  leaving.draining = true;
  const alone = closesItself();
  log.info('stopping', { count: leaving.underWay });
  if (alone) await pause(drainSeconds() * 1000);
  const until = Date.now() + FINISH_WITHIN_MS;
  const closed = Promise.allSettled([...leaving.closing].map(async (work) => work()));
  if (!alone) return;
  for (const server of leaving.servers) server.close();
  await Promise.race([closed, pause(FINISH_WITHIN_MS)]);
  while (leaving.underWay > 0 && Date.now() < until) {
    for (const server of leaving.servers) server.closeIdleConnections();
    await pause(50);
  }
  log.info('stopped', { count: leaving.underWay });
  process.exit(0);
}

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));
