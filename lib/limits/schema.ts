import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { password } from '../determinations/schema';
import { said } from '../words/said';

/** A limit of a measured thing on this very aircraft; bounds as typed, in the unit beside the box. */
export const addLimitInput = z
  .object({
    requestId,
    aircraftId: z.uuid(said('Choose the aircraft.')),
    measurement: z.string().min(1, said('Choose what is measured.')).max(80),
    min: z.string().trim().max(20),
    max: z.string().trim().max(20),
    source: writtenWords(said('Where the limit comes from'), 300),
    sourceDate: z.preprocess(
      (typed) => (typed === '' ? null : typed),
      z.iso.date(said('This is not a day.')).nullable(),
    ),
  })
  .refine(({ min, max }) => min !== '' || max !== '', {
    path: ['max'],
    message: said('At least one is needed: the least or the most that is allowed.'),
  });

export const endLimitInput = z.object({
  requestId,
  limitId: z.uuid(),
  why: writtenWords(said('The reason'), 500),
  password,
});
