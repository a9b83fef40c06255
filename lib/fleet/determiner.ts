import { z } from 'zod';
import type { DeterminerFacts } from '../rules/aircraft';

const recorded = z.object({
  determiner: z.object({
    name: z.string(),
    pilotGrade: z
      .enum(['student', 'sport', 'recreational', 'private', 'commercial', 'airline-transport'])
      .nullable(),
    pilotRatedForAircraft: z.boolean(),
    mechanicRatings: z.array(z.enum(['airframe', 'powerplant'])),
    repairStation: z.boolean(),
  }),
});

/**
 * Who made a determination, as it was signed (the signed content carries the certificates of that day). Content that
 * cannot be read counts as a person without any certificate, so that the deferral does not stand.
 */
export function toDeterminerRecord(content: unknown, name: string): DeterminerFacts {
  const parsed = recorded.safeParse(content);
  if (parsed.success) return parsed.data.determiner;
  return { name, pilotGrade: null, pilotRatedForAircraft: false, mechanicRatings: [], repairStation: false };
}
