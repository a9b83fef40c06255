import { randomUUID } from 'node:crypto';
import { command } from '../access/service';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { linesOfSets } from './lines-of-set';
import { beginSetInput } from './schema';
import type { TypeForSet } from './lines-of-set';
import { said } from '../words/said';

/**
 * Puts the items of starting sets on an aircraft's list, each unconfirmed: the engine trusts none of them, and the aircraft is no go until
 * every one was held against its own documents. What is on the list already, by name or by function, is not put there twice. Refuses
 * `conflict` when nothing is left to add.
 */
export const beginSet = command({
  verb: 'equipment.begin-set',
  input: beginSetInput,
  async run({ tx, operatorId, actor, now }, { aircraftId, sets }) {
    const aircraft = await requireAircraft(tx, operatorId, aircraftId);
    const onList = await tx.equipment.findMany({
      where: { operatorId, aircraftId, removedOn: null },
      select: { name: true, function: true },
    });
    const lines = linesOfSets(sets, aircraft.type as TypeForSet, onList);
    if (lines.length === 0) {
      throw new Refusal('conflict', { say: said('Everything of these sets is on the list already.') });
    }
    await tx.equipment.createMany({
      data: lines.map((line) => ({
        id: randomUUID(),
        operatorId,
        aircraftId,
        ...line,
        origin: 'starting-set',
        addedById: actor.personId,
        addedAt: now,
      })),
    });
    await factsChanged(tx, operatorId, aircraftId);
    return {
      value: { aircraftId, added: lines.length },
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraftId,
        detail: {
          registration: aircraft.registration,
          sets,
          added: lines.map(({ name }) => name),
        },
      },
    };
  },
});
