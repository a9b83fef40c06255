import { readForSignIn, writeInOperator } from '../db/scope';
import { letterSettingsOrNone } from '../notices/letter-settings';
import { appendAudit } from '../records/audit';
import { newLink } from './link-token';
import { makeLink } from './make-link';

const HOUR_MS = 3_600_000;
/** Most letters of this kind to one person in an hour: enough for a lost one, too few to bury anybody in mail. */
export const RESETS_AN_HOUR = 3;

/** Whether this server can help somebody who forgot a password without a manager. */
export const sendsResets = (): boolean => letterSettingsOrNone() !== null;

/**
 * Sends whoever has this address a link to choose a password. It gives nothing back, whatever becomes of it: the caller
 * says the same words for an address that exists and for one that does not, and does not wait for this. Counted in the
 * database, so that the limit holds over restarts and over several servers.
 */
export async function askForReset(typed: string, now = new Date()): Promise<void> {
  const email = typed.trim().toLowerCase().slice(0, 200);
  if (!sendsResets() || email === '') return;
  const found = await readForSignIn(email, (tx) =>
    tx.person.findUnique({ where: { email }, select: { id: true, operatorId: true } }),
  );
  if (!found) return;
  const { operatorId, id: personId } = found;
  await writeInOperator(operatorId, async (tx) => {
    const person = await tx.person.findUnique({ where: { operatorId_id: { operatorId, id: personId } } });
    if (!person || person.leftOn || person.erasedAt) return;
    const asked = await tx.personLink.count({
      where: {
        operatorId,
        personId,
        madeById: null,
        handedOver: 'mail',
        madeAt: { gt: new Date(now.getTime() - HOUR_MS) },
      },
    });
    if (asked >= RESETS_AN_HOUR) return;
    const { made } = newLink('mail');
    const kind = person.passwordSetAt === null ? 'invitation' : 'password-reset';
    const { linkId } = await makeLink(
      { tx, operatorId, now },
      { person, kind, handedOver: 'mail', made, by: null },
    );
    await appendAudit(tx, operatorId, {
      at: now,
      personId,
      verb: 'person.ask-for-link',
      subjectKind: 'person',
      subjectId: personId,
      requestId: linkId,
      detail: { kind, linkId },
    });
  });
}
