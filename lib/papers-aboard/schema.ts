import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { password } from '../determinations/schema';
import { PAPER_KINDS } from '../rules/aircraft';
import { filled, said } from '../words/said';

const day = (what: string) =>
  z.preprocess(
    (typed) => (typed === '' ? null : typed),
    z.iso.date(filled(said('{what} is a date.'), { what })).nullable(),
  );

/** A paper that must be aboard (91.203, 91.9), as somebody reads it. */
export const addPaperInput = z
  .object({
    requestId,
    aircraftId: z.uuid(said('Choose the aircraft.')),
    kind: z.enum(PAPER_KINDS, said('Choose which paper it is.')),
    reference: writtenWords(said('The number or mark of the paper'), 120),
    expires: z.boolean(said('Say whether it runs out.')),
    validThrough: day('The last day'),
    /** Asked of a registration: 47.40(a) counts from it. */
    issuedOn: day('The day of issue'),
    aboard: z.boolean(said('Say whether the paper is aboard.')),
    password,
  })
  .refine(({ expires, validThrough }) => !expires || validThrough !== null, {
    path: ['validThrough'],
    message: said('The last day is needed, as the paper says it.'),
  })
  .refine(({ expires, validThrough }) => expires || validThrough === null, {
    path: ['validThrough'],
    message: said('A paper without an end has no last day. Leave it empty, or say that it runs out.'),
  });
