import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { EVENT_NAMES } from './events';
import { IN_ADDRESS, SCOPE_NAMES } from './scopes';
import { said } from '../words/said';

const name = writtenWords('A name', 80);
const id = z.uuid();

/** What is typed to issue a key. The last day is one at UTC: a key has no base. */
export const issueKeyInput = z.object({
  requestId,
  name,
  scopes: z
    .array(z.enum(SCOPE_NAMES as [string, ...string[]]))
    .min(1, said('Choose what the key opens.'))
    .refine((all) => all.length === 1 || !all.includes(IN_ADDRESS), {
      error: said(
        'A key for the calendar stands in an address that others may see. Issue it a key of its own.',
      ),
    }),
  /** Last day the key is good, or empty: until it is ended. */
  lastDay: z.union([z.literal(''), z.iso.date(said('Enter a date, or leave it empty.'))]),
  /** Asked again: a key outlasts the session. */
  password: z.string().min(1, said('Your password is needed to issue a key.')).max(200),
});

export const endKeyInput = z.object({ requestId, keyId: id });

/** What is typed to add a webhook. What addresses are taken is judged in the service. */
export const addWebhookInput = z.object({
  requestId,
  name,
  url: z
    .string()
    .trim()
    .min(1, said('An address is needed.'))
    .max(500, said('The address can have 500 characters at most.')),
  events: z.array(z.enum(EVENT_NAMES as [string, ...string[]])).min(1, said('Choose at least one event.')),
});

export const endWebhookInput = z.object({ requestId, webhookId: id });
export const sendAgainInput = z.object({ requestId, deliveryId: id });
