import { z } from 'zod';
import { setPassword } from '../access/set-password';
import { endAllFactors } from '../access/second-factor/end-all';
import { observed } from '../access/observed';
import type { CallOptions } from '../access/service';
import type { Tx } from '../db/client';
import { instant } from '../db/dates';
import { readForLink, readInOperator, writeInOperator } from '../db/scope';
import { fieldRefusal, Refusal, type Result } from '../problems';
import { appendAudit } from '../records/audit';
import type { Instant } from '../rules/facts';
import { isFromConsole } from './let-in';
import type { LinkKind } from './link-letter';
import { looksLikeToken, tokenSha256 } from './link-token';
import { writePersonEvent } from './person-events';
import { todayOfPerson } from './today';
import { said } from '../words/said';

/**
 * The door for somebody who holds a link and has no session. It opens one thing: choosing a password. Wrong, used, ended
 * and over get the same words, so that trying tells nothing.
 */
const NO_GOOD = said(
  'This link cannot be used. It is not complete, was used already, or is over. If you have chosen your password with it, sign in. Otherwise ask a manager for a new one.',
);

/** Whose link it is, for whoever holds it. */
export interface LinkView {
  readonly kind: LinkKind;
  readonly operatorName: string;
  readonly name: string;
  readonly email: string;
  readonly expiresAt: Instant;
  /** Made on the server's console: the second factor goes too. */
  readonly takesSecondFactor: boolean;
  readonly zone: string;
}

const noGood = () => new Refusal('link_closed', { say: NO_GOOD });

/** What a link opens. Refuses `link_closed` in the same words whatever is wrong with it. */
export const readLink = (token: unknown, { now = new Date() }: CallOptions = {}): Promise<Result<LinkView>> =>
  observed('query', 'person-link.read', null, null, async () => {
    const { operatorId, linkId } = await linkOf(token);
    return readInOperator(operatorId, async (tx) => {
      const { link, person } = await requireOpen(tx, operatorId, linkId, now);
      const operator = await tx.operator.findUniqueOrThrow({ where: { id: operatorId } });
      const base = await tx.base.findFirst({
        where: { operatorId, ...(person.homeBaseId ? { id: person.homeBaseId } : {}) },
        orderBy: { ident: 'asc' },
      });
      return {
        kind: link.kind as LinkKind,
        operatorName: operator.name,
        name: person.name,
        email: person.email,
        expiresAt: instant(link.expiresAt),
        takesSecondFactor: isFromConsole(link),
        zone: base?.zone ?? 'UTC',
      };
    });
  });

const chosen = z.object({ token: z.string(), password: z.string().min(1).max(200) });

/**
 * Chooses a password by a link, once: the link is used, the person's other links end, and so do all sessions; with one from
 * the console the second factor too, so that a new one has to be set up before anything is signed. Refuses
 * `invalid` for a password that will not do; the link is then still good.
 */
export const choosePasswordByLink = (
  raw: unknown,
  { now = new Date() }: CallOptions = {},
): Promise<Result<{ kind: LinkKind; email: string }>> =>
  observed('command', 'person-link.use', null, null, async () => {
    const parsed = chosen.safeParse(raw);
    if (!parsed.success) throw fieldRefusal('password', said('Enter a password of up to 200 characters.'));
    const { token, password } = parsed.data;
    const { operatorId, linkId } = await linkOf(token);
    return writeInOperator(operatorId, async (tx) => {
      const { link, person } = await requireOpen(tx, operatorId, linkId, now);
      const personId = person.id;
      await setPassword(tx, { operatorId, personId, password, now });
      const fromConsole = isFromConsole(link)
        ? {
            by: 'link from the console',
            factors: await endAllFactors(tx, { operatorId, personId, byId: personId, now }),
          }
        : {};
      await tx.personLink.updateMany({
        where: { operatorId, personId, usedAt: null, endedAt: null, id: { not: linkId } },
        data: { endedAt: now, sealedToken: null },
      });
      await tx.personLink.update({
        where: { operatorId_id: { operatorId, id: linkId } },
        data: { usedAt: now, sealedToken: null },
      });
      if (person.passwordSetAt === null) {
        await writePersonEvent(tx, {
          operatorId,
          personId,
          what: 'joined',
          onDate: await todayOfPerson(tx, operatorId, person, now),
          words: 'Chose a password by invitation.',
          byId: personId,
          at: now,
        });
      }
      await appendAudit(tx, operatorId, {
        at: now,
        personId,
        verb: 'person.choose-password',
        subjectKind: 'person',
        subjectId: personId,
        requestId: linkId,
        detail: { kind: link.kind, linkId, ...fromConsole },
      });
      return { kind: link.kind as LinkKind, email: person.email };
    });
  });

/** Which link this is the token of. Asked with nothing but its hash: how long it takes tells nothing of how near it was. */
async function linkOf(token: unknown): Promise<{ operatorId: string; linkId: string }> {
  if (typeof token !== 'string' || !looksLikeToken(token)) throw noGood();
  const sha256 = tokenSha256(token);
  const link = await readForLink(sha256, (tx) =>
    tx.personLink.findUnique({
      where: { tokenSha256: sha256 },
      select: { id: true, operatorId: true },
    }),
  );
  if (!link) throw noGood();
  return { operatorId: link.operatorId, linkId: link.id };
}

async function requireOpen(tx: Tx, operatorId: string, linkId: string, now: Date) {
  const found = await tx.personLink.findUnique({
    where: { operatorId_id: { operatorId, id: linkId } },
    include: { person: true },
  });
  if (!found || found.usedAt || found.endedAt || found.expiresAt <= now) throw noGood();
  const { person, ...link } = found;
  if (person.leftOn || person.erasedAt) throw noGood();
  return { link, person };
}
