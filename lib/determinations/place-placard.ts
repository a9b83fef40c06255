import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { readSigner, signerFacts } from '../people/signer';
import { dayAtBase } from '../records/signature';
import { mayPlacePlacard } from '../rules/who-may-determine';
import { placePlacardInput } from './schema';
import { requireAllowed } from './write-up';
import { said } from '../words/said';

/** Somebody put the placard up and says so: a pilot, private or higher, or somebody who may maintain the aircraft. */
export const placePlacard = command({
  verb: 'placard.place',
  input: placePlacardInput,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const key = { operatorId_id: { operatorId, id: input.placardId } };
    const placard = await tx.placard.findUnique({
      where: key,
      include: {
        deferral: {
          include: { end: true, discrepancy: { include: { aircraft: { include: { base: true } } } } },
        },
      },
    });
    if (!placard) throw new Refusal('not_found', { say: said('There is no such placard here.') });
    if (placard.placedAt) throw new Refusal('conflict', { say: said('This placard is in place already.') });
    if (placard.deferral.end)
      throw new Refusal('conflict', { say: said('The deferral has ended; no placard is owed.') });
    const { discrepancy } = placard.deferral;
    const signer = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const ruling = mayPlacePlacard(signer, dayAtBase(now, discrepancy.aircraft.base.zone));
    requireAllowed(ruling);
    await tx.placard.update({ where: key, data: { placedAt: now, placedById: actor.personId } });
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
