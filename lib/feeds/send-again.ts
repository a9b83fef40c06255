import { command } from '../access/service';
import { sendDeliveryJob } from '../db/job-queue';
import { Refusal } from '../problems';
import { sendAgainInput } from './schema';
import { said } from '../words/said';

/** Puts a delivery that was given up in line again, under the same number. Refuses one that was sent or still waits. */
export const sendAgain = command({
  verb: 'webhook.send-again',
  input: sendAgainInput,
  async run({ tx, operatorId }, { deliveryId }) {
    const delivery = await tx.webhookDelivery.findUnique({
      where: { operatorId_id: { operatorId, id: deliveryId } },
      include: { webhook: { select: { name: true, endedAt: true } } },
    });
    if (!delivery) throw new Refusal('not_found', { say: said('There is no such delivery here.') });
    if (delivery.webhook.endedAt) throw new Refusal('conflict', { say: said('This webhook was ended.') });
    if (delivery.state !== 'given-up') {
      throw new Refusal('conflict', { say: said('Only what was given up is sent again by hand.') });
    }
    await tx.webhookDelivery.updateMany({
      where: { operatorId, id: deliveryId },
      data: { state: 'waiting', trouble: null },
    });
    await sendDeliveryJob(tx, { operatorId, deliveryId });
    return {
      value: { deliveryId },
      audit: {
        subjectKind: 'webhook-delivery',
        subjectId: deliveryId,
        detail: { webhook: delivery.webhook.name, event: delivery.event, seq: delivery.auditSeq },
      },
    };
  },
});
