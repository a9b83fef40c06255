import { z } from 'zod';
import { filled, said } from '../words/said';

/** Words somebody has to write: trimmed, not empty, not endless. `what` begins the sentence of the refusal. */
export const writtenWords = (what: string, max = 2000) =>
  z
    .string()
    .trim()
    .min(1, filled(said('{what} is needed.'), { what }))
    .max(max, filled(said('{what} can have {max} characters at most.'), { what, max }));
