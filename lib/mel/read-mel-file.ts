import type { Tx } from '../db/client';
import { calendarDateOrNull } from '../db/dates';
import { readRows, type RowFault } from '../equipment/read-rows';
import { sha256Of } from '../equipment/file-sum';
import { saysTheSame } from '../fleet/mel-item-now';
import { requireAircraft } from '../fleet/require-aircraft';
import { plain, same } from '../carry-over/write-up-on-paper';
import { answered } from '../rules/carried-over';
import { said } from '../words/said';
import { itemColumns } from './item-columns';
import { melRow, type MelRow } from './mel-columns';
import type { z } from 'zod';
import type { checkMelInput } from './schema';
import { filled } from '../words/said';

export interface MelItemRow extends MelRow {
  readonly row: number;
  readonly equipmentId: string;
}

export interface CheckedMel {
  readonly items: readonly { readonly row: number; readonly title: string; readonly category: string }[];
  readonly errors: readonly RowFault[];
  readonly notes: readonly string[];
  /** The very same list stands already: nothing would be added. */
  readonly unchanged: boolean;
  /** The list that would be ended. */
  readonly replaces: {
    readonly id: string;
    readonly reference: string;
    readonly revision: string | null;
  } | null;
  /** Deferrals under it that the new list would no longer carry, by number. */
  readonly loses: readonly string[];
}

type Head = z.output<typeof checkMelInput>;

/** A file of a list held against the aircraft it is for: the same for the look beforehand and for the import itself. */
export async function readMelFile(
  tx: Tx,
  operatorId: string,
  head: Head,
): Promise<{ readonly checked: CheckedMel; readonly items: readonly MelItemRow[] }> {
  const aircraft = await requireAircraft(tx, operatorId, head.aircraftId);
  const equipment = await tx.equipment.findMany({
    where: { operatorId, aircraftId: aircraft.id, removedOn: null },
    select: { id: true, name: true, installed: true },
  });
  const read = readRows(head.format, head.text, melRow);
  const errors: RowFault[] = [...read.errors];
  const notes: string[] = [...read.notes];
  const items: MelItemRow[] = [];
  const titles = new Map<string, number>();
  for (const { row, value } of read.rows) {
    const found = equipment.filter(({ name }) => same(name, value.equipment));
    const [line] = found;
    const earlier = titles.get(plain(value.title));
    titles.set(plain(value.title), row);
    if (earlier !== undefined) {
      errors.push({
        row,
        field: 'title',
        message: filled(said('Row {earlier} has this title already.'), { earlier }),
      });
    } else if (!line || found.length > 1) {
      const message =
        found.length > 1
          ? said('Several lines of the equipment list have this name.')
          : said('The equipment list of this aircraft has no line of this name.');
      errors.push({ row, field: 'equipment', message });
    } else {
      items.push({ ...value, row, equipmentId: line.id });
      if (line.installed !== value.installed) {
        notes.push(
          `Row ${row}: the list is written for ${value.installed} installed, this aircraft has ${line.installed}. A deferral under it will bar.`,
        );
      }
    }
  }
  const standing = await tx.mel.findFirst({
    where: { operatorId, aircraftId: aircraft.id, endedAt: null },
    include: { takenIn: true },
  });
  return {
    items,
    checked: {
      items: items.map(({ row, title, category }) => ({ row, title, category })),
      errors: errors.toSorted((a, b) => a.row - b.row),
      notes,
      unchanged: standing !== null && sameList(standing, head),
      replaces: standing && { id: standing.id, reference: standing.reference, revision: standing.revision },
      loses: standing ? await losesOf(tx, operatorId, aircraft.id, items) : [],
    },
  };
}

/** The same file under the same head. */
function sameList(
  standing: {
    readonly reference: string;
    readonly revision: string | null;
    readonly letterReference: string | null;
    readonly letterIssuedOn: Date | null;
    readonly letterAboard: boolean | null;
    readonly enforceCategories: boolean;
    readonly extensionCategories: readonly string[];
    readonly extensionReference: string | null;
    readonly takenIn: { readonly sha256: string } | null;
  },
  head: Head,
): boolean {
  return (
    standing.takenIn?.sha256 === sha256Of(head.text) &&
    standing.reference === head.reference &&
    (standing.revision ?? '') === head.revision &&
    (standing.letterReference ?? '') === head.letterReference &&
    // The letter looked for and not found is no repetition: it closes both ways (91.213(a)(2)).
    standing.letterAboard === answered(head.letterAboard) &&
    calendarDateOrNull(standing.letterIssuedOn) === head.letterIssuedOn &&
    standing.enforceCategories === (head.enforceCategories === 'yes') &&
    (standing.extensionReference ?? '') === head.extensionReference &&
    [...standing.extensionCategories].toSorted().join() === [...head.extensionCategories].toSorted().join()
  );
}

/**
 * Live deferrals whose entry the new list does not repeat word for word (lib/fleet/mel-item-now.ts); one may stand on an item of
 * a list that was ended before, which the list in force repeated.
 */
async function losesOf(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  items: readonly MelItemRow[],
): Promise<string[]> {
  const rows = await tx.deferral.findMany({
    where: { operatorId, basis: 'mel', end: null, discrepancy: { aircraftId, state: { not: 'closed' } } },
    select: { melItemId: true, discrepancy: { select: { number: true } } },
  });
  const stoodOn = await tx.melItem.findMany({
    where: { operatorId, id: { in: rows.flatMap(({ melItemId }) => melItemId ?? []) } },
  });
  return rows.flatMap(({ melItemId, discrepancy }) => {
    const old = stoodOn.find(({ id }) => id === melItemId);
    const entries = items.filter(({ equipmentId }) => equipmentId === old?.equipmentId);
    const [entry] = entries;
    const repeats = old && entry && entries.length === 1 && saysTheSame(itemColumns(entry), old);
    return repeats ? [] : [discrepancy.number];
  });
}
