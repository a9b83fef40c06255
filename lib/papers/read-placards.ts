import { z } from 'zod';
import { query } from '../access/service';
import { Refusal } from '../problems';
import { fileName } from './paper';
import type { PlacardSheet } from './placards';
import { paperAircraft } from './read-entry';

/**
 * The placards of an aircraft's live deferrals, owed or in place, to print; `placardIds` takes only these. Refuses
 * `not_found` when one of them is not a placard of this aircraft.
 */
export const readPlacards = query({
  verb: 'paper.read',
  input: z.object({ aircraftId: z.uuid(), placardIds: z.array(z.uuid()).max(200).optional() }),
  async run({ tx, operatorId, now }, { aircraftId, placardIds = [] }): Promise<PlacardSheet> {
    const aircraft = await tx.aircraft.findUnique({
      where: { operatorId_id: { operatorId, id: aircraftId } },
      include: { type: true, base: true },
    });
    if (!aircraft) throw new Refusal('not_found', { say: 'There is no such aircraft here.' });
    const wished = new Set(placardIds);
    const rows = await tx.placard.findMany({
      where: {
        operatorId,
        removedAt: null,
        deferral: { end: null, discrepancy: { aircraftId } },
        ...(wished.size > 0 && { id: { in: [...wished] } }),
      },
      include: { deferral: { include: { discrepancy: true } } },
    });
    if (wished.size > 0 && rows.length < wished.size) {
      throw new Refusal('not_found', { say: 'There is no such placard to print here.' });
    }
    return {
      fileName: fileName(aircraft.registration, 'placards', ''),
      aircraft: await paperAircraft(tx, operatorId, aircraft),
      madeAt: now.toISOString(),
      placards: rows
        .map(({ id, wording, location, deferral: { discrepancy } }) => ({
          id,
          wording,
          location,
          writeUp: discrepancy.number,
          title: discrepancy.title,
        }))
        .toSorted((a, b) => a.writeUp.localeCompare(b.writeUp)),
    };
  },
});
