import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { clientInstant } from '../findings/schema';
import { LOGGED } from '../rules/release-state';
import { said } from '../words/said';

/** The pilot in command takes the aircraft: signed. */
export const acceptReleaseInput = z.object({
  requestId,
  releaseId: z.uuid(),
  /** Hash of the release they looked at; another one is a conflict. */
  answerHash: z.string(),
  /** Needed when the answer has limits: they were read. */
  limitsRead: z.boolean(),
  /** They say what ACCEPTANCE_STATEMENT says. */
  statementConfirmed: z.literal(true, said('Confirm what you sign.')),
  password: z.string().min(1, said('Enter your password to sign.')),
});

/** One happening of a released flight. `words` are needed for `closed`. */
export const logFlightInput = z
  .object({
    requestId,
    releaseId: z.uuid(),
    what: z.enum(LOGGED),
    /** When it happened, by the clock of whoever says it; `now`: as it comes in. */
    at: z.literal('now').or(clientInstant),
    words: z.string().trim().max(500, said('The words can have 500 characters at most.')),
  })
  .refine(({ what, words }) => what !== 'closed' || words !== '', {
    path: ['words'],
    message: said('Say in a few words why the flight is closed without meters.'),
  });

/** A release taken back: by the desk, or declined by its pilot in command. */
export const withdrawReleaseInput = z.object({
  requestId,
  releaseId: z.uuid(),
  words: writtenWords(said('Why it is withdrawn'), 500),
});
