import { openStream, type OpenStream } from './stream';
import { readWord, SILENT_AFTER_MS, type HeardWord } from './words';

/**
 * One stream for all tabs of a browser. HTTP/1.1 gives an origin six connections; a stream for every tab would leave none
 * for the pages. The tab that holds the lock holds the stream and tells the others over a channel. Without locks (they need
 * https) each tab has its own, and only while it is in sight.
 */
const NAME = 'wheelchock-live';
const LOOK_EVERY_MS = 5000;
/** Going from page to page must not end the stream and begin it anew. */
const LINGER_MS = 3000;

type Tell = (word: HeardWord) => void;
const listeners = new Set<Tell>();
let leave: (() => void) | null = null;
let lingering: ReturnType<typeof setTimeout> | undefined;

/** Hears what the server says until the function given back is called. */
export function listenToLine(listener: Tell): () => void {
  clearTimeout(lingering);
  listeners.add(listener);
  if (leave) askLeader?.();
  else leave = join((word) => [...listeners].forEach((listen) => listen(word)));
  return () => {
    listeners.delete(listener);
    if (listeners.size > 0) return;
    clearTimeout(lingering);
    lingering = setTimeout(() => {
      leave?.();
      leave = null;
    }, LINGER_MS);
  };
}

/** Somebody else may be signed in from now on: whichever tab holds the stream calls the server anew. */
export function tellSessionChanged(): void {
  if (typeof BroadcastChannel === 'undefined') return;
  const channel = new BroadcastChannel(NAME);
  channel.postMessage({ kind: 'session' });
  channel.close();
}

/** Asks whoever holds the stream for the last beat, so that a new screen need not wait for the next. */
let askLeader: (() => void) | null = null;

function join(tell: Tell): () => void {
  const canShare = typeof BroadcastChannel !== 'undefined' && 'locks' in navigator;
  return canShare ? joinOthers(tell) : streamInSight(tell);
}

function joinOthers(tell: Tell): () => void {
  const channel = new BroadcastChannel(NAME);
  let stream: OpenStream | null = null;
  let lastBeat: Extract<HeardWord, { kind: 'beat' }> | null = null;
  let heardAt = Date.now();
  let left = false;
  let letGo: () => void = () => undefined;
  const waiting = new AbortController();

  const hearOwn: Tell = (word) => {
    if (word.kind === 'down') lastBeat = null;
    else if (word.kind === 'beat') lastBeat = word;
    else if (word.kind === 'change' && lastBeat) lastBeat = { ...lastBeat, seq: word.seq };
    hear(word);
    channel.postMessage(word);
  };
  const hear: Tell = (word) => {
    heardAt = Date.now();
    tell(word);
  };
  const repeat = () => {
    if (stream && lastBeat) hearOwn(lastBeat);
  };

  channel.onmessage = ({ data }: MessageEvent<{ kind?: unknown }>) => {
    if (data.kind === 'session') stream?.again();
    else if (data.kind === 'ask') repeat();
    else {
      const word = readWord(data.kind, data);
      if (word) hear(word);
    }
  };

  function hold(): Promise<void> {
    if (left) return Promise.resolve();
    stream?.close();
    stream = openStream(hearOwn);
    return new Promise((resolve) => {
      letGo = resolve;
    });
  }
  function drop(): void {
    stream?.close();
    stream = null;
    lastBeat = null;
    letGo();
  }
  function lead(how: LockOptions): void {
    navigator.locks.request(NAME, how, hold).catch(() => {
      // Taken over by a tab in sight, or called off. Whoever lost it stands in line again.
      drop();
      if (!left) lead({ signal: waiting.signal });
    });
  }

  lead({ signal: waiting.signal });
  channel.postMessage({ kind: 'ask' });
  askLeader = () => (stream ? repeat() : channel.postMessage({ kind: 'ask' }));

  // A tab that sleeps in the background keeps its lock and tells nobody anything: one in sight takes over.
  const look = setInterval(() => {
    const silent = Date.now() - heardAt;
    if (stream || document.visibilityState !== 'visible' || (silent >= 0 && silent <= SILENT_AFTER_MS))
      return;
    heardAt = Date.now();
    lead({ steal: true });
  }, LOOK_EVERY_MS);

  return () => {
    left = true;
    askLeader = null;
    clearInterval(look);
    waiting.abort();
    drop();
    channel.close();
  };
}

function streamInSight(tell: Tell): () => void {
  let stream: OpenStream | null = null;
  const look = () => {
    const inSight = document.visibilityState === 'visible';
    if (inSight) stream ??= openStream(tell);
    else {
      stream?.close();
      stream = null;
    }
  };
  look();
  document.addEventListener('visibilitychange', look);
  return () => {
    document.removeEventListener('visibilitychange', look);
    stream?.close();
  };
}
