import type { Tx } from '../db/client';
import { command } from '../access/service';
import { requireAircraft } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { openWriteUp } from './open-write-up';
import { reportFindingInput } from './schema';
import { said } from '../words/said';

/** Takes a finding from the ramp and opens its write-up, see `openWriteUp`. Refuses what is another operator's. */
export const reportFinding = command({
  verb: 'finding.report',
  input: reportFindingInput,
  async run(context, input) {
    const { tx, operatorId, requestId } = context;
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    await requireWalkaround(tx, operatorId, input.walkaroundId, aircraft.id);
    await requireRelated(tx, operatorId, input.relatedId ?? null, aircraft.id);
    const value = await openWriteUp(context, aircraft.id, {
      ...input,
      findingId: requestId,
      itemKey: input.itemKey ?? null,
      phase: input.phase ?? null,
      relatedId: input.relatedId ?? null,
    });
    const { discrepancyId, number, title, severity } = value;
    return {
      value,
      audit: {
        subjectKind: 'discrepancy',
        subjectId: discrepancyId,
        detail: { number, aircraft: aircraft.registration, title, severity, findingId: requestId },
      },
    };
  },
});

/** Refuses a walkaround that is not of this aircraft. */
export async function requireWalkaround(
  tx: Tx,
  operatorId: string,
  walkaroundId: string | null,
  aircraftId: string,
): Promise<void> {
  if (!walkaroundId) return;
  const walk = await tx.walkaround.findUnique({ where: { operatorId_id: { operatorId, id: walkaroundId } } });
  if (!walk || walk.aircraftId !== aircraftId)
    throw new Refusal('not_found', { say: said('There is no such walkaround.') });
}

/** Refuses an earlier write-up that is not of this aircraft. */
async function requireRelated(
  tx: Tx,
  operatorId: string,
  relatedId: string | null,
  aircraftId: string,
): Promise<void> {
  if (!relatedId) return;
  const related = await tx.discrepancy.findUnique({
    where: { operatorId_id: { operatorId, id: relatedId } },
  });
  if (!related || related.aircraftId !== aircraftId)
    throw new Refusal('not_found', { say: said('There is no such write-up of this aircraft.') });
}
