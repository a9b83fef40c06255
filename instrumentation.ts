/**
 * Runs once before the server takes its first request: a server that could not keep sessions or photos safe, or that was
 * told to send letters and cannot, says why and ends. Next itself would only log a throw here and stay up, answering every
 * request with an error. Then the sending of letters starts, where it is switched on, and that of what other programs are told.
 */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { sessionSecret } = await import('./app/_session/secret');
  const { requirePhotoStore } = await import('./lib/photos/chosen-store');
  const { startLetters } = await import('./lib/notices/start-letters');
  const { startDeliveries } = await import('./lib/feeds/start-deliveries');
  try {
    sessionSecret();
    await requirePhotoStore();
    startLetters();
    startDeliveries();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  }
}
