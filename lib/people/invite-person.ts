import { randomBytes } from 'node:crypto';
import { hashPassword } from '../access/passwords';
import type { ActorRef } from '../access/actor';
import { command, type CallOptions } from '../access/service';
import type { Result } from '../problems';
import { newLink } from './link-token';
import { madeLink, makeLink } from './make-link';
import { homeBaseOf, requireFreeAddress, requirePersonHere } from './require-person';
import { invitePersonInput, makeLinkInput } from './schema';

/** A link that was made. The token is there the first time, for one that is printed, and never again. */
export interface LinkMade {
  readonly personId: string;
  readonly linkId: string;
  readonly handedOver: 'mail' | 'printed';
  readonly expiresAt: string;
  readonly token: string | null;
}

const asked = <T extends { made: unknown }>({ made: _made, ...rest }: T) => rest;

const written = command({
  verb: 'person.invite',
  input: invitePersonInput.extend({ made: madeLink }),
  // The token is made anew on every try; what makes a request the same one is what was asked for.
  counts: asked,
  async run(context, { name, email, roles, homeBaseId, handedOver, made }) {
    const { tx, operatorId, actor, now, requestId } = context;
    await requireFreeAddress(tx, operatorId, email);
    const person = {
      id: requestId,
      operatorId,
      name,
      email,
      // Of a text nobody has: nothing fits.
      passwordHash: await hashPassword(randomBytes(32).toString('base64url')),
      passwordSetAt: null,
      roles: [...new Set(roles)],
      homeBaseId: await homeBaseOf(tx, operatorId, homeBaseId),
      createdAt: now,
    };
    await tx.person.create({ data: person });
    const by = { id: actor.personId, name: actor.name };
    const link = await makeLink(context, { person, kind: 'invitation', handedOver, made, by });
    return {
      value: { personId: requestId, handedOver, ...link },
      // No name and no address: an audit row is never erased.
      audit: {
        subjectKind: 'person',
        subjectId: requestId,
        detail: { roles: person.roles, handedOver, linkId: link.linkId },
      },
    };
  },
});

const writtenLink = command({
  verb: 'person.link',
  input: makeLinkInput.extend({ made: madeLink }),
  counts: asked,
  async run(context, { personId, handedOver, made }) {
    const { tx, operatorId, actor } = context;
    const person = await requirePersonHere(tx, operatorId, personId);
    const kind = person.passwordSetAt === null ? 'invitation' : 'password-reset';
    const by = { id: actor.personId, name: actor.name };
    const link = await makeLink(context, { person, kind, handedOver, made, by });
    return {
      value: { personId, handedOver, ...link },
      audit: {
        subjectKind: 'person',
        subjectId: personId,
        detail: { kind, handedOver, linkId: link.linkId },
      },
    };
  },
});

type Written = typeof written | typeof writtenLink;

async function withToken(
  verb: Written,
  ref: ActorRef | null,
  raw: unknown,
  options?: CallOptions,
): Promise<Result<LinkMade>> {
  const fields = typeof raw === 'object' && raw !== null ? raw : {};
  const { token, made } = newLink((fields as { handedOver?: unknown }).handedOver);
  const result = await verb(ref, { ...fields, made }, options);
  if (!result.ok) return result;
  const isFirst = result.value.linkId === made.linkId;
  const shown = isFirst && result.value.handedOver === 'printed' ? token : null;
  return { ok: true, value: { ...result.value, token: shown } };
}

/**
 * Enters somebody new, who can sign in once they have chosen a password by the link. Refuses an address that somebody
 * signs in with, and mail on a server that sends none. The person's id is the request's.
 */
export const invitePerson = (ref: ActorRef | null, raw: unknown, options?: CallOptions) =>
  withToken(written, ref, raw, options);

/** A new link for somebody who is here: an invitation again, or a way to a new password. Earlier ones end with it. */
export const makePersonLink = (ref: ActorRef | null, raw: unknown, options?: CallOptions) =>
  withToken(writtenLink, ref, raw, options);
