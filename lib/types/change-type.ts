import { command } from '../access/service';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { vouch } from '../records/vouch';
import { zoneOfPerson } from '../records/zone-of-person';
import { requireNewName } from './add-type';
import { typeColumns, typeContent, type TypeContent } from './columns';
import { TYPE_STATEMENT } from './fields';
import { changeTypeInput } from './schema';
import { said } from '../words/said';

/**
 * Puts a type right, signed anew with the document named. Every aircraft of the type gets a new version of its facts, and its releases
 * are asked about again. Refuses `not_found`, and a name another type has.
 */
export const changeType = command({
  verb: 'type.change',
  input: changeTypeInput,
  signing: true,
  async run({ tx, operatorId, actor, now }, { typeId, ...input }) {
    const key = { operatorId_id: { operatorId, id: typeId } };
    const row = await tx.aircraftType.findUnique({ where: key });
    if (!row) throw new Refusal('not_found', { say: said('There is no such aircraft type here.') });
    await requireNewName(tx, operatorId, input.name, typeId);
    const columns = typeColumns(input);
    const before = typeContent(row);
    const after = typeContent(columns);
    const changed = (Object.keys(after) as (keyof TypeContent)[]).filter(
      (name) => before[name] !== after[name],
    );
    await tx.aircraftType.update({ where: key, data: columns });
    const vouched = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone: await zoneOfPerson(tx, operatorId, actor.personId),
      subjectKind: 'aircraft-type',
      subjectId: typeId,
      aircraftId: null,
      source: input.source,
      statement: TYPE_STATEMENT,
      content: after,
    });
    const aircraft =
      changed.length === 0
        ? []
        : await tx.aircraft.findMany({
            where: { operatorId, typeId, retiredOn: null },
            select: { id: true, registration: true },
            orderBy: { registration: 'asc' },
          });
    for (const { id } of aircraft) await factsChanged(tx, operatorId, id);
    return {
      value: { typeId, changed },
      audit: {
        subjectKind: 'aircraft-type',
        subjectId: typeId,
        detail: {
          type: after.name,
          changed: Object.fromEntries(changed.map((name) => [name, { from: before[name], to: after[name] }])),
          aircraft: aircraft.map(({ registration }) => registration),
          source: input.source,
          vouching: vouched.id,
          hash: vouched.hash,
        },
      },
    };
  },
});
