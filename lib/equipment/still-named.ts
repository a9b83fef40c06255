import type { Tx } from '../db/client';
import { Refusal } from '../problems';

/**
 * What still names items of equipment, in words by item: an open write-up (deferred or not), a directive in force, an entry of the minimum
 * equipment list in force. While one does, the item stays on the list.
 */
export async function stillNamed(
  tx: Tx,
  operatorId: string,
  equipmentIds: readonly string[],
): Promise<ReadonlyMap<string, readonly string[]>> {
  const equipmentId = { in: [...equipmentIds] };
  // One after the other: they share the connection of the transaction.
  const writeUps = await tx.discrepancy.findMany({
    where: { operatorId, equipmentId, state: { not: 'closed' } },
    select: { equipmentId: true, number: true, title: true, deferrals: { where: { end: null } } },
    orderBy: { number: 'asc' },
  });
  const directives = await tx.directive.findMany({
    where: { operatorId, equipmentId, endedOn: null },
    select: { equipmentId: true, number: true },
    orderBy: { number: 'asc' },
  });
  const entries = await tx.melItem.findMany({
    where: { operatorId, equipmentId, mel: { endedAt: null } },
    select: { equipmentId: true, title: true, mel: { select: { reference: true } } },
    orderBy: { title: 'asc' },
  });
  const said: readonly (readonly [string | null, string])[] = [
    ...writeUps.map(({ equipmentId: id, number, title, deferrals }): [string | null, string] => [
      id,
      `${number} ${title} is ${deferrals.length > 0 ? 'deferred' : 'open'} on it`,
    ]),
    ...directives.map(({ equipmentId: id, number }): [string | null, string] => [
      id,
      `directive ${number} names it`,
    ]),
    ...entries.map(({ equipmentId: id, title, mel }): [string | null, string] => [
      id,
      `minimum equipment list ${mel.reference} names it (${title})`,
    ]),
  ];
  const named = new Map<string, string[]>();
  for (const [id, words] of said) {
    if (id) named.set(id, [...(named.get(id) ?? []), words]);
  }
  return named;
}

/** Those of the items that something names, with the reasons as one text. */
export async function whatIsNamed(
  tx: Tx,
  operatorId: string,
  items: readonly { readonly id: string; readonly name: string }[],
): Promise<{ name: string; reasons: string }[]> {
  const named = await stillNamed(
    tx,
    operatorId,
    items.map(({ id }) => id),
  );
  return items.flatMap(({ id, name }) => {
    const reasons = named.get(id);
    return reasons ? [{ name, reasons: reasons.join('; ') }] : [];
  });
}

/** Refuses `conflict` in words while anything names one of these items. */
export async function requireNotNamed(
  tx: Tx,
  operatorId: string,
  items: readonly { readonly id: string; readonly name: string }[],
): Promise<void> {
  const named = await whatIsNamed(tx, operatorId, items);
  const words = named.map(({ name, reasons }) => `${name} stays on the list: ${reasons}.`);
  if (words.length > 0) throw new Refusal('conflict', { say: words.join(' ') });
}
