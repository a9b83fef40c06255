'use client';

import { useEffect } from 'react';
import { startWorker } from '../ramp/_worker/start-worker';

/**
 * With the worker there, a screen asked for without a connection says in our own words that it needs one, instead of the
 * browser's. It keeps no page with anybody's data (app/ramp/_worker/worker.ts).
 */
export function KeepsWorker() {
  useEffect(() => {
    void startWorker();
  }, []);
  return null;
}
