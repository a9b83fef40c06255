import { z } from 'zod';
import { requestId } from '../access/request-id';
import { password } from '../determinations/schema';
import { said } from '../words/said';
import { lastDoneShape } from './last-done-columns';
import { writeUpShape } from './write-up-columns';

/** The same texts as a row of a file; equipment and item of a list by name. */
export const carryOverWriteUpInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  ...writeUpShape,
  password,
});

export const carryOverLastDoneInput = z.object({
  requestId,
  requirementId: z.uuid(),
  ...lastDoneShape,
  password,
});

export const addUsualSetInput = z
  .object({
    requestId,
    aircraftId: z.uuid(),
    kinds: z
      .array(
        z.enum([
          'annual',
          'hundred-hour',
          'static-and-altimeter',
          'transponder',
          'elt-inspection',
          'elt-battery',
          'vor-check',
        ]),
      )
      .min(1, said('Choose at least one.')),
    /** The last good day of the battery, as marked on it (91.207(c)(2)). */
    batteryThrough: z.preprocess(
      (typed) => (typed === '' ? null : typed),
      z.iso.date(said('This is not a day.')).nullable(),
    ),
  })
  .refine(({ kinds, batteryThrough }) => !kinds.includes('elt-battery') || batteryThrough !== null, {
    path: ['batteryThrough'],
    message: said('The date marked on the battery is needed: 91.207(c)(2).'),
  });
