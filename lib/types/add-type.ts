import { command } from '../access/service';
import type { Tx } from '../db/client';
import { fieldRefusal } from '../problems';
import { vouch } from '../records/vouch';
import { zoneOfPerson } from '../records/zone-of-person';
import { typeColumns, typeContent } from './columns';
import { TYPE_STATEMENT } from './fields';
import { addTypeInput } from './schema';
import { said } from '../words/said';

/**
 * Adds an aircraft type; its id is the request's. Whoever adds it signs for the document it was taken from. Refuses the field `name` when
 * a type here has it already.
 */
export const addType = command({
  verb: 'type.add',
  input: addTypeInput,
  signing: true,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    await requireNewName(tx, operatorId, input.name, null);
    const columns = typeColumns(input);
    await tx.aircraftType.create({
      data: { id: requestId, operatorId, ...columns, addedById: actor.personId, addedAt: now },
    });
    const content = typeContent(columns);
    const vouched = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone: await zoneOfPerson(tx, operatorId, actor.personId),
      subjectKind: 'aircraft-type',
      subjectId: requestId,
      aircraftId: null,
      source: input.source,
      statement: TYPE_STATEMENT,
      content,
    });
    return {
      value: { typeId: requestId, name: input.name },
      audit: {
        subjectKind: 'aircraft-type',
        subjectId: requestId,
        detail: { type: content, source: input.source, vouching: vouched.id, hash: vouched.hash },
      },
    };
  },
});

/** Two types of one name could not be told apart where an aircraft's type is chosen. */
export async function requireNewName(
  tx: Tx,
  operatorId: string,
  name: string,
  ownId: string | null,
): Promise<void> {
  const there = await tx.aircraftType.findFirst({
    where: { operatorId, name: { equals: name, mode: 'insensitive' }, ...(ownId && { id: { not: ownId } }) },
  });
  if (there) throw fieldRefusal('name', said('A type here has this name already.'));
}
