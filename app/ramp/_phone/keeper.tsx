'use client';

import { useEffect } from 'react';
import { startWorker } from '../_worker/start-worker';
import { hear } from './channel';
import { refreshPack } from './pack';
import { keepSending } from './sender';

/** On every page of the ramp: sends what waits, keeps what the phone takes along fresh, and looks after the worker. Draws nothing. */
export function Keeper() {
  useEffect(() => {
    const refresh = () => void refreshPack();
    refresh();
    window.addEventListener('online', refresh);
    // What was sent changes what is known.
    const stopHearing = hear((told) => {
      if (told.topic === 'sync' && told.state && !told.state.isSending && told.state.stuck === null)
        refresh();
    });
    const stop = keepSending();
    void startWorker();
    return () => {
      window.removeEventListener('online', refresh);
      stopHearing();
      stop();
    };
  }, []);
  return null;
}
