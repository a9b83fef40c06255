import type { Tx } from '../db/client';
import { Refusal } from '../problems';
import type { Ruling } from '../rules/ruling';
import { filled, said } from '../words/said';

/** One write-up with what every act on it needs. */
export async function requireOpenWriteUp(tx: Tx, operatorId: string, id: string) {
  const writeUp = await tx.discrepancy.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: {
      aircraft: { include: { base: true, type: true } },
      deferrals: { include: { end: true } },
      work: true,
      finding: { select: { findingKey: true } },
      determinations: { where: { kind: 'severity' }, select: { id: true } },
    },
  });
  if (!writeUp) throw new Refusal('not_found', { say: said('There is no such write-up here.') });
  if (writeUp.state === 'closed') {
    throw new Refusal('conflict', {
      say: filled(said('{number} is closed. The same trouble again is a new write-up.'), {
        number: writeUp.number,
      }),
    });
  }
  return writeUp;
}

/** Whether work on it is begun and not yet signed or given up; the work a deferral stands on counts too. */
export const underWork = (writeUp: { readonly work: readonly { readonly state: string }[] }): boolean =>
  writeUp.work.some(({ state }) => state === 'started' || state === 'entered');

/** Goes on only when the law allows it; otherwise refuses with the paragraphs. */
export function requireAllowed(ruling: Ruling): void {
  if (!ruling.allowed) throw new Refusal('signature_refused', { lines: linesOf(ruling.lines) });
}

/** The lines of a ruling as a refusal carries them. */
export const linesOf = (lines: readonly { cite: string; because: string; effect: string }[]) =>
  lines.filter((line) => line.effect === 'bars').map(({ cite, because }) => ({ cite, because }));
