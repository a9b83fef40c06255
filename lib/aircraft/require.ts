import type { Tx } from '../db/client';
import { fieldRefusal, Refusal } from '../problems';
import { filled, said } from '../words/said';

/** Type and base of this operator; refuses the field that names none. */
export async function requireTypeAndBase(
  tx: Tx,
  operatorId: string,
  { typeId, baseId }: { typeId: string; baseId: string },
) {
  const type = await tx.aircraftType.findUnique({ where: { operatorId_id: { operatorId, id: typeId } } });
  if (!type) throw fieldRefusal('typeId', said('There is no such aircraft type here.'));
  const base = await tx.base.findUnique({ where: { operatorId_id: { operatorId, id: baseId } } });
  if (!base) throw fieldRefusal('baseId', said('There is no such base here.'));
  return { type, base };
}

/** Refuses a registration another aircraft here has, retired ones too: their records are found by it. */
export async function requireNewRegistration(
  tx: Tx,
  operatorId: string,
  registration: string,
): Promise<void> {
  const there = await tx.aircraft.findUnique({
    where: { operatorId_registration: { operatorId, registration } },
  });
  if (!there) return;
  throw fieldRefusal(
    'registration',
    there.retiredOn
      ? filled(said('{registration} was here before and is retired. Bring it back instead.'), {
          registration,
        })
      : filled(said('{registration} is here already.'), { registration }),
  );
}

/** Any aircraft of this operator, in service or retired. */
export async function requireAnyAircraft(tx: Tx, operatorId: string, id: string) {
  const row = await tx.aircraft.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { base: true, type: true },
  });
  if (!row) throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
  return row;
}
