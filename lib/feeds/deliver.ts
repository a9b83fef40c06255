import { type DeliveryJob } from '../db/job-queue';
import { noteInOperator, readInOperator } from '../db/scope';
import { postSigned } from './post-signed';
import { CannotSeal, unseal } from './seal';
import { sealedFor, signedHeaders } from './signature';
import { BadAddress } from './webhook-address';

/** The receiver's way to say that it wants no more of it (Standard Webhooks: 410 Gone). */
const GONE = 410;

/**
 * One try to deliver. Throws when it is to be tried again; the queue decides whether and when. A delivery that was sent,
 * whose webhook was ended, or that cannot ever be sent is done with. At least once: a server that dies between the
 * receiver's answer and our note of it sends again, with the same `webhook-id`.
 */
export async function deliver({ operatorId, deliveryId }: DeliveryJob, now = new Date()): Promise<void> {
  const delivery = await readInOperator(operatorId, (tx) =>
    tx.webhookDelivery.findUnique({
      where: { operatorId_id: { operatorId, id: deliveryId } },
      include: { webhook: true },
    }),
  );
  if (!delivery || delivery.state !== 'waiting') return;
  const { webhook } = delivery;
  if (webhook.endedAt) return giveUp({ operatorId, deliveryId }, 'The webhook was ended before it was sent.');
  const note = (data: { lastStatus: number | null; trouble: string | null; state?: string; sentAt?: Date }) =>
    noteInOperator(operatorId, (tx) =>
      tx.webhookDelivery.updateMany({
        where: { operatorId, id: deliveryId, state: 'waiting' },
        data: { ...data, tries: { increment: 1 } },
      }),
    );
  let status: number;
  try {
    const secret = unseal(webhook.sealedSecret, sealedFor(operatorId, webhook.id));
    const body = JSON.stringify(delivery.body);
    status = await postSigned(webhook.url, signedHeaders(secret, { id: deliveryId, at: now, body }), body);
  } catch (error) {
    const trouble = error instanceof Error ? error.message : String(error);
    const forGood = error instanceof CannotSeal || error instanceof BadAddress;
    await note({ lastStatus: null, trouble, ...(forGood ? { state: 'given-up' } : {}) });
    if (forGood) return;
    throw error;
  }
  if (status >= 200 && status < 300) {
    await note({ lastStatus: status, trouble: null, state: 'sent', sentAt: new Date() });
    return;
  }
  const trouble = inWords(status);
  await note({ lastStatus: status, trouble, ...(status === GONE ? { state: 'given-up' } : {}) });
  if (status !== GONE) throw new Error(trouble);
}

/** What the queue has stopped trying. It shows on the screen and can be sent again by hand. */
export async function giveUp({ operatorId, deliveryId }: DeliveryJob, trouble?: string): Promise<void> {
  await noteInOperator(operatorId, (tx) =>
    tx.webhookDelivery.updateMany({
      where: { operatorId, id: deliveryId, state: 'waiting' },
      data: { state: 'given-up', ...(trouble === undefined ? {} : { trouble }) },
    }),
  );
}

function inWords(status: number): string {
  if (status === GONE) return 'The receiver answered that it wants no more of these (410).';
  if (status >= 300 && status < 400)
    return `The receiver answered with a redirect (${status}), which is not followed.`;
  return `The receiver answered ${status}.`;
}
