import type { Context } from '../access/service';
import { dateColumn } from '../db/dates';
import { dayAtBase } from '../records/signature';
import { vouchForAll } from '../records/vouch';
import { lineVouched, type KeptLine, type OfAircraft } from './keep-lines';
import { lineContent, REMOVAL_STATEMENT, type LineColumns } from './line';
import { requireNotNamed } from './still-named';

export interface LineToRemove {
  readonly row: LineColumns & { readonly id: string };
  readonly why: string;
  readonly source: string;
}

/**
 * Takes lines off the list, each with a signed record of its own that the item is not installed. They stay on record. Refuses `conflict`
 * while an open write-up, a deferral, a directive or a minimum equipment list names one of them.
 */
export async function removeLines(
  context: Pick<Context, 'tx' | 'operatorId' | 'actor' | 'now'>,
  aircraft: OfAircraft,
  lines: readonly LineToRemove[],
): Promise<readonly KeptLine[]> {
  const { tx, operatorId, now } = context;
  await requireNotNamed(
    tx,
    operatorId,
    lines.map(({ row }) => row),
  );
  const removedOn = dayAtBase(now, aircraft.base.zone);
  const signed = await vouchForAll(tx, lines, ({ row, why, source }) => {
    const content = { ...lineContent(row), removedOn, removedWhy: why };
    return lineVouched(context, aircraft, row.id, source, content, REMOVAL_STATEMENT);
  });
  for (const { thing, vouched } of signed) {
    await tx.equipment.update({
      where: { operatorId_id: { operatorId, id: thing.row.id } },
      data: { removedOn: dateColumn(removedOn), removedWhy: thing.why, vouchingId: vouched.id },
    });
  }
  return signed.map(({ thing: { row }, vouched }) => ({
    equipmentId: row.id,
    name: row.name,
    vouching: vouched.id,
    hash: vouched.hash,
  }));
}
