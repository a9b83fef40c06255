import type { Context } from '../access/service';
import { Refusal } from '../problems';
import { said } from '../words/said';

/** An open visit with its aircraft, or a refusal: `not_found`, or `conflict` when it is closed. */
export async function requireOpenVisit({ tx, operatorId }: Context, id: string) {
  const visit = await tx.visit.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { aircraft: { select: { registration: true } }, items: { where: { removedAt: null } } },
  });
  if (!visit) throw new Refusal('not_found', { say: said('There is no such visit here.') });
  if (visit.closedAt) throw new Refusal('conflict', { say: said('This visit is closed. Open a new one.') });
  return visit;
}
