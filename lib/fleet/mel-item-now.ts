import type { Prisma } from '../db/client';

type Item = Prisma.MelItemGetPayload<object>;

/**
 * The item of the list in force that a deferral stands on. A newer list takes the older's place; where its one entry for the same
 * equipment says word for word the same, nothing has changed for the deferral. Where it says anything else the deferral keeps
 * the item it was made under, which the list in force does not have, and the rules bar (91.213(a)(5)).
 */
export function melItemNow(
  melItemId: string | null,
  lists: readonly { readonly endedAt: Date | null; readonly items: readonly Item[] }[],
): string | null {
  if (melItemId === null) return null;
  const inForce = lists.find(({ endedAt }) => endedAt === null);
  const old = lists.flatMap(({ items }) => items).find(({ id }) => id === melItemId);
  if (!inForce || !old || old.melId === inForce.items[0]?.melId) return melItemId;
  const entries = inForce.items.filter(({ equipmentId }) => equipmentId === old.equipmentId);
  const [entry] = entries;
  return entry && entries.length === 1 && saysTheSame(entry, old) ? entry.id : melItemId;
}

const DECIDES = [
  'title',
  'category',
  'categoryADays',
  'installed',
  'requiredForDispatch',
  'allowedNight',
  'allowedIfr',
  'allowedHire',
  'proviso',
  'operatingProcedure',
  'maintenanceProcedure',
] as const satisfies readonly (keyof Item)[];

type Said = Pick<Item, (typeof DECIDES)[number]>;

/** Two entries for one item of equipment that differ in no word that decides. */
export const saysTheSame = (a: Said, b: Said): boolean => DECIDES.every((key) => a[key] === b[key]);
