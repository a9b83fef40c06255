import { z } from 'zod';
import { query } from '../access/service';
import { type Tx } from '../db/client';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import { type Instant } from '../rules/facts';

export interface KeyView {
  readonly id: string;
  readonly name: string;
  readonly scopes: readonly string[];
  readonly prefix: string;
  readonly actsFor: string;
  /** Whom it acts for has left: it opens nothing any more. */
  readonly hasLeft: boolean;
  readonly issuedAt: Instant;
  readonly expiresAt: Instant | null;
  readonly endedAt: Instant | null;
  /** To the minute. */
  readonly lastUsedAt: Instant | null;
  readonly works: boolean;
}

export interface DeliveryView {
  readonly id: string;
  readonly event: string;
  readonly state: 'waiting' | 'sent' | 'given-up';
  readonly tries: number;
  readonly lastStatus: number | null;
  readonly trouble: string | null;
  readonly madeAt: Instant;
  readonly sentAt: Instant | null;
}

export interface WebhookView {
  readonly id: string;
  readonly name: string;
  readonly url: string;
  readonly events: readonly string[];
  readonly addedBy: string;
  readonly addedAt: Instant;
  readonly endedAt: Instant | null;
  readonly waiting: number;
  readonly givenUp: number;
  /** What was given up, and the newest of the rest. */
  readonly deliveries: readonly DeliveryView[];
}

export interface Feeds {
  readonly asOf: Instant;
  readonly keys: readonly KeyView[];
  readonly webhooks: readonly WebhookView[];
}

const DELIVERIES_SHOWN = 6;
const GIVEN_UP_SHOWN = 100;
const NEWEST_FIRST = [{ madeAt: 'desc' as const }, { id: 'asc' as const }];

type DeliveryRow = Awaited<ReturnType<Tx['webhookDelivery']['findMany']>>[number];

/** What was given up first: somebody has to look at it. */
function shown(
  webhookId: string,
  newest: readonly DeliveryRow[],
  givenUp: readonly DeliveryRow[],
): DeliveryView[] {
  const ofThis = givenUp.filter((one) => one.webhookId === webhookId);
  return [...ofThis, ...newest.filter(({ state }) => state !== 'given-up')].map((one) => ({
    id: one.id,
    event: one.event,
    state: one.state as DeliveryView['state'],
    tries: one.tries,
    lastStatus: one.lastStatus,
    trouble: one.trouble,
    madeAt: instant(one.madeAt),
    sentAt: one.sentAt && instant(one.sentAt),
  }));
}

/** Keys and webhooks of the operator, those that work first; what was ended stays to be seen. */
export const readFeeds = query({
  verb: 'feeds.read',
  input: z.object({}),
  async run({ tx, operatorId, now }): Promise<Feeds> {
    const keys = await tx.accessKey.findMany({
      where: { operatorId },
      include: { person: { select: { name: true, leftOn: true } } },
      orderBy: [{ issuedAt: 'desc' }, { id: 'asc' }],
    });
    const webhooks = await tx.webhook.findMany({
      where: { operatorId },
      include: { deliveries: { orderBy: NEWEST_FIRST, take: DELIVERIES_SHOWN } },
      orderBy: [{ addedAt: 'desc' }, { id: 'asc' }],
    });
    const givenUp = await tx.webhookDelivery.findMany({
      where: { operatorId, state: 'given-up' },
      orderBy: NEWEST_FIRST,
      take: GIVEN_UP_SHOWN,
    });
    const counted = await tx.webhookDelivery.groupBy({
      by: ['webhookId', 'state'],
      where: { operatorId, state: { not: 'sent' } },
      _count: true,
    });
    const names = await namesOf(
      tx,
      webhooks.map(({ addedById }) => addedById),
    );
    const count = (webhookId: string, state: string) =>
      counted.find((one) => one.webhookId === webhookId && one.state === state)?._count ?? 0;
    const worksFirst = <T extends { readonly works: boolean }>(all: readonly T[]) =>
      all.toSorted((a, b) => Number(b.works) - Number(a.works));
    return {
      asOf: instant(now),
      keys: worksFirst(
        keys.map((key) => ({
          id: key.id,
          name: key.name,
          scopes: key.scopes,
          prefix: key.prefix,
          actsFor: key.person.name,
          hasLeft: key.person.leftOn !== null,
          issuedAt: instant(key.issuedAt),
          expiresAt: key.expiresAt && instant(key.expiresAt),
          endedAt: key.endedAt && instant(key.endedAt),
          lastUsedAt: key.lastUsedAt && instant(key.lastUsedAt),
          works: !key.endedAt && !key.person.leftOn && (key.expiresAt === null || key.expiresAt > now),
        })),
      ),
      webhooks: webhooks
        .map((webhook) => ({
          id: webhook.id,
          name: webhook.name,
          url: webhook.url,
          events: webhook.events,
          addedBy: nameIn(names, webhook.addedById),
          addedAt: instant(webhook.addedAt),
          endedAt: webhook.endedAt && instant(webhook.endedAt),
          waiting: count(webhook.id, 'waiting'),
          givenUp: count(webhook.id, 'given-up'),
          deliveries: shown(webhook.id, webhook.deliveries, givenUp),
        }))
        .toSorted((a, b) => Number(a.endedAt !== null) - Number(b.endedAt !== null)),
    };
  },
});
