import { isDraining, whenClosing } from '../shutdown';
import { openHub, type LiveHub } from './hub';

/**
 * The one hub of this process and the streams that hang on it. Kept on globalThis because the framework loads routes as
 * separate bundles, and each would listen with a connection of its own.
 */
interface Live {
  hub?: LiveHub;
  /** Ends each open stream. */
  readonly streams: Set<() => void>;
}
const holder = globalThis as typeof globalThis & { wheelchockLive?: Live };

/** Opened on first use from APP_DATABASE_URL. */
export function liveHub(): LiveHub {
  const url = process.env.APP_DATABASE_URL;
  if (!url) throw new Error('APP_DATABASE_URL is not set. Start with `npm run demo`, or see README.md.');
  const live = ofProcess();
  live.hub ??= openHub(url);
  return live.hub;
}

/** Told to end, the server opens no further stream and soon ends those there are, or stopping would wait for every browser. */
export const isStopping = (): boolean => isDraining();

/** `end` is called when the server is told to end. Gives back how to take it off the list. */
export function endWithServer(end: () => void): () => void {
  const { streams } = ofProcess();
  streams.add(end);
  return () => streams.delete(end);
}

/** For tests, and when the server ends: ends every stream and the listening. */
export async function closeLive(): Promise<void> {
  const live = holder.wheelchockLive;
  if (!live) return;
  for (const end of [...live.streams]) end();
  const { hub } = live;
  live.hub = undefined;
  await hub?.close();
}

function ofProcess(): Live {
  if (!holder.wheelchockLive) {
    holder.wheelchockLive = { streams: new Set() };
    whenClosing(closeLive);
  }
  return holder.wheelchockLive;
}
