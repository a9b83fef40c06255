import { readWord, SILENT_AFTER_MS, type HeardWord } from './words';

const ADDRESS = '/api/live';
const EVENTS = ['change', 'again', 'beat', 'signed-out', 'pause'] as const;
const WATCH_EVERY_MS = 5000;
const FIRST_WAIT_MS = 2000;
const LONGEST_WAIT_MS = 30_000;

export interface OpenStream {
  /** Calls the server anew: somebody else may be signed in. */
  again(): void;
  close(): void;
}

/**
 * Holds a stream of the server's words open. The browser calls again by itself when one ends; this calls again where the
 * browser does not: after a refusal, and when a line that looks open has been silent too long. `down` is told once for
 * each time that it breaks.
 */
export function openStream(tell: (word: HeardWord) => void): OpenStream {
  let source: EventSource | null = null;
  let heardAt = Date.now();
  let up = false;
  let pausing = false;
  let waitMs = FIRST_WAIT_MS;
  let retry: ReturnType<typeof setTimeout> | undefined;
  const watch = setInterval(() => {
    const silent = Date.now() - heardAt;
    if (source && (silent > SILENT_AFTER_MS || silent < 0)) callAgain();
  }, WATCH_EVERY_MS);

  function call(): void {
    clearTimeout(retry);
    source?.close();
    heardAt = Date.now();
    const called = new EventSource(ADDRESS);
    source = called;
    for (const event of EVENTS) {
      called.addEventListener(event, (message) => {
        if (source === called) take(event, (message as MessageEvent<string>).data);
      });
    }
    called.onerror = () => {
      if (source !== called) return;
      // The server ends a stream after some minutes; the browser calls again in a second, and nothing is wrong.
      if (!pausing) broke();
      pausing = false;
      if (called.readyState === EventSource.CLOSED) callLater();
    };
  }

  function take(event: (typeof EVENTS)[number], data: string): void {
    heardAt = Date.now();
    pausing = event === 'pause';
    if (event === 'signed-out') {
      broke(true);
      callLater();
      return;
    }
    const word = readWord(event, parsed(data));
    if (!word) return;
    up = true;
    waitMs = FIRST_WAIT_MS;
    tell(word);
  }

  function broke(always = false): void {
    if (up || always) tell({ kind: 'down' });
    up = false;
  }

  function callAgain(): void {
    broke();
    call();
  }

  function callLater(): void {
    source?.close();
    source = null;
    clearTimeout(retry);
    retry = setTimeout(call, waitMs);
    waitMs = Math.min(waitMs * 2, LONGEST_WAIT_MS);
  }

  call();
  return {
    again: call,
    close() {
      clearInterval(watch);
      clearTimeout(retry);
      source?.close();
      source = null;
    },
  };
}

function parsed(data: string): unknown {
  try {
    return JSON.parse(data);
  } catch {
    return null;
  }
}
