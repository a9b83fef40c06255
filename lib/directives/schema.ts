import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { password } from '../determinations/schema';
import { said } from '../words/said';

/** A directive that applies, as far as it names equipment. What of it recurs is entered beside the inspections. */
export const addDirectiveInput = z.object({
  requestId,
  aircraftId: z.uuid(said('Choose the aircraft.')),
  number: writtenWords(said('The number of the directive'), 60),
  title: writtenWords(said('Its subject'), 200),
  /** Null: it names no equipment of the list. */
  equipmentId: z.uuid(said('Choose the line of the equipment list.')).nullable(),
  requiresOperable: z.boolean(said('Say whether it requires that equipment to work.')),
});

export const endDirectiveInput = z.object({
  requestId,
  directiveId: z.uuid(),
  why: writtenWords(said('The reason'), 500),
  reference: writtenWords(said('The document that says it applies no more'), 200).min(
    3,
    said('Name the document that says it applies no more.'),
  ),
  password,
});

/** Somebody went through all that apply. */
export const reviewDirectivesInput = z.object({
  requestId,
  aircraftId: z.uuid(said('Choose the aircraft.')),
  reviewedOn: z.iso.date(said('The day of the review is needed.')),
  document: writtenWords(said('The list or record it was gone through by'), 300),
  password,
});
