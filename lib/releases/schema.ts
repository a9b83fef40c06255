import { z } from 'zod';
import { requestId } from '../access/request-id';
import { parseTenths } from '../rules/hours';

/** Yes, no, or not said: the last stays unknown, and the answer names it. */
const yesNo = z.enum(['yes', 'no', 'not-said']);

const localTime = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, 'Enter a date and a time.');

/** A flight as composed at the desk. Times are wall-clock times at the place they belong to. */
export const composedFlight = z.object({
  aircraftId: z.uuid('Choose the aircraft.'),
  pilotId: z.uuid().nullable(),
  fromBaseId: z.uuid('Choose where it departs.'),
  toBaseId: z.uuid('Choose where it arrives.'),
  departLocal: localTime,
  arriveLocal: localTime,
  rules: z.enum(['VFR', 'IFR'], 'Choose VFR or IFR.'),
  purpose: z.enum(
    ['instruction-for-hire', 'carriage-for-hire', 'student-solo', 'private', 'check-flight', 'to-inspection'],
    'Choose what the flight is for.',
  ),
  /** Planned time in service, "1.2". */
  plannedHours: z.string().refine((text) => {
    const tenths = parseTenths(text.trim());
    return tenths !== null && tenths > 0;
  }, 'Enter hours in tenths, for example 1.2.'),
  overWaterBeyondGlide: yesNo,
  transponderAirspace: yesNo,
  adsbAirspace: yesNo,
  controlledAirspace: yesNo,
  usesVor: yesNo,
  trainingWithin50Nm: yesNo,
  crewOnly: yesNo,
  highestAltitudeFtMsl: z.int('Enter feet above sea level.').min(0).max(60_000).nullable(),
  atcTransponder: z.enum(['not-asked', 'granted', 'refused']),
  atcAdsb: z.enum(['not-asked', 'granted', 'refused']),
  continuingToRepair: z.boolean(),
  /** The special flight permit it is flown under. Optional without a default: requests from before it say nothing. */
  permitId: z.uuid().optional(),
});
export type ComposedFlight = z.output<typeof composedFlight>;

export const answerFlightInput = composedFlight;

export const releaseFlightInput = composedFlight.extend({
  requestId,
  /** The version of the aircraft's facts that the answer on the screen stood on. */
  factsVersion: z.int(),
  /** With limits: the dispatcher has passed them to the pilot in command. */
  limitsPassedOn: z.boolean(),
});
