/// <reference lib="webworker" />
import { Serwist, type PrecacheEntry } from 'serwist';
import { tell } from '../_phone/channel';
import { sendWaiting, WAKE_UP } from '../_phone/sending';
import { SHELL_PAGE, shellDraws } from './shell-paths';

/**
 * The service worker. It keeps the on-the-phone app and serves it where there is no network, and sends what waits when the
 * browser wakes it. Nothing else is ever cached: a page or an answer with a person's facts in it would outlive their
 * session, and could show a go that is gone. Built by app/serwist/[path]/route.ts.
 */
declare const self: ServiceWorkerGlobalScope & {
  readonly __SW_MANIFEST: (PrecacheEntry | string)[] | undefined;
};

/** One stands on the ramp; what the phone kept, with its time beside it, is better than waiting longer. */
const PATIENCE_MS = 4_000;

const serwist = new Serwist({
  precacheEntries: self.__SW_MANIFEST ?? [],
  precacheOptions: { cleanupOutdatedCaches: true },
  // A page that is open keeps the worker it began with: see the message below.
  skipWaiting: false,
  clientsClaim: true,
});

serwist.registerCapture(
  ({ request, url, sameOrigin }) =>
    sameOrigin && request.mode === 'navigate' && !url.pathname.startsWith('/api/'),
  ({ request, url }) => page(request, shellDraws(url.pathname)),
);

async function page(request: Request, draws: ReturnType<typeof shellDraws>): Promise<Response> {
  if (draws === 'always') return (await shell()) ?? fetch(request);
  const asked = fetch(request);
  try {
    const answer = await (draws === 'when-cut-off' ? within(PATIENCE_MS, asked) : asked);
    // A proxy's word that there is nobody behind it is no answer of the server.
    return isFromBehind(answer) ? answer : ((await shell()) ?? answer);
  } catch {
    return (await shell()) ?? asked;
  }
}

const isFromBehind = ({ status }: Response): boolean => status !== 502 && status !== 504;

const shell = (): Promise<Response | undefined> => serwist.matchPrecache(SHELL_PAGE);

/** Gives up waiting after `ms`; the request itself goes on and is forgotten. */
function within<T>(ms: number, work: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('No answer in time.')), ms);
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

self.addEventListener('message', (event) => {
  // A page that has just been opened asks for the new version. With another one open the old parts are still needed.
  const data: unknown = event.data;
  if (data === 'take-over') event.waitUntil(takeOverIfAlone());
});

async function takeOverIfAlone(): Promise<void> {
  const open = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (open.length <= 1) await self.skipWaiting();
}

self.addEventListener('sync', (event) => {
  if (event.tag === WAKE_UP) event.waitUntil(sendWhenWoken());
});

/** Throws when it did not get through: then the browser wakes it again. */
async function sendWhenWoken(): Promise<void> {
  const lastTriedAt = new Date().toISOString();
  const stuck = await sendWaiting();
  tell({ topic: 'sync', state: { isSending: false, stuck, lastTriedAt } });
  if (stuck === 'no-connection' || stuck === 'no-answer') throw new Error(`Not sent: ${stuck}.`);
}

serwist.addEventListeners();
