import type { Tx } from '../db/client';
import { dayAtBase } from '../records/signature';
import type { CalendarDate } from '../rules/facts';

/** The zone a person's dates are dates in: that of the home base, else of the first base, else UTC. */
export async function zoneOfPerson(tx: Tx, operatorId: string, homeBaseId: string | null): Promise<string> {
  const home =
    homeBaseId === null
      ? null
      : await tx.base.findUnique({ where: { operatorId_id: { operatorId, id: homeBaseId } } });
  const base = home ?? (await tx.base.findFirst({ where: { operatorId }, orderBy: { ident: 'asc' } }));
  return base?.zone ?? 'UTC';
}

/** Today where that person is at home. */
export const todayOfPerson = async (
  tx: Tx,
  operatorId: string,
  person: { readonly homeBaseId: string | null },
  now: Date,
): Promise<CalendarDate> => dayAtBase(now, await zoneOfPerson(tx, operatorId, person.homeBaseId));
