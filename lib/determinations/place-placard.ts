import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { placePlacardInput } from './schema';

/** Somebody put the placard up and says so. */
export const placePlacard = command({
  verb: 'placard.place',
  input: placePlacardInput,
  async run({ tx, operatorId, actor, now }, input) {
    const key = { operatorId_id: { operatorId, id: input.placardId } };
    const placard = await tx.placard.findUnique({
      where: key,
      include: { deferral: { include: { end: true, discrepancy: true } } },
    });
    if (!placard) throw new Refusal('not_found', { say: 'There is no such placard here.' });
    if (placard.placedAt) throw new Refusal('conflict', { say: 'This placard is in place already.' });
    if (placard.deferral.end)
      throw new Refusal('conflict', { say: 'The deferral has ended; no placard is owed.' });
    await tx.placard.update({ where: key, data: { placedAt: now, placedById: actor.personId } });
    const { discrepancy } = placard.deferral;
    await factsChanged(tx, operatorId, discrepancy.aircraftId);
    return {
      value: { placardId: placard.id },
      audit: {
        subjectKind: 'discrepancy',
        subjectId: discrepancy.id,
        detail: { number: discrepancy.number, placard: placard.wording, location: placard.location },
      },
    };
  },
});
