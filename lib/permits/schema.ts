import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { password } from '../determinations/schema';
import { said } from '../words/said';

/** What a permit may be for, of 21.197(a) as far as this tool goes. */
export const PERMIT_PURPOSES = ['repair', 'storage', 'delivery', 'evacuation'] as const;
export type PermitPurpose = (typeof PERMIT_PURPOSES)[number];

/** A special flight permit, transcribed from its paper. Nothing is pre-answered. */
export const recordPermitInput = z
  .object({
    requestId,
    aircraftId: z.uuid(said('Choose the aircraft.')),
    reference: writtenWords(said('The permit’s number or reference'), 80),
    purpose: z.enum(PERMIT_PURPOSES, said('Choose what the permit says the flight is for.')),
    issuedBy: writtenWords(said('Who issued it'), 160),
    issuedOn: z.iso.date(said('Enter the day of issue.')),
    goodFrom: z.iso.date(said('Enter the first good day.')),
    goodThrough: z.iso.date(said('Enter the last good day.')),
    fromBaseId: z.uuid(said('Choose where the flight departs.')),
    toBaseId: z.uuid(said('Choose where it arrives.')),
    crew: writtenWords(said('Who may be aboard'), 300),
    /** One condition each, in the permit's words. */
    limits: z
      .array(writtenWords('A condition', 500))
      .min(1, said('Write down every condition of the permit, one a line.'))
      .max(40, said('At most 40 conditions.')),
    /** Ids of the open write-ups, requirements and directives that it names. */
    covers: z.array(z.uuid()).min(1, said('Choose everything the permit names.')).max(100),
    asksInspection: z.boolean({
      error: said('Say whether the permit asks for an inspection before the flight.'),
    }),
    password,
  })
  .superRefine(({ issuedOn, goodFrom, goodThrough }, context) => {
    const asks = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (goodThrough < goodFrom) asks('goodThrough', 'The last good day lies before the first.');
    if (goodFrom < issuedOn) asks('goodFrom', 'It cannot be good before it was issued.');
  });

/** The inspection that a permit asks for before its flight. */
export const inspectForPermitInput = z.object({
  requestId,
  permitId: z.uuid(),
  safe: z.literal(true, { error: said('The flight needs your finding that the aircraft is safe for it.') }),
  statement: writtenWords(said('What was inspected and found')),
  password,
});

export const readPermitInput = z.object({ permitId: z.uuid() });
export const readPermitChoicesInput = z.object({ aircraftId: z.uuid() });
