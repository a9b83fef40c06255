import type { Tx } from '../db/client';
import { unitsOf, type Units } from './say';

/** The units a person reads in: their own choice, else the operator's. */
export async function chosenUnits(
  tx: Tx,
  { operatorId, personId }: { readonly operatorId: string; readonly personId: string },
): Promise<Units> {
  const person = await tx.person.findUnique({
    where: { operatorId_id: { operatorId, id: personId } },
    select: { units: true, operator: { select: { units: true } } },
  });
  return unitsOf(person?.units, person?.operator.units);
}
