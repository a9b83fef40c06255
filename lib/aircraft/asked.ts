/** Questions that several forms of the office ask alike. */
import { z } from 'zod';
import { said } from '../words/said';

/** Yes, no, or not known yet: the last stays unknown, and an answer that needs it names it. */
export const yesNoOrNot = z.enum(
  ['yes', 'no', 'not-known'],
  said('Choose one; “Not known yet” is an answer.'),
);
export type YesNoOrNot = z.output<typeof yesNoOrNot>;

export const knownOf = (typed: YesNoOrNot): boolean | null =>
  typed === 'not-known' ? null : typed === 'yes';
export const saidOf = (fact: boolean | null): YesNoOrNot =>
  fact === null ? 'not-known' : fact ? 'yes' : 'no';

/** The document that what is signed for was taken from. */
export const documentNamed = z
  .string()
  .trim()
  .min(3, said('Name the document it is taken from, with its revision or date.'))
  .max(300, said('300 characters at most.'));

export const password = z.string().min(1, said('Enter your password to sign.'));

export const reason = z.string().trim().min(3, said('Say why.')).max(500, said('500 characters at most.'));
