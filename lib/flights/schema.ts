import { z } from 'zod';
import { requestId } from '../access/request-id';
import { parseTenths } from '../rules/hours';

const localTime = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, 'Enter a date and a time.');

/** A flight somebody plans. Times are wall-clock times at the aircraft's base. */
export const planFlightInput = z.object({
  requestId,
  aircraftId: z.uuid('Choose the aircraft.'),
  /** Null: nobody is named yet. */
  pilotId: z.uuid('Choose a pilot, or leave it open.').nullable(),
  departLocal: localTime,
  arriveLocal: localTime,
  /** Planned time in service, "1.2"; empty when nobody has said. */
  plannedHours: z
    .string()
    .trim()
    .refine((text) => text === '' || (parseTenths(text) ?? 0) > 0, 'Enter hours in tenths, for example 1.2.'),
  words: z.string().trim().max(500, 'The words can have 500 characters at most.'),
});

export const cancelPlannedFlightInput = z.object({ requestId, plannedFlightId: z.uuid() });
