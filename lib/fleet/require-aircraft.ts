import type { Tx } from '../db/client';
import { Refusal } from '../problems';
import { said } from '../words/said';

/** The aircraft with its base, or `not_found`: also for another operator's aircraft, which is not there for us. */
export async function requireAircraft(tx: Tx, operatorId: string, id: string) {
  const aircraft = await tx.aircraft.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { base: true, type: true },
  });
  if (!aircraft || aircraft.retiredOn)
    throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
  return aircraft;
}

/**
 * Marks that facts which can change an answer have changed. A release names the version it stood on, so that a
 * dispatcher who looked before a write-up came in is told to look again; and the door asks about releases of this aircraft
 * again before the write is done (lib/access/after-write.ts).
 */
export function factsChanged(tx: Tx, operatorId: string, aircraftId: string) {
  touched(tx, aircraftId);
  return tx.aircraft.update({
    where: { operatorId_id: { operatorId, id: aircraftId } },
    data: { factsVersion: { increment: 1 } },
    select: { factsVersion: true },
  });
}

const touchedIn = new WeakMap<Tx, Set<string>>();

/** Has the releases of this aircraft asked about again at the end of the transaction, without any fact being changed. */
export function touched(tx: Tx, aircraftId: string): void {
  const known = touchedIn.get(tx);
  if (known) known.add(aircraftId);
  else touchedIn.set(tx, new Set([aircraftId]));
}

/** The aircraft whose releases have to be asked about again: by `factsChanged` in this very transaction. */
export const touchedAircraft = (tx: Tx): readonly string[] => [...(touchedIn.get(tx) ?? [])];
