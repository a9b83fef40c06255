import type { Tx } from '../db/client';
import type { WalkaroundList } from '../rules/walkaround/plan';
import { STARTING_LIST } from '../rules/walkaround/starting-list';
import type { PackList } from './pack';

/** What a type without a list of its own is walked by. */
export const NOT_FITTED_YET: PackList = { id: null, version: 0, list: STARTING_LIST };

/** The content of a version; it was checked when it was written. */
export const listOf = (content: unknown): WalkaroundList => content as WalkaroundList;

/** Each type's newest list; a type that has none is left out. */
export async function newestLists(tx: Tx, operatorId: string): Promise<ReadonlyMap<string, PackList>> {
  const versions = await tx.walkaroundPlan.groupBy({
    by: ['typeId'],
    where: { operatorId },
    _max: { version: true },
  });
  const rows = await tx.walkaroundPlan.findMany({
    where: {
      operatorId,
      OR: versions.map(({ typeId, _max }) => ({ typeId, version: _max.version ?? 0 })),
    },
  });
  return new Map(
    rows.map(({ typeId, id, version, content }) => [typeId, { id, version, list: listOf(content) }]),
  );
}
