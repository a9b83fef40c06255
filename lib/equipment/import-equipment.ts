import { command, query } from '../access/service';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { checkFile, type CheckedEquipment } from './check-file';
import { keepLines } from './keep-lines';
import { faultFields } from './read-rows';
import { standingLines } from './read-list';
import { sha256Of } from './file-sum';
import { requireSameFunction } from './same-function';
import { checkEquipmentInput, importEquipmentInput } from './schema';
import { said } from '../words/said';

/** What a file would do to an aircraft's equipment list now, row by row. Writes nothing. */
export const checkEquipment = query({
  verb: 'equipment.check-import',
  input: checkEquipmentInput,
  async run({ tx, operatorId }, { aircraftId, format, text }): Promise<CheckedEquipment> {
    const aircraft = await requireAircraft(tx, operatorId, aircraftId);
    return checkFile(format, text, aircraft.registration, await standingLines(tx, operatorId, aircraftId));
  },
});

/**
 * Takes a file of equipment in, whole or, with anything wrong in any row, not at all. Every row that adds, changes or confirms a line is
 * confirmed by this signature, each with a record of its own. Rows that stand already change nothing, and lines the file does not name
 * stay as they are.
 */
export const importEquipment = command({
  verb: 'equipment.import',
  input: importEquipmentInput,
  signing: true,
  async run(context, { aircraftId, format, fileName, text, source }) {
    const { tx, operatorId, actor, now, requestId } = context;
    const aircraft = await requireAircraft(tx, operatorId, aircraftId);
    const list = await standingLines(tx, operatorId, aircraftId);
    const found = checkFile(format, text, aircraft.registration, list);
    if (found.errors.length > 0) {
      throw new Refusal('invalid', {
        say: said('Nothing was taken in. Put right what is wrong below.'),
        fields: faultFields(found.errors),
      });
    }
    const comes = found.rows.filter(({ does }) => does !== 'keep');
    await requireSameFunction(
      tx,
      operatorId,
      comes.flatMap(({ standingId, columns }) => {
        const standing = list.find(({ id }) => id === standingId);
        return standing
          ? [{ id: standing.id, name: standing.name, from: standing.function, to: columns.function }]
          : [];
      }),
    );
    const sha256 = sha256Of(text);
    if (comes.length > 0) {
      await tx.takenIn.create({
        data: {
          id: requestId,
          operatorId,
          what: 'equipment',
          format,
          aircraftId,
          fileName,
          sha256,
          rows: found.rows.length,
          takenById: actor.personId,
          takenAt: now,
        },
      });
    }
    const kept = await keepLines(
      context,
      aircraft,
      comes.map(({ standingId, columns }) => ({ equipmentId: standingId, columns, source })),
      'imported',
      requestId,
    );
    if (comes.length > 0) await factsChanged(tx, operatorId, aircraftId);
    const count = (does: string) => found.rows.filter((row) => row.does === does).length;
    const counts = {
      added: count('add'),
      changed: count('change'),
      confirmed: count('confirm'),
      unchanged: count('keep'),
    };
    return {
      value: counts,
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraftId,
        detail: {
          registration: aircraft.registration,
          fileName,
          format,
          sha256,
          ...counts,
          source,
          lines: kept,
        },
      },
    };
  },
});
