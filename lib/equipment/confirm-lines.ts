import { command } from '../access/service';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { keepLines, type LineToKeep } from './keep-lines';
import { lineColumns, nameKey } from './line';
import { removeLines, type LineToRemove } from './remove-lines';
import { requireSameFunction, type FunctionChange } from './same-function';
import { confirmLinesInput } from './schema';
import { filled, said } from '../words/said';

/** Why a line is gone that a person found not installed while going through the list. */
const NOT_INSTALLED = said('Not installed on this aircraft.');

/**
 * What a sitting with the aircraft's documents found, item by item: the line agrees, as it stands or put right; or the item is not
 * installed, which takes it off the list. One password, and a signed record of its own for every item. All or nothing. Refuses
 * `superseded` when somebody else confirmed or removed one of them meanwhile, and what `removeLines` refuses.
 */
export const confirmLines = command({
  verb: 'equipment.confirm',
  input: confirmLinesInput,
  signing: true,
  async run(context, { aircraftId, decisions }) {
    const { tx, operatorId } = context;
    const aircraft = await requireAircraft(tx, operatorId, aircraftId);
    const rows = await tx.equipment.findMany({ where: { operatorId, aircraftId, removedOn: null } });
    const keep: LineToKeep[] = [];
    const remove: LineToRemove[] = [];
    for (const decided of decisions) {
      const { equipmentId, source } = decided;
      const row = rows.find(({ id }) => id === equipmentId);
      if (!row || row.origin === null || row.vouchingId !== null) {
        const what = row ? row.name : 'One of these items';
        throw new Refusal('superseded', {
          say: filled(
            said(
              '{what} was confirmed or taken off the list meanwhile. Load the list again; nothing was signed.',
            ),
            { what },
          ),
        });
      }
      if (decided.kind === 'not-installed') remove.push({ row, why: NOT_INSTALLED, source });
      else keep.push({ equipmentId, columns: lineColumns(decided.line), source });
    }
    requireOnce(decisions.map(({ equipmentId }) => equipmentId));
    requireNames(rows, keep, remove);
    await requireSameFunction(tx, operatorId, changesOf(rows, keep));
    const confirmed = await keepLines(context, aircraft, keep, 'typed');
    const removed = remove.length > 0 ? await removeLines(context, aircraft, remove) : [];
    await factsChanged(tx, operatorId, aircraftId);
    const left = rows.filter(
      ({ id, origin, vouchingId }) =>
        origin !== null && vouchingId === null && !decisions.some(({ equipmentId }) => equipmentId === id),
    ).length;
    return {
      value: { aircraftId, confirmed: confirmed.length, removed: removed.length, left },
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraftId,
        detail: { registration: aircraft.registration, confirmed, removed },
      },
    };
  },
});

const changesOf = (
  rows: readonly { readonly id: string; readonly name: string; readonly function: string }[],
  keep: readonly LineToKeep[],
): FunctionChange[] =>
  rows.flatMap(({ id, name, function: from }) => {
    const kept = keep.find(({ equipmentId }) => equipmentId === id);
    return kept ? [{ id, name, from, to: kept.columns.function }] : [];
  });

function requireOnce(ids: readonly string[]): void {
  if (new Set(ids).size < ids.length) {
    throw fieldRefusal('decisions', said('One item was decided twice. Load the list again.'));
  }
}

/** Names stay apart after all decisions. */
function requireNames(
  rows: readonly { readonly id: string; readonly name: string }[],
  keep: readonly LineToKeep[],
  remove: readonly LineToRemove[],
): void {
  const gone = new Set(remove.map(({ row }) => row.id));
  const names = new Map<string, string>();
  for (const row of rows) {
    if (gone.has(row.id)) continue;
    const name = keep.find(({ equipmentId }) => equipmentId === row.id)?.columns.name ?? row.name;
    if (names.has(nameKey(name))) {
      throw fieldRefusal(
        'decisions',
        filled(said('Two lines are called “{name}”. Add which one it is.'), { name }),
      );
    }
    names.set(nameKey(name), row.id);
  }
}
