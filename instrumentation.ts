/**
 * Runs once before the server takes its first request: a server that could not keep sessions or photos safe, or that was
 * told to send letters and cannot, says why and ends. Next itself would only log a throw here and stay up, answering every
 * request with an error. Then the sending of letters starts, where it is switched on, and that of what other programs are told.
 */
export async function register(): Promise<void> {
  // In this form Next leaves the rest out of what it builds for its other runtime.
  if (process.env.NEXT_RUNTIME === 'nodejs') {
    const { startServer } = await import('./app/_session/start-server');
    await startServer();
  }
}
