import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { requireAircraft } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { removeLines } from './remove-lines';
import { removeLineInput } from './schema';
import { said } from '../words/said';

/** Takes a line off an aircraft's equipment list, signed, with the document that says so. Refuses as `removeLines`. */
export const removeLine = command({
  verb: 'equipment.remove',
  input: removeLineInput,
  signing: true,
  async run(context, { equipmentId, why, source }) {
    const { tx, operatorId } = context;
    const row = await tx.equipment.findUnique({ where: { operatorId_id: { operatorId, id: equipmentId } } });
    if (!row || row.removedOn) {
      throw new Refusal('not_found', { say: said('There is no such line on an equipment list here.') });
    }
    const aircraft = await requireAircraft(tx, operatorId, row.aircraftId);
    const [removed] = await removeLines(context, aircraft, [{ row, why, source }]);
    if (!removed) throw new RangeError('One line was to be removed.');
    await factsChanged(tx, operatorId, row.aircraftId);
    return {
      value: { equipmentId, name: row.name },
      audit: {
        subjectKind: 'equipment',
        subjectId: equipmentId,
        detail: {
          registration: aircraft.registration,
          name: row.name,
          why,
          source,
          vouching: removed.vouching,
          hash: removed.hash,
        },
      },
    };
  },
});
