import { z } from 'zod';
import { said } from '../words/said';
import { MOST_BYTES } from './row-limits';

export { MOST_BYTES } from './row-limits';

/** A file of rows as a form sends it; spread into the schema of a check and of an import. */
export const rowFile = {
  format: z.enum(['csv', 'json'], said('Choose CSV or JSON.')),
  fileName: z.string().trim().max(200, said('The name of the file can have 200 characters at most.')),
  /** The file as it is, in UTF-8. */
  text: z
    .string()
    .min(1, said('Choose a file, or paste its text.'))
    .refine(
      (text) => new TextEncoder().encode(text).length <= MOST_BYTES,
      said('The file is larger than 1 MB. Split it.'),
    ),
};
