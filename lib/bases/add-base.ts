import { command } from '../access/service';
import { fieldRefusal } from '../problems';
import { baseColumns, requireFittingZone, sourceOf } from './columns';
import { addBaseInput } from './schema';
import { filled, said } from '../words/said';

/**
 * Adds a base; its id is the request's. Position and zone decide when it is night there, so a zone nobody confirmed and one
 * that does not fit the longitude are refused. Refuses an ident that is a base here already: it never changes afterwards,
 * because flights and permits name it.
 */
export const addBase = command({
  verb: 'base.add',
  input: addBaseInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const { ident } = input;
    const there = await tx.base.findUnique({ where: { operatorId_ident: { operatorId, ident } } });
    if (there)
      throw fieldRefusal(
        'ident',
        filled(said('{ident} is a base here already: {name}.'), { ident, name: there.name }),
      );
    const columns = baseColumns(input);
    requireFittingZone(columns, { zoneConfirmed: input.zoneConfirmed, now });
    const source = sourceOf(columns, input.airportIdent);
    await tx.base.create({
      data: { id: requestId, operatorId, ident, ...columns, source, addedById: actor.personId, addedAt: now },
    });
    return {
      value: { baseId: requestId, ident },
      audit: { subjectKind: 'base', subjectId: requestId, detail: { ident, ...columns, source } },
    };
  },
});
