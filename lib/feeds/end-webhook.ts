import { command } from '../access/service';
import { Refusal } from '../problems';
import { endWebhookInput } from './schema';
import { said } from '../words/said';

/** Ends a webhook for good: nothing more is sent there, not even what waits. */
export const endWebhook = command({
  verb: 'webhook.end',
  input: endWebhookInput,
  async run({ tx, operatorId, actor, now }, { webhookId }) {
    const webhook = await tx.webhook.findUnique({ where: { operatorId_id: { operatorId, id: webhookId } } });
    if (!webhook) throw new Refusal('not_found', { say: said('There is no such webhook here.') });
    await tx.webhook.updateMany({
      where: { operatorId, id: webhookId, endedAt: null },
      data: { endedAt: now, endedById: actor.personId },
    });
    return {
      value: { webhookId },
      audit: { subjectKind: 'webhook', subjectId: webhookId, detail: { name: webhook.name } },
    };
  },
});
