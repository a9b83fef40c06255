import { z } from 'zod';
import { type ActorRef } from '../access/actor';
import { command, type CallOptions } from '../access/service';
import { fieldRefusal, type Result } from '../problems';
import { addWebhookInput } from './schema';
import { CannotSeal, seal } from './seal';
import { newSigningSecret, sealedFor } from './signature';
import { BadAddress, webhookUrl } from './webhook-address';

/** A webhook that was added. Its signing secret is there the first time and never again. */
export interface AddedWebhook {
  readonly webhookId: string;
  readonly secret: string | null;
}

const written = command({
  verb: 'webhook.add',
  input: addWebhookInput.extend({ made: z.object({ secret: z.string(), mark: z.string() }) }),
  // The secret is made anew on every try; what makes a request the same one is what was asked for.
  counts: ({ made: _, ...asked }) => asked,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const url = addressOf(input.url);
    const events = [...new Set(input.events)].sort();
    await tx.webhook.create({
      data: {
        id: requestId,
        operatorId,
        name: input.name,
        url: url.href,
        events,
        sealedSecret: sealed(input.made.secret, sealedFor(operatorId, requestId)),
        addedById: actor.personId,
        addedAt: now,
      },
    });
    return {
      value: { webhookId: requestId, mark: input.made.mark },
      audit: {
        subjectKind: 'webhook',
        subjectId: requestId,
        // What stands behind the host in an address is often a secret of the receiver's.
        detail: { name: input.name, host: url.host, events },
      },
    };
  },
});

function addressOf(text: string): URL {
  try {
    return webhookUrl(text);
  } catch (error) {
    if (error instanceof BadAddress) throw fieldRefusal('url', error.message);
    throw error;
  }
}

function sealed(secret: string, about: string): string {
  try {
    return seal(secret, about);
  } catch (error) {
    if (error instanceof CannotSeal) throw fieldRefusal('url', error.message);
    throw error;
  }
}

/**
 * Adds an address that is told of what happens. Its signing secret is given back this once; the database has it sealed,
 * and the answer stored for a request sent again does not have it.
 */
export async function addWebhook(
  ref: ActorRef | null,
  raw: unknown,
  options?: CallOptions,
): Promise<Result<AddedWebhook>> {
  const mark = crypto.randomUUID();
  const secret = newSigningSecret();
  const result = await written(ref, { ...(raw as object), made: { secret, mark } }, options);
  if (!result.ok) return result;
  const { webhookId } = result.value;
  return { ok: true, value: { webhookId, secret: result.value.mark === mark ? secret : null } };
}
