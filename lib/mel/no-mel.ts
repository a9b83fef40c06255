import { command } from '../access/service';
import { NO_MEL_STATEMENT } from '../carry-over/statements';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { vouch } from '../records/vouch';
import { melInForce } from './require-mel';
import { noMelInput } from './schema';
import { filled, said } from '../words/said';

/** "Operated without one": opens the way of 91.213(d), so it is signed. Refused while a list is in force. */
export const noMel = command({
  verb: 'mel.none',
  input: noMelInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const standing = await melInForce(tx, operatorId, aircraft.id);
    if (standing) {
      throw new Refusal('conflict', {
        say: filled(
          said(
            'The minimum equipment list {reference} is in force. End it first, with the document that says so.',
          ),
          { reference: standing.reference },
        ),
      });
    }
    const { hash } = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone: aircraft.base.zone,
      subjectKind: 'mel',
      subjectId: aircraft.id,
      aircraftId: aircraft.id,
      source: input.source,
      statement: NO_MEL_STATEMENT,
      content: { act: 'none', withoutMel: true },
    });
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId, id: aircraft.id } },
      data: { withoutMel: true },
    });
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { aircraftId: aircraft.id },
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraft.id,
        detail: { aircraft: aircraft.registration, withoutMel: true, source: input.source, hash },
      },
    };
  },
});
