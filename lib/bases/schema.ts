import { z } from 'zod';
import { requestId } from '../access/request-id';
import { isZone } from '../rules/clock-change';
import { said } from '../words/said';

/** Yes, no, or not said: the last stays unknown, and an answer that needs it names it. */
const yesNo = z.enum(['yes', 'no', 'not-said']);

const degrees = (most: number, say: string) =>
  z
    .string()
    .trim()
    .regex(/^[+-]?\d{1,3}(\.\d{1,8})?$/, say)
    .refine((text) => Math.abs(Number(text)) <= most, say);

const facts = {
  requestId,
  name: z
    .string()
    .trim()
    .min(1, said('Enter the name.'))
    .max(120, said('The name can have 120 characters at most.')),
  latitudeDeg: degrees(90, said('Enter decimal degrees from -90 to 90, for example 43.31. South is minus.')),
  longitudeDeg: degrees(
    180,
    said('Enter decimal degrees from -180 to 180, for example -91.79. West is minus.'),
  ),
  zone: z.string().trim().refine(isZone, said('Enter the name of a zone, for example America/Chicago.')),
  /** Somebody looked at the time the zone's clocks show. Asked whenever the zone is new. */
  zoneConfirmed: z.boolean(),
  repairAvailable: yesNo,
  transponderAirspace: yesNo,
  adsbAirspace: yesNo,
  controlledAirspace: yesNo,
};

export const addBaseInput = z.object({
  ...facts,
  ident: z
    .string()
    .trim()
    .toUpperCase()
    .regex(/^[A-Z0-9]{2,7}$/, said('Enter 2 to 7 letters and digits.')),
  /** The airport of the shipped file the form was filled from; empty when typed. */
  airportIdent: z.string().trim().toUpperCase().max(7),
});

export const changeBaseInput = z.object({ ...facts, baseId: z.uuid() });
export type BaseFactsInput = Omit<z.output<typeof changeBaseInput>, 'baseId' | 'requestId'>;
