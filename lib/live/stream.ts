import type { ActorRef } from '../access/actor';
import { endWithServer, liveHub } from './hub-of-process';
import type { LiveHub, LiveWord } from './hub';
import { readNewestChange } from './newest-change';

/** Given by tests; the running server leaves them out. */
export interface StreamOptions {
  readonly hub?: LiveHub;
  readonly beatEveryMs?: number;
  readonly endsAfterMs?: number;
}

/** How long the browser waits before it calls again after a stream has ended. */
const CALL_AGAIN_MS = 1000;

/**
 * The words for one screen, as server-sent events (WHATWG HTML, 9.2; `text/event-stream`):
 * - `change` {seq}: something of the operator's was written.
 * - `again` {}: words may have been lost; look.
 * - `beat` {at, seq, listening}: every ten seconds, and when the listening ends or begins. `at` is the server's time, `seq`
 *   how far the records have come (null where the database does not say), `listening` whether a change would be heard.
 * - `signed-out` {}: the session has ended, and the stream with it.
 * - `pause` {}: the stream ends by itself after some minutes, so that no session outlives its cookie here; call again.
 * The session is asked again at every beat. Ends when `signal` does, when the browser goes, and when the server stops.
 */
export function liveStream(
  ref: ActorRef,
  signal: AbortSignal,
  options: StreamOptions = {},
): ReadableStream<Uint8Array> {
  const { hub = liveHub(), beatEveryMs = 10_000, endsAfterMs = 240_000 } = options;
  const encoder = new TextEncoder();
  let end: () => void = () => undefined;

  return new ReadableStream<Uint8Array>({
    start(controller) {
      let open = true;
      let beating = false;
      let beatAgain = false;
      const send = (text: string) => open && controller.enqueue(encoder.encode(text));
      const say = (event: string, data: object) => send(eventText(event, data));

      const hear = (word: LiveWord) => {
        if (word.kind === 'change') say('change', { seq: word.seq });
        else if (word.kind === 'look-again') say('again', {});
        if (word.kind !== 'change') void beat();
      };
      async function beat(): Promise<void> {
        beatAgain = beating;
        if (beating || !open) return;
        beating = true;
        const newest = await readNewestChange(ref, {});
        beating = false;
        if (newest.ok) say('beat', { ...newest.value, listening: hub.isListening() });
        else if (ENDED.has(newest.problem.code)) finish('signed-out');
        else say('beat', { at: new Date().toISOString(), seq: null, listening: false });
        if (beatAgain) void beat();
      }
      const finish = (event: 'signed-out' | 'pause') => {
        say(event, {});
        end();
      };

      send(`retry: ${CALL_AGAIN_MS}\n\n`);
      const unsubscribe = hub.subscribe(ref.operatorId, hear);
      const beats = setInterval(() => void beat(), beatEveryMs);
      const pause = setTimeout(() => finish('pause'), endsAfterMs);
      const forget = endWithServer(() => end());
      end = () => {
        if (!open) return;
        open = false;
        unsubscribe();
        clearInterval(beats);
        clearTimeout(pause);
        forget();
        signal.removeEventListener('abort', end);
        try {
          controller.close();
        } catch {
          // The browser had gone first.
        }
      };
      signal.addEventListener('abort', end);
      if (signal.aborted) end();
      // Asked after subscribing, so that nothing falls in between.
      void beat();
    },
    cancel: () => end(),
  });
}

const ENDED: ReadonlySet<string> = new Set(['not_signed_in', 'not_allowed']);

const eventText = (event: string, data: object): string =>
  `event: ${event}\ndata: ${JSON.stringify(data)}\n\n`;
