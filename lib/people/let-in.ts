import type { Tx } from '../db/client';
import { appendAudit } from '../records/audit';
import { newLink } from './link-token';
import { makeLink } from './make-link';

/** Why the console makes no link for an address. */
export type NotLetIn = 'unknown' | 'left' | 'no-manager';

interface LetIn {
  readonly token: string;
  readonly expiresAt: string;
}

/** The row of the audit that says so. It is nobody's own act, although the chain names the person it is about. */
export const LET_IN = 'person.let-in-from-console';

/**
 * For the server's console, when a manager has lost the second factor and the recovery codes and nobody else can reset them:
 * makes a link that sets a new password and takes the second factor away. Nothing ends before it is used. Whoever sits at the
 * console holds the database anyway, so that this opens nothing to them that was closed. Call in the operator's transaction.
 */
export async function letIn(
  tx: Tx,
  { operatorId, personId, now }: { operatorId: string; personId: string; now: Date },
): Promise<LetIn | NotLetIn> {
  const person = await tx.person.findUnique({ where: { operatorId_id: { operatorId, id: personId } } });
  // An erased person's address is gone, so that nobody finds them by it; asked all the same.
  if (!person || person.erasedAt) return 'unknown';
  if (person.leftOn) return 'left';
  if (!person.roles.includes('manager')) return 'no-manager';
  const { token, made } = newLink('printed');
  const kind = person.passwordSetAt === null ? 'invitation' : 'password-reset';
  const { linkId, expiresAt } = await makeLink(
    { tx, operatorId, now },
    { person, kind, handedOver: 'printed', made, by: null },
  );
  await appendAudit(tx, operatorId, {
    at: now,
    personId,
    verb: LET_IN,
    subjectKind: 'person',
    subjectId: personId,
    requestId: linkId,
    detail: { by: 'console', kind, linkId },
  });
  return { token, expiresAt };
}

/** Links nobody's hand made come from the sign-in page, by letter, or from the console, printed. */
export const isFromConsole = (link: {
  readonly madeById: string | null;
  readonly handedOver: string;
}): boolean => link.madeById === null && link.handedOver === 'printed';
