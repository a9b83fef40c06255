/** Runs once before the server takes its first request: a server that could not keep sessions safe does not start. */
export async function register(): Promise<void> {
  const { sessionSecret } = await import('./app/_session/secret');
  sessionSecret();
}
