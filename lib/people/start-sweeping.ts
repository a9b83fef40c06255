import { operatorsToSweep } from '../db/operators-to-sweep';
import { log } from '../log';
import { sweepTraces } from './sweep-traces';

const HOUR_MS = 3_600_000;

/** Kept on globalThis because the framework loads this file once a bundle. */
const holder = globalThis as typeof globalThis & { wheelchockSweep?: NodeJS.Timeout };

/**
 * Sweeps traces of every operator while the server runs: a minute after the start and then every hour. Apart from the
 * sending of letters, because a server that sends none has traces too. Trouble is logged and tried again an hour later.
 */
export function startSweeping(): void {
  if (holder.wheelchockSweep) return;
  holder.wheelchockSweep = setInterval(() => void sweepAll(), HOUR_MS);
  // It keeps no process alive.
  holder.wheelchockSweep.unref();
  setTimeout(() => void sweepAll(), HOUR_MS / 60).unref();
}

async function sweepAll(): Promise<void> {
  try {
    for (const operatorId of await operatorsToSweep()) {
      const swept = await sweepTraces(operatorId);
      const count = Object.values(swept).reduce((sum, one) => sum + one, 0);
      if (count > 0) log.info('swept', { operatorId, about: 'traces', count });
    }
  } catch (error) {
    log.error('set aside', error, { about: 'traces' });
  }
}
