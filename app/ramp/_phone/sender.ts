import { hear, tell, type Trying } from './channel';
import { sendWaiting, WAKE_UP } from './sending';

/**
 * When this page sends: as soon as something is queued, when the page opens or comes to the front, when the connection is
 * back, on a press, and else after a pause that grows with every try that failed.
 */
const FIRST_PAUSE_MS = 2_000;
const LONGEST_PAUSE_MS = 120_000;

let trying: Trying = { isSending: false, stuck: null, lastTriedAt: null };
let isRunning = false;
let isWantedAgain = false;
let failures = 0;
let timer: ReturnType<typeof setTimeout> | undefined;
let isHearing = false;

/** How it stands here or in the tab that sends. */
export const nowTrying = (): Trying => trying;

/** Tries to send now. Returns at once. */
export function flush(): void {
  clearTimeout(timer);
  if (isRunning) isWantedAgain = true;
  else void run();
}

async function run(): Promise<void> {
  isRunning = true;
  let stuck: Trying['stuck'];
  do {
    isWantedAgain = false;
    try {
      stuck = await sendWaiting(() =>
        say({ isSending: true, stuck: null, lastTriedAt: new Date().toISOString() }),
      );
    } catch (error) {
      // Nothing of ours throws here; whatever did must not end sending for good.
      console.error(error);
      stuck = 'no-answer';
    }
    say({ ...trying, isSending: false, stuck });
  } while (isWantedAgain);
  isRunning = false;
  if (stuck === null || stuck === 'other-person') {
    failures = 0;
    return;
  }
  failures += 1;
  timer = setTimeout(flush, pauseAfter(failures, Math.random()));
  askForWakeUp();
}

/** Doubles with every failure; `chance` from 0 to 1 spreads it, or a whole school would come back in the same second. */
export const pauseAfter = (failed: number, chance: number): number =>
  Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** (failed - 1)) * (0.5 + chance / 2);

function say(next: Trying): void {
  trying = next;
  tell({ topic: 'sync', state: next });
}

/** Keeps sending while the page is open. Returns how to stop. */
export function keepSending(): () => void {
  hearOthers();
  const whenSeen = () => {
    if (document.visibilityState === 'visible') flush();
  };
  window.addEventListener('online', flush);
  window.addEventListener('pageshow', flush);
  document.addEventListener('visibilitychange', whenSeen);
  flush();
  return () => {
    window.removeEventListener('online', flush);
    window.removeEventListener('pageshow', flush);
    document.removeEventListener('visibilitychange', whenSeen);
  };
}

/** What the tab that sends says counts here too. */
export function hearOthers(): void {
  if (isHearing) return;
  isHearing = true;
  hear((told) => {
    if (told.topic === 'sync' && told.state && !isRunning) trying = told.state;
  });
}

interface WithSync {
  readonly sync?: { register(tag: string): Promise<void> };
}

/** Asks the browser to wake the service worker for sending, where there is such a thing. */
export function askForWakeUp(): void {
  if (typeof window === 'undefined' || !('serviceWorker' in navigator)) return;
  void navigator.serviceWorker.ready
    .then((registration) => (registration as WithSync).sync?.register(WAKE_UP))
    // Not allowed, or no worker of ours: the page does it alone.
    .catch(() => undefined);
}
