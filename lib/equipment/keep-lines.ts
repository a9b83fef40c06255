import { randomUUID } from 'node:crypto';
import type { Context } from '../access/service';
import type { Prisma } from '../db/client';
import { vouchForAll, type ToVouch } from '../records/vouch';
import { LINE_STATEMENT, lineContent, type LineColumns } from './line';

export interface OfAircraft {
  readonly id: string;
  readonly registration: string;
  readonly base: { readonly zone: string };
}

/** A line to be written and signed for. `equipmentId` null: it is new. */
export interface LineToKeep {
  readonly equipmentId: string | null;
  readonly columns: LineColumns;
  readonly source: string;
}

export interface KeptLine {
  readonly equipmentId: string;
  readonly name: string;
  readonly vouching: string;
  readonly hash: string;
}

type Signing = Pick<Context, 'tx' | 'operatorId' | 'actor' | 'now'>;

/**
 * Writes lines, new and changed ones, each with a signed record of its own that it agrees with the document named. The caller raises the
 * facts' version and puts the hashes into the audit row.
 */
export async function keepLines(
  context: Signing,
  aircraft: OfAircraft,
  lines: readonly LineToKeep[],
  origin: 'typed' | 'imported',
  takenInId: string | null = null,
): Promise<readonly KeptLine[]> {
  const { tx, operatorId, actor, now } = context;
  const kept = lines.map((line) => ({ ...line, id: line.equipmentId ?? randomUUID() }));
  const signed = await vouchForAll(tx, kept, ({ id, columns, source }) =>
    lineVouched(context, aircraft, id, source, lineContent(columns)),
  );
  const rows = signed.map(({ thing, vouched }) => ({ ...thing, vouched }));
  await tx.equipment.createMany({
    data: rows.flatMap(({ id, equipmentId, columns, vouched: { id: vouchingId } }) =>
      equipmentId !== null
        ? []
        : {
            id,
            operatorId,
            aircraftId: aircraft.id,
            ...columns,
            origin,
            vouchingId,
            takenInId,
            addedById: actor.personId,
            addedAt: now,
          },
    ),
  });
  for (const { id, equipmentId, columns, vouched: signed } of rows) {
    if (equipmentId === null) continue;
    await tx.equipment.update({
      where: { operatorId_id: { operatorId, id } },
      data: { ...columns, vouchingId: signed.id } satisfies Prisma.EquipmentUncheckedUpdateInput,
    });
  }
  return rows.map(({ id, columns, vouched: signed }) => ({
    equipmentId: id,
    name: columns.name,
    vouching: signed.id,
    hash: signed.hash,
  }));
}

/** What is signed for one line. */
export const lineVouched = (
  { operatorId, actor, now }: Signing,
  aircraft: OfAircraft,
  equipmentId: string,
  source: string,
  content: object,
  statement: string = LINE_STATEMENT,
): ToVouch => ({
  operatorId,
  actor,
  now,
  zone: aircraft.base.zone,
  subjectKind: 'equipment',
  subjectId: equipmentId,
  aircraftId: aircraft.id,
  source,
  statement,
  content,
});
