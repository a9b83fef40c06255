import type { Tx } from '../db/client';

/** Names of people by id; a person who left keeps the name. */
export async function namesOf(tx: Tx, personIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const people = await tx.person.findMany({
    where: { id: { in: [...new Set(personIds)] } },
    select: { id: true, name: true },
  });
  return new Map(people.map((person) => [person.id, person.name]));
}

/** A person's name out of `namesOf`; nobody is left without one. */
export const nameIn = (names: ReadonlyMap<string, string>, personId: string): string =>
  names.get(personId) ?? 'somebody who left';
