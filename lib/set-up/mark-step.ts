import { z } from 'zod';
import { requestId } from '../access/request-id';
import { command } from '../access/service';
import { CALLED_DONE, WHOLE } from './steps';

/**
 * Calls a step of setting up done, or takes that back. Only for steps the facts cannot tell about, and for the whole of it;
 * the newest row counts, and no row is ever changed. It decides nothing for a flight.
 */
export const markStep = command({
  verb: 'set-up.mark-step',
  input: z.object({ requestId, step: z.enum([...CALLED_DONE, WHOLE]), done: z.boolean() }),
  async run({ tx, actor, operatorId, now, requestId: id }, { step, done }) {
    await tx.setUpStep.create({
      data: { id, operatorId, step, done, words: '', byId: actor.personId, at: now },
    });
    return {
      value: { step, done },
      audit: { subjectKind: 'set-up-step', subjectId: id, detail: { step, done } },
    };
  },
});
