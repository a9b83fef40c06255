import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate, calendarDateOrNull, instant } from '../db/dates';
import { requireAnyAircraft } from '../aircraft/require';
import type { CiteId } from '../rules/law';
import { jascLabel } from '../rules/jasc';
import { lineContent, type LineColumns } from './line';
import { setItemOf } from './starting-sets';
import { stillNamed } from './still-named';

export interface LineView extends LineColumns {
  readonly id: string;
  /** "3340 Exterior Lighting". */
  readonly system: string;
  readonly origin: 'starting-set' | 'typed' | 'imported' | null;
  readonly confirmed: boolean;
  /** Who signed for it as it stands, when, and by which document. Null: nobody, or it is from before the question. */
  readonly vouched: { readonly by: string; readonly on: string; readonly source: string } | null;
  /** What keeps it on the list. */
  readonly namedBy: readonly string[];
  /** The paragraphs a line of a starting set is taken from; null: it is of none; empty: common practice. */
  readonly ofSet: readonly CiteId[] | null;
}

export interface RemovedLine {
  readonly id: string;
  readonly name: string;
  readonly on: string;
  readonly why: string;
}

export interface EquipmentView {
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly equipmentListSource: string | null;
  readonly retired: boolean;
  readonly asOf: string;
  readonly lines: readonly LineView[];
  readonly removed: readonly RemovedLine[];
}

/** The equipment list of one aircraft, unconfirmed lines first, then by name; and what was taken off it. */
export const readEquipment = query({
  verb: 'equipment.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId, now }, { aircraftId }): Promise<EquipmentView> {
    const aircraft = await requireAnyAircraft(tx, operatorId, aircraftId);
    const rows = await tx.equipment.findMany({
      where: { operatorId, aircraftId },
      include: { vouching: true },
      orderBy: [{ name: 'asc' }, { id: 'asc' }],
    });
    const standing = rows.filter(({ removedOn }) => removedOn === null);
    const named = await stillNamed(
      tx,
      operatorId,
      standing.map(({ id }) => id),
    );
    const lines = standing.map((row): LineView => {
      const { vouching } = row;
      return {
        ...lineContent(row),
        id: row.id,
        system: jascLabel(row.jasc),
        origin: row.origin as LineView['origin'],
        confirmed: row.origin === null || vouching !== null,
        vouched: vouching && {
          by: vouching.personName,
          on: calendarDate(vouching.signedOn),
          source: vouching.source,
        },
        namedBy: named.get(row.id) ?? [],
        ofSet: row.origin === 'starting-set' ? (setItemOf(row.name, row.function)?.cites ?? null) : null,
      };
    });
    return {
      aircraftId,
      registration: aircraft.registration,
      typeName: aircraft.type.name,
      equipmentListSource: aircraft.type.equipmentListSource,
      retired: aircraft.retiredOn !== null,
      asOf: instant(now),
      lines: [...lines.filter(({ confirmed }) => !confirmed), ...lines.filter(({ confirmed }) => confirmed)],
      removed: rows.flatMap(({ id, name, removedOn, removedWhy }) =>
        removedOn ? [{ id, name, on: calendarDateOrNull(removedOn) ?? '', why: removedWhy ?? '' }] : [],
      ),
    };
  },
});
