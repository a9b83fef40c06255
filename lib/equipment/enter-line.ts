import { command } from '../access/service';
import type { Tx } from '../db/client';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { requireEquipment } from '../fleet/require-equipment';
import { fieldRefusal } from '../problems';
import { keepLines } from './keep-lines';
import { differences, lineColumns, lineContent, nameKey } from './line';
import { requireSameFunction } from './same-function';
import { enterLineInput } from './schema';
import { said } from '../words/said';

/**
 * Enters a line of an aircraft's equipment list, or changes one: either way a new signed record that the line as it now stands agrees with
 * the document named. Refuses a name that is on the list already, and a line that is not (any more).
 */
export const enterLine = command({
  verb: 'equipment.enter',
  input: enterLineInput,
  signing: true,
  async run(context, { aircraftId, equipmentId, line, source }) {
    const { tx, operatorId } = context;
    const aircraft = await requireAircraft(tx, operatorId, aircraftId);
    const before = equipmentId && (await requireEquipment(tx, operatorId, aircraftId, equipmentId));
    await requireFreeName(tx, operatorId, aircraftId, line.name, equipmentId);
    const columns = lineColumns(line);
    if (before) {
      const { id, name } = before;
      await requireSameFunction(tx, operatorId, [{ id, name, from: before.function, to: columns.function }]);
    }
    const [kept] = await keepLines(context, aircraft, [{ equipmentId, columns, source }], 'typed');
    if (!kept) throw new RangeError('One line was to be kept.');
    await factsChanged(tx, operatorId, aircraftId);
    return {
      value: { equipmentId: kept.equipmentId, name: columns.name },
      audit: {
        subjectKind: 'equipment',
        subjectId: kept.equipmentId,
        detail: {
          registration: aircraft.registration,
          line: columns,
          changed: before ? differences(lineContent(before), columns) : null,
          source,
          vouching: kept.vouching,
          hash: kept.hash,
        },
      },
    };
  },
});

/** Two lines of one name could not be told apart in a write-up. */
async function requireFreeName(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  name: string,
  ownId: string | null,
): Promise<void> {
  const rows = await tx.equipment.findMany({
    where: { operatorId, aircraftId, removedOn: null, ...(ownId && { id: { not: ownId } }) },
    select: { name: true },
  });
  if (rows.some((row) => nameKey(row.name) === nameKey(name))) {
    throw fieldRefusal('line.name', said('A line of this list has this name already. Add which one it is.'));
  }
}
