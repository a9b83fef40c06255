import type { Tx } from '../db/client';

/**
 * The zone in which somebody signs what belongs to no aircraft (a type): that of their own base, else of the first base here. UTC where
 * there is no base yet.
 */
export async function zoneOfPerson(tx: Tx, operatorId: string, personId: string): Promise<string> {
  const person = await tx.person.findUnique({
    where: { operatorId_id: { operatorId, id: personId } },
    select: { homeBase: { select: { zone: true } } },
  });
  if (person?.homeBase) return person.homeBase.zone;
  const base = await tx.base.findFirst({ where: { operatorId }, orderBy: { ident: 'asc' } });
  return base?.zone ?? 'UTC';
}
