import { command } from '../access/service';
import { MEL_END_STATEMENT } from '../carry-over/statements';
import { factsChanged } from '../fleet/require-aircraft';
import { vouch } from '../records/vouch';
import { requireMel } from './require-mel';
import { endMelInput } from './schema';

/**
 * Ends the list in force without a newer one. From then on it is not known whether the aircraft has a list, which closes both ways
 * of 91.213 until somebody signs that it is operated without one (`mel.none`) or takes in another.
 */
export const endMel = command({
  verb: 'mel.end',
  input: endMelInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const mel = await requireMel(tx, operatorId, input.melId);
    const { hash } = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone: mel.aircraft.base.zone,
      subjectKind: 'mel',
      subjectId: mel.id,
      aircraftId: mel.aircraftId,
      source: input.source,
      statement: MEL_END_STATEMENT,
      content: { act: 'end', reference: mel.reference, why: input.why },
    });
    await tx.mel.update({
      where: { operatorId_id: { operatorId, id: mel.id } },
      data: { endedAt: now, endedById: actor.personId },
    });
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId, id: mel.aircraftId } },
      data: { withoutMel: null },
    });
    await factsChanged(tx, operatorId, mel.aircraftId);
    return {
      value: { melId: mel.id },
      audit: {
        subjectKind: 'mel',
        subjectId: mel.id,
        detail: { aircraft: mel.aircraft.registration, reference: mel.reference, why: input.why, hash },
      },
    };
  },
});
