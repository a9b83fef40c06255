import { z } from 'zod';
import { requestId } from '../access/request-id';
import { parseTenths } from '../rules/hours';
import { said } from '../words/said';

/** Yes, no, or not said: the last stays unknown, and the answer names it. */
const yesNo = z.enum(['yes', 'no', 'not-said']);

const localTime = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, said('Enter a date and a time.'));

/** The letters of a place: a base of the operator, or an airport of the shipped file. */
const placeIdent = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9-]{2,8}$/, said('An ident has two to eight letters and digits.'));

const flightFields = z.object({
  aircraftId: z.uuid(said('Choose the aircraft.')),
  pilotId: z.uuid().nullable(),
  /** Either a base, or empty and the ident beside it. */
  fromBaseId: z.uuid(said('Choose where it departs.')).or(z.literal('')),
  toBaseId: z.uuid(said('Choose where it arrives.')).or(z.literal('')),
  // Optional without a default: requests from before them must keep their hash.
  fromIdent: placeIdent.optional(),
  toIdent: placeIdent.optional(),
  /** The planned flight it is released from. */
  plannedFlightId: z.uuid().optional(),
  departLocal: localTime,
  arriveLocal: localTime,
  rules: z.enum(['VFR', 'IFR'], said('Choose VFR or IFR.')),
  purpose: z.enum(
    ['instruction-for-hire', 'carriage-for-hire', 'student-solo', 'private', 'check-flight', 'to-inspection'],
    said('Choose what the flight is for.'),
  ),
  /** Planned time in service, "1.2". */
  plannedHours: z.string().refine((text) => {
    const tenths = parseTenths(text.trim());
    return tenths !== null && tenths > 0;
  }, said('Enter hours in tenths, for example 1.2.')),
  overWaterBeyondGlide: yesNo,
  transponderAirspace: yesNo,
  adsbAirspace: yesNo,
  controlledAirspace: yesNo,
  usesVor: yesNo,
  trainingWithin50Nm: yesNo,
  crewOnly: yesNo,
  highestAltitudeFtMsl: z.int(said('Enter feet above sea level.')).min(0).max(60_000).nullable(),
  atcTransponder: z.enum(['not-asked', 'granted', 'refused']),
  atcAdsb: z.enum(['not-asked', 'granted', 'refused']),
  continuingToRepair: z.boolean(),
  /** The special flight permit it is flown under. Optional without a default: requests from before it say nothing. */
  permitId: z.uuid().optional(),
});

type Ends = Pick<z.output<typeof flightFields>, 'fromBaseId' | 'fromIdent' | 'toBaseId' | 'toIdent'>;

/** Each end of a flight is a base or an ident, one of them and not both. */
function oneOfEach({ fromBaseId, fromIdent, toBaseId, toIdent }: Ends, context: z.RefinementCtx): void {
  for (const [base, ident, path, empty] of [
    [fromBaseId, fromIdent, 'from', 'Choose where it departs.'],
    [toBaseId, toIdent, 'to', 'Choose where it arrives.'],
  ] as const) {
    if (base === '' && ident === undefined) {
      context.addIssue({ code: 'custom', path: [`${path}BaseId`], message: empty });
    }
    if (base !== '' && ident !== undefined) {
      context.addIssue({
        code: 'custom',
        path: [`${path}Ident`],
        message: said('Name a base or an airport, not both.'),
      });
    }
  }
}

/** A flight as composed at the desk. Times are wall-clock times at the place they belong to. */
export const composedFlight = flightFields.superRefine(oneOfEach);
export type ComposedFlight = z.output<typeof composedFlight>;

export const answerFlightInput = composedFlight;

export const releaseFlightInput = flightFields
  .extend({
    requestId,
    /** The version of the aircraft's facts that the answer on the screen stood on. */
    factsVersion: z.int(),
    /** With limits: the dispatcher has passed them to the pilot in command. */
    limitsPassedOn: z.boolean(),
  })
  .superRefine(oneOfEach);
