import { proxiesBefore } from '@/lib/access/sender';
import { log, logLevel } from '@/lib/log';
import { takeOverConsole } from '@/lib/log/take-over-console';
import { startDeliveries } from '@/lib/feeds/start-deliveries';
import { startLetters } from '@/lib/notices/start-letters';
import { startSweeping } from '@/lib/people/start-sweeping';
import { requirePhotoStore } from '@/lib/photos/chosen-store';
import { drainSeconds, watchRequests } from '@/lib/shutdown';
import { telemetryWanted } from '@/lib/telemetry/settings';
import { sessionSecret } from './secret';

/** What instrumentation.ts does before the first request; ends the process, in plain words, where a setting is wrong. */
export async function startServer(): Promise<void> {
  try {
    logLevel();
    drainSeconds();
    sessionSecret();
    proxiesBefore();
    await requirePhotoStore();
    watchRequests();
    // Large, and mostly not wanted: not loaded unless asked for.
    if (telemetryWanted()) (await import('@/lib/telemetry/start')).startTelemetry();
    startLetters();
    startDeliveries();
    startSweeping();
  } catch (error) {
    // For whoever starts the server, and no line of the log.
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    process.exit(1);
  }
  if (process.env.NODE_ENV === 'production') takeOverConsole();
  log.info('started');
}
