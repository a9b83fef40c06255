/**
 * Registers the service worker for the whole site, from the pages of the ramp. Everything works without it as long as the
 * server answers. A new version takes over when a page has just been opened and is the only one: never while somebody
 * types. Asked again on the same page, nothing more is done.
 */
export const startWorker = (): Promise<void> => (started ??= start());

let started: Promise<void> | undefined;

async function start(): Promise<void> {
  // While developing, a worker would serve yesterday's page. Absent without https.
  if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return;
  try {
    const { serviceWorker } = navigator;
    const isNewComer = serviceWorker.controller === null;
    const registration = await serviceWorker.register('/serwist/sw.js', {
      scope: '/',
      updateViaCache: 'none',
    });
    if (!registration.waiting || isNewComer) return;
    serviceWorker.addEventListener('controllerchange', () => window.location.reload(), { once: true });
    registration.waiting.postMessage('take-over');
  } catch {
    // Not allowed here (a private window): the phone has to have a connection then.
  }
}
