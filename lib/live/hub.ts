import type { Socket } from 'node:net';
import pg from 'pg';
import { log } from '../log';
import { CHANGE_CHANNEL, readChange } from './change';

/**
 * What a subscriber is told.
 * - `change`: something of the operator's was written.
 * - `look-again`: the listening begins (again); words before it may be lost.
 * - `deaf`: nothing is heard until `look-again`.
 */
export type LiveWord =
  | { readonly kind: 'change'; readonly seq: number }
  | { readonly kind: 'look-again' }
  | { readonly kind: 'deaf' };

/** One listening connection to the database, and who wants to know what of it. */
export interface LiveHub {
  /** Tells `listener` of this operator's changes and of no other's. Gives back how to stop. */
  subscribe(operatorId: string, listener: (word: LiveWord) => void): () => void;
  /** Whether a change would be heard at this moment. */
  isListening(): boolean;
  close(): Promise<void>;
}

/** Given by tests; the running server leaves them out. */
export interface HubOptions {
  /** How often the connection is asked for a sign of life. */
  readonly aliveEveryMs?: number;
  /** How long an answer may take before the connection counts as dead. */
  readonly patienceMs?: number;
  /** Pauses before the next try, the last one for ever. */
  readonly waitsMs?: readonly number[];
}

const WAITS_MS = [250, 1000, 2000, 5000, 10_000] as const;

/**
 * Connects with the first subscriber and then for as long as the process lives. A connection that is lost, or that
 * does not answer in time, is given up and made anew; then everybody is told to look again, because PostgreSQL keeps no
 * notification for who was away. Keeps no process alive and never throws: trouble is logged.
 */
export function openHub(url: string, options: HubOptions = {}): LiveHub {
  const { aliveEveryMs = 10_000, patienceMs = 5000, waitsMs = WAITS_MS } = options;
  const subscribers = new Map<string, Set<(word: LiveWord) => void>>();
  let current: pg.Client | null = null;
  let listening = false;
  let closed = false;
  let fails = 0;
  let timer: NodeJS.Timeout | undefined;

  const tell = (listeners: Iterable<(word: LiveWord) => void>, word: LiveWord): void => {
    for (const listener of [...listeners]) {
      try {
        listener(word);
      } catch (error) {
        logTrouble(error);
      }
    }
  };
  const tellAll = (word: LiveWord) =>
    tell(
      [...subscribers.values()].flatMap((all) => [...all]),
      word,
    );

  async function connect(): Promise<void> {
    const client = new pg.Client({
      connectionString: url,
      application_name: 'wheelchock-live',
      connectionTimeoutMillis: patienceMs,
      query_timeout: patienceMs,
      keepAlive: true,
    });
    current = client;
    client.on('error', (error) => lose(client, error));
    client.on('end', () => lose(client, new Error('The listening connection ended.')));
    client.on('notification', ({ payload }) => {
      const change = readChange(payload);
      const listeners = change && subscribers.get(change.operatorId);
      if (listeners) tell(listeners, { kind: 'change', seq: change.seq });
    });
    try {
      await client.connect();
      // A process that has nothing else to do may end.
      (client.connection.stream as Socket).unref();
      await client.query(`LISTEN ${CHANGE_CHANNEL}`);
    } catch (error) {
      lose(client, error);
      return;
    }
    if (current !== client) return;
    listening = true;
    fails = 0;
    tellAll({ kind: 'look-again' });
    later(aliveEveryMs, () => void askForLife(client));
  }

  /** A line that broke without a word looks alive until something is asked of it. */
  async function askForLife(client: pg.Client): Promise<void> {
    try {
      await client.query('SELECT 1');
      if (current === client) later(aliveEveryMs, () => void askForLife(client));
    } catch (error) {
      lose(client, error);
    }
  }

  function lose(client: pg.Client, error: unknown): void {
    if (current !== client) return;
    current = null;
    clearTimeout(timer);
    giveUp(client);
    if (closed) return;
    // Once for each time it was lost, not for every try.
    if (listening || fails === 0) logTrouble(error);
    if (listening) tellAll({ kind: 'deaf' });
    listening = false;
    later(waitsMs[Math.min(fails, waitsMs.length - 1)] ?? 10_000, () => void connect());
    fails += 1;
  }

  function later(afterMs: number, work: () => void): void {
    clearTimeout(timer);
    timer = setTimeout(work, afterMs).unref();
  }

  return {
    subscribe(operatorId, listener) {
      const listeners = subscribers.get(operatorId) ?? new Set();
      subscribers.set(operatorId, listeners.add(listener));
      if (!closed && current === null && fails === 0) void connect();
      return () => {
        listeners.delete(listener);
        if (listeners.size === 0 && subscribers.get(operatorId) === listeners) subscribers.delete(operatorId);
      };
    },
    isListening: () => listening,
    async close() {
      closed = true;
      listening = false;
      clearTimeout(timer);
      subscribers.clear();
      const open = current;
      current = null;
      await open?.end().catch(() => undefined);
    },
  };
}

/** Ends a connection that may be dead: nothing is waited for. */
function giveUp(client: pg.Client): void {
  client.on('error', () => undefined);
  client.end().catch(() => undefined);
  client.connection.stream.destroy();
}

function logTrouble(error: unknown): void {
  log.error('not listening', error, { about: 'live' });
}
