import { randomUUID } from 'node:crypto';
import type { ActorRef } from '@/lib/access/actor';
import { reportFinding } from '@/lib/findings/report-finding';
import { withClient } from '@/lib/operate/connection';

/** What was written until `stop` was called. */
export interface Written {
  readonly count: number;
  readonly refused: number;
  /** Middle of the times one write took, ms. */
  readonly median: number;
}

/** Writes findings through the services, one after the other, as a pilot does; each is a row in the audit chain. */
export function writing(ref: ActorRef, aircraftId: string): { stop(): Promise<Written> } {
  let isOn = true;
  const times: number[] = [];
  let refused = 0;
  const going = (async () => {
    while (isOn) {
      const began = performance.now();
      const result = await reportFinding(ref, {
        requestId: randomUUID(),
        aircraftId,
        walkaroundId: null,
        station: 'propeller',
        findingKey: 'propeller-nick',
        kind: null,
        jasc: null,
        equipmentId: null,
        inoperativeCount: null,
        place: 'blade 1, leading edge',
        words: 'Nick in the leading edge of the blade.',
        measurements: {},
        foundAt: new Date().toISOString(),
      });
      if (!result.ok) refused += 1;
      times.push(performance.now() - began);
    }
  })();
  return {
    async stop() {
      isOn = false;
      await going;
      times.sort((a, b) => a - b);
      return { count: times.length - refused, refused, median: times[Math.floor(times.length / 2)] ?? 0 };
    },
  };
}

/** Findings in the database now. */
export const findingsIn = (ownerUrl: string): Promise<number> =>
  withClient(ownerUrl, async (client) => {
    const { rows } = await client.query<{ n: number }>('SELECT count(*)::int AS n FROM finding');
    return rows[0]?.n ?? 0;
  });
