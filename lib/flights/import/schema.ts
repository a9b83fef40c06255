import { z } from 'zod';
import { requestId } from '../../access/request-id';
import { said } from '../../words/said';

/** 1 MB of UTF-8. */
export const MOST_BYTES = 1_048_576;

const file = {
  kind: z.enum(['csv', 'icalendar'], said('Choose CSV or iCalendar.')),
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

export const checkImportInput = z.object(file);
export const importPlansInput = z.object({ requestId, ...file });
export type FileToImport = z.output<typeof checkImportInput>;
