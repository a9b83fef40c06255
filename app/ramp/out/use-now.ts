'use client';

import { useEffect, useState } from 'react';

/** The phone's clock in milliseconds, renewed every minute: enough to say of which day something is. */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const clock = setInterval(() => setNow(Date.now()), 60_000);
    return () => clearInterval(clock);
  }, []);
  return now;
}
