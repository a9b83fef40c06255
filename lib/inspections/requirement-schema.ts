import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { password } from '../determinations/schema';
import { parseDegrees, VOR_METHODS } from '../rules/part-91/91-171-bearing-errors';
import { hoursText, yesOrNo } from './schema';
import { said } from '../words/said';

/** Work on something due that has no write-up. What is fixed by the kind of requirement is not asked. */
export const startRequirementWorkInput = z.object({
  requestId,
  requirementId: z.uuid(),
  title: writtenWords(said('What is to be done'), 200),
  /** For directives, life limits and maker's intervals; null where the kind of requirement says it. */
  workKind: z
    .enum(['preventive', 'minor'], said('Say whether this is preventive maintenance or a minor repair.'))
    .nullable(),
  preventiveItem: z.int(said('Choose the item.')).min(1).max(31).nullable(),
  /** The system; the part of the aircraft follows from it. */
  jasc: z
    .string()
    .regex(/^\d{4}$/, said('Choose the system: a JASC code has four digits.'))
    .nullable(),
  swapOnly: yesOrNo('Say whether a unit was only taken out and put in.').nullable(),
});

const FEET = said('The altitude tested to is whole feet.');

/** What the record of some kinds says beyond date and hours. */
const details = {
  testedToFt: z.int(FEET).min(1, FEET).max(60_000, FEET).nullable(),
  newExpiry: z.iso.date(said('This is not a day.')).nullable(),
  method: z.string().trim().max(1000),
  revision: z.string().trim().max(200),
};

/** Something due answered elsewhere, entered from the papers that came back. */
export const recordRequirementInput = z
  .object({
    requestId,
    requirementId: z.uuid(),
    doneOn: z.iso.date(said('The day it was done is needed.')),
    ttis: hoursText,
    approvedBy: writtenWords(said('The name of whoever approved it'), 200),
    certificateNumber: writtenWords(said('The certificate number'), 60),
    certificateKind: writtenWords(said('The kind of certificate'), 100),
    authorised: yesOrNo('Say whether that person held what the law asks on that day.'),
    papers: writtenWords(said('Which papers say so, and where they are,'), 300),
    ...details,
    supersedesId: z.uuid().nullable(),
    why: z.string().trim().max(500),
    password,
  })
  .refine((input) => input.supersedesId === null || input.why !== '', {
    path: ['why'],
    error: said('Say why the earlier record is wrong.'),
  });

const degrees = z
  .string()
  .trim()
  .refine((text) => text === '' || parseDegrees(text) !== null, said('Degrees, whole or half: 2, -1.5.'));

export const recordVorCheckInput = z.object({
  requestId,
  requirementId: z.uuid(),
  method: z.enum(VOR_METHODS, said('Choose how it was checked.')),
  place: writtenWords(said('The place'), 200),
  checkedOn: z.iso.date(said('The day of the check is needed.')),
  /** Error of each receiver; for two against each other, the two bearings read. */
  first: degrees.refine((text) => text !== '', said('The bearing error is needed.')),
  second: degrees,
  password,
});

export const recordEltUseInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  usedOn: z.iso.date(said('The day it was in use is needed.')),
  minutes: z
    .int(said('Whole minutes, from 1 on.'))
    .min(1, said('Whole minutes, from 1 on.'))
    .max(100_000, said('That is more than two months.')),
  words: writtenWords(said('Why it was in use'), 300),
});
