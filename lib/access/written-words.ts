import { z } from 'zod';

/** Words somebody has to write: trimmed, not empty, not endless. `what` begins the sentence of the refusal. */
export const writtenWords = (what: string, max = 2000) =>
  z.string().trim().min(1, `${what} is needed.`).max(max, `${what} can have ${max} characters at most.`);
