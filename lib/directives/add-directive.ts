import { command } from '../access/service';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { requireEquipment } from '../fleet/require-equipment';
import { fieldRefusal } from '../problems';
import { addDirectiveInput } from './schema';
import { filled, said } from '../words/said';

/**
 * Puts a directive on an aircraft (part 39): equipment that it requires to work can never be deferred (91.213(d)(2)(iv), (b)(2)).
 * It only makes answers stricter, so it is no signature.
 */
export const addDirective = command({
  verb: 'directive.add',
  input: addDirectiveInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    if (input.requiresOperable && input.equipmentId === null) {
      throw fieldRefusal('equipmentId', said('Say which line of the equipment list has to work.'));
    }
    if (input.equipmentId !== null) await requireEquipment(tx, operatorId, aircraft.id, input.equipmentId);
    const { number, title, equipmentId, requiresOperable } = input;
    const same = await tx.directive.findFirst({
      where: { operatorId, aircraftId: aircraft.id, number, equipmentId, endedOn: null },
      select: { id: true },
    });
    if (same)
      throw fieldRefusal(
        'number',
        filled(said('{registration} has this directive on record already.'), {
          registration: aircraft.registration,
        }),
      );
    const row = { number, title, equipmentId, requiresOperable };
    await tx.directive.create({
      data: {
        ...row,
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        addedById: actor.personId,
        addedAt: now,
      },
    });
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { directiveId: requestId },
      audit: {
        subjectKind: 'directive',
        subjectId: requestId,
        detail: { ...row, registration: aircraft.registration },
      },
    };
  },
});
