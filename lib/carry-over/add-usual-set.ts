import { randomUUID } from 'node:crypto';
import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { INTERVAL_BY_LAW } from '../fleet/requirement-schema';
import { fieldRefusal } from '../problems';
import { addUsualSetInput } from './schema';
import { USUAL_SET } from './usual-set';
import { said } from '../words/said';

/**
 * Puts several of the usual inspections and tests on an aircraft at once, with the intervals the regulation sets. One that is there
 * already is left as it is. Until each has a record of when it was last done it is not known, and bars.
 */
export const addUsualSet = command({
  verb: 'requirement.add',
  input: addUsualSetInput,
  async run({ tx, operatorId, actor, now }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const standing = await tx.requirement.findMany({
      where: { operatorId, aircraftId: aircraft.id, endedOn: null },
      select: { kind: true },
    });
    const wanted = USUAL_SET.filter(
      ({ kind }) =>
        (input.kinds as readonly string[]).includes(kind) && !standing.some((row) => row.kind === kind),
    );
    if (wanted.length === 0) throw fieldRefusal('kinds', said('All of these are on record already.'));
    const rows = wanted.map(({ kind, name, reference }) => {
      const byLaw = INTERVAL_BY_LAW[kind];
      return {
        id: randomUUID(),
        operatorId,
        aircraftId: aircraft.id,
        kind,
        name,
        reference,
        binding: true,
        intervalMonths: byLaw?.months ?? null,
        intervalDays: byLaw?.days ?? null,
        intervalTenths: byLaw?.tenths ?? null,
        fixedExpiry:
          kind === 'elt-battery' && input.batteryThrough !== null ? dateColumn(input.batteryThrough) : null,
        addedById: actor.personId,
        addedAt: now,
      };
    });
    await tx.requirement.createMany({ data: rows });
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { added: rows.map(({ id, kind }) => ({ id, kind })) },
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraft.id,
        detail: {
          registration: aircraft.registration,
          added: rows.map(({ kind }) => kind),
          batteryThrough: input.batteryThrough,
          by: actor.name,
        },
      },
    };
  },
});
