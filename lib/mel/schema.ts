import { z } from 'zod';
import { requestId } from '../access/request-id';
import { password } from '../determinations/schema';
import { rowFile } from '../equipment/row-file';
import { said } from '../words/said';

const optionalDay = z.preprocess(
  (typed) => (typed === '' ? null : typed),
  z.iso.date(said('This is not a day.')).nullable(),
);
const words = (empty: string, most: number) =>
  z.string().trim().min(1, empty).max(most, said('This is too long.'));

/** Whether the letter is aboard; nobody has looked: not known, and that closes both ways (91.213(a)(2)). */
const aboard = z.enum(['yes', 'no', 'not-known'], said('Say whether the letter is aboard.'));

/** The head of a list: which it is, its letter, and what binds. */
const head = {
  aircraftId: z.uuid(said('Choose the aircraft.')),
  reference: words(said('The reference of the list is needed.'), 120),
  revision: z.string().trim().max(120, said('This is too long.')),
  letterReference: words(said('The reference of the letter of authorization is needed.'), 120),
  letterIssuedOn: optionalDay,
  letterAboard: aboard,
  /** Asked, never assumed: whether repair intervals bind is the operator's to say. */
  enforceCategories: z.enum(['yes', 'no'], said('Say whether repair intervals bind your operation.')),
  extensionCategories: z.array(z.enum(['B', 'C'], said('Only categories B and C can be extended.'))).max(2),
  extensionReference: z.string().trim().max(200, said('This is too long.')),
  ...rowFile,
};

const extensionWhole = (
  typed: { extensionCategories: readonly string[]; extensionReference: string },
  context: z.RefinementCtx,
) => {
  const fault = (path: string, message: string) =>
    context.addIssue({ code: 'custom', path: [path], message });
  if (typed.extensionCategories.length > 0 && typed.extensionReference === '') {
    fault('extensionReference', said('Say where the letter allows the extension.'));
  }
  if (typed.extensionCategories.length === 0 && typed.extensionReference !== '') {
    fault('extensionCategories', said('Choose which categories it extends, or leave the reference empty.'));
  }
};

export const checkMelInput = z.object(head).superRefine(extensionWhole);
export const importMelInput = z.object({ requestId, ...head, password }).superRefine(extensionWhole);

export const melLetterInput = z.object({
  requestId,
  melId: z.uuid(),
  letterReference: words(said('The reference of the letter of authorization is needed.'), 120),
  letterIssuedOn: optionalDay,
  letterAboard: aboard,
  password,
});

export const endMelInput = z.object({
  requestId,
  melId: z.uuid(),
  why: words(said('The reason is needed.'), 500),
  source: words(said('Name the document that says so.'), 300),
  password,
});

export const noMelInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  source: words(said('Name the document or the person that says so.'), 300),
  password,
});
