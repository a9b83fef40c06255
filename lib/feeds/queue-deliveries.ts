import { randomUUID } from 'node:crypto';
import { type Tx } from '../db/client';
import { sendDeliveryJob } from '../db/job-queue';
import { eventOf } from './events';

/** A write as the door tells of it, after its audit row. */
export interface WrittenAct {
  readonly operatorId: string;
  /** A verb of the policy, or `flight.recall`. */
  readonly verb: string;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly detail: Readonly<Record<string, unknown>>;
  /** Its row in the operator's audit chain. */
  readonly seq: number;
  readonly at: Date;
}

/**
 * Lines up what other programs are told of a write, in the write's own transaction: rolled back with it. Says whose and
 * which only; whoever is told reads the rest with a key, as that key may.
 */
export async function queueDeliveries(tx: Tx, act: WrittenAct): Promise<void> {
  const event = eventOf(act.verb, act.detail);
  if (event === null) return;
  const webhooks = await tx.webhook.findMany({
    where: { operatorId: act.operatorId, endedAt: null, events: { has: event } },
    select: { id: true },
  });
  for (const { id: webhookId } of webhooks) {
    const deliveryId = randomUUID();
    await tx.webhookDelivery.create({
      data: {
        id: deliveryId,
        operatorId: act.operatorId,
        webhookId,
        event,
        auditSeq: act.seq,
        body: bodyOf(event, act),
        state: 'waiting',
        madeAt: act.at,
      },
    });
    await sendDeliveryJob(tx, { operatorId: act.operatorId, deliveryId });
  }
}

/** Shaped as the Standard Webhooks specification recommends: type, timestamp, data. */
const bodyOf = (event: string, act: WrittenAct) => ({
  type: event,
  timestamp: act.at.toISOString(),
  data: {
    seq: act.seq,
    subject: { kind: act.subjectKind, id: act.subjectId },
    ...words(act.detail, 'aircraft'),
    ...words(act.detail, 'number'),
    ...(act.verb === 'walkaround.finish' ? { numbers: raisedBy(act.detail) } : {}),
  },
});

/** What of an audit row's detail is the same for years: the registration and the write-up's number. */
function words(detail: WrittenAct['detail'], key: string): Record<string, string> {
  const said = detail[key];
  return typeof said === 'string' ? { [key]: said } : {};
}

/** Numbers of the write-ups that a walkaround opened by itself: of them there is no other event. */
const raisedBy = ({ raised }: WrittenAct['detail']): string[] =>
  Array.isArray(raised) ? raised.filter((one): one is string => typeof one === 'string') : [];
