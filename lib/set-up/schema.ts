import { z } from 'zod';
import { addBaseInput } from '../bases/schema';
import { said } from '../words/said';

/** What the page asks, as it is typed. The base is that of lib/bases; its airspace is asked later. */
export const setUpInput = addBaseInput.extend({
  token: z.string().trim().max(200),
  operatorName: z
    .string()
    .trim()
    .min(1, said('Enter the name of the school or club.'))
    .max(120, said('The name can have 120 characters at most.')),
  part141: z.enum(['yes', 'no', 'not-said'], { error: said('Choose one. Not known is an answer too.') }),
  units: z.enum(['us-customary', 'metric'], { error: said('Choose one.') }),
  personName: z
    .string()
    .trim()
    .min(1, said('Enter your name.'))
    .max(120, said('The name can have 120 characters at most.')),
  email: z
    .email({ error: said('Enter an e-mail address.') })
    .trim()
    .max(254)
    .toLowerCase(),
  password: z.string().min(1, said('Choose a password.')),
});
export type SetUpInput = z.output<typeof setUpInput>;
