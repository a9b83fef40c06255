/**
 * Runs once before the server takes its first request: a server that could not keep sessions safe says why and ends.
 * Next itself would only log a throw here and stay up, answering every request with an error.
 */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { sessionSecret } = await import('./app/_session/secret');
  try {
    sessionSecret();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  }
}
