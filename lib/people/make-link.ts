import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Context } from '../access/service';
import { instant } from '../db/dates';
import { letterSettingsOrNone } from '../notices/letter-settings';
import { wakeLetterSender } from '../notices/letter-signal';
import { fieldRefusal } from '../problems';
import { writeLinkLetter, type LinkKind } from './link-letter';
import { zoneOfPerson } from './today';
import { said } from '../words/said';

/** What the server made of a link before the verb; never what makes a request the same one. */
export const madeLink = z.object({
  linkId: z.uuid(),
  sha256: z.string().length(64),
  sealed: z.string().nullable(),
});

const HOUR_MS = 3_600_000;
/** How long a link works. An invitation waits a week; a reset, which opens an account in use, a day. */
export const LINK_HOURS: Readonly<Record<LinkKind, number>> = { invitation: 7 * 24, 'password-reset': 24 };

interface Wanted {
  readonly person: { readonly id: string; readonly email: string; readonly homeBaseId: string | null };
  readonly kind: LinkKind;
  readonly handedOver: 'mail' | 'printed';
  readonly made: z.output<typeof madeLink>;
  /** Null: the person asked for it (by mail), or the server's console made it (printed). */
  readonly by: { readonly id: string; readonly name: string } | null;
}

/**
 * Makes a link in the transaction of the act, and its letter beside it where it goes by mail. Earlier links of the person
 * end; what somebody asked for at the sign-in page ends only what was asked for there, so that a stranger who types an
 * address cannot end the invitation on somebody's desk, nor the link from the console. Refuses mail on a server that sends none.
 */
export async function makeLink(
  { tx, operatorId, now }: Pick<Context, 'tx' | 'operatorId' | 'now'>,
  { person, kind, handedOver, made, by }: Wanted,
): Promise<{ linkId: string; expiresAt: string }> {
  const settings = letterSettingsOrNone();
  if (handedOver === 'mail' && !settings) {
    throw fieldRefusal('handedOver', said('This server sends no letters. Print the link instead.'));
  }
  const expiresAt = new Date(now.getTime() + LINK_HOURS[kind] * HOUR_MS);
  await tx.personLink.updateMany({
    where: {
      operatorId,
      personId: person.id,
      usedAt: null,
      endedAt: null,
      ...(by || handedOver === 'printed' ? {} : { madeById: null, handedOver }),
    },
    data: { endedAt: now, sealedToken: null },
  });
  const { linkId } = made;
  await tx.personLink.create({
    data: {
      id: linkId,
      operatorId,
      personId: person.id,
      kind,
      tokenSha256: made.sha256,
      sealedToken: made.sealed,
      handedOver,
      madeById: by?.id ?? null,
      madeAt: now,
      expiresAt,
    },
  });
  if (handedOver === 'mail' && settings) {
    const operator = await tx.operator.findUniqueOrThrow({ where: { id: operatorId } });
    const letter = writeLinkLetter({
      kind,
      operatorName: operator.name,
      byName: by?.name ?? null,
      expiresAt: instant(expiresAt),
      zone: await zoneOfPerson(tx, operatorId, person.homeBaseId),
      address: settings.address,
    });
    await tx.letter.create({
      data: {
        id: randomUUID(),
        operatorId,
        linkId,
        toAddress: person.email,
        ...letter,
        state: 'waiting',
        nextTryAt: now,
      },
    });
    wakeLetterSender(operatorId);
  }
  return { linkId, expiresAt: instant(expiresAt) };
}
