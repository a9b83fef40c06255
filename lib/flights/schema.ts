import { z } from 'zod';
import { requestId } from '../access/request-id';
import { parseTenths } from '../rules/hours';
import type { Purpose } from '../rules/operations';
import { said } from '../words/said';

const localTime = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, said('Enter a date and a time.'));

export const RULES = ['VFR', 'IFR'] as const;

/** What a planned flight can be for; every purpose there is. */
export const PURPOSES = [
  'instruction-for-hire',
  'carriage-for-hire',
  'student-solo',
  'private',
  'check-flight',
  'to-inspection',
] as const satisfies readonly Purpose[];

/** The identifier of a base or an airport. */
const place = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9]{2,7}$/, said('Enter the identifier of a base or an airport.'));

/**
 * A flight somebody plans. `departLocal` is wall-clock time at `fromIdent`, `arriveLocal` at `toIdent`; where one is left out it
 * is the aircraft's base. The last four are optional without a default: requests from before them say nothing.
 */
export const planFlightInput = z.object({
  requestId,
  aircraftId: z.uuid(said('Choose the aircraft.')),
  /** Null: nobody is named yet. */
  pilotId: z.uuid(said('Choose a pilot, or leave it open.')).nullable(),
  departLocal: localTime,
  arriveLocal: localTime,
  /** Planned time in service, "1.2"; empty when nobody has said. */
  plannedHours: z
    .string()
    .trim()
    .refine(
      (text) => text === '' || (parseTenths(text) ?? 0) > 0,
      said('Enter hours in tenths, for example 1.2.'),
    ),
  words: z.string().trim().max(500, said('The words can have 500 characters at most.')),
  fromIdent: place.optional(),
  toIdent: place.optional(),
  rules: z.enum(RULES, said('Choose VFR or IFR.')).optional(),
  purpose: z.enum(PURPOSES, said('Choose what the flight is for.')).optional(),
});

export const cancelPlannedFlightInput = z.object({ requestId, plannedFlightId: z.uuid() });
