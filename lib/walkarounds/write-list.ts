import { command } from '../access/service';
import { Refusal } from '../problems';
import { writeListInput } from './schema';
import { filled, said } from '../words/said';

export interface WrittenList {
  readonly planId: string;
  readonly version: number;
}

/**
 * Writes the next version of a type's walkaround list; its id is the request's. Walks under way and finished keep the
 * version they were begun with. Refuses `superseded` when a newer version was written since the writer began, and
 * `not_found` for a type that is not this operator's.
 */
export const writeList = command({
  verb: 'walkaround-list.write',
  input: writeListInput,
  async run({ tx, operatorId, actor, now, requestId }, { typeId, fromVersion, list, why }) {
    const type = await tx.aircraftType.findUnique({ where: { operatorId_id: { operatorId, id: typeId } } });
    if (!type) throw new Refusal('not_found', { say: said('There is no such aircraft type here.') });
    const { _max } = await tx.walkaroundPlan.aggregate({
      where: { operatorId, typeId },
      _max: { version: true },
    });
    const newest = _max.version ?? 0;
    if (newest !== fromVersion) {
      throw new Refusal('superseded', {
        say: filled(
          said(
            'Version {newest} of this list was written since you began. Look at it before you write yours; nothing you typed was saved.',
          ),
          { newest },
        ),
      });
    }
    const value: WrittenList = { planId: requestId, version: newest + 1 };
    await tx.walkaroundPlan.create({
      data: {
        id: requestId,
        operatorId,
        typeId,
        version: value.version,
        content: list,
        why,
        madeById: actor.personId,
        madeAt: now,
      },
    });
    return {
      value,
      audit: {
        subjectKind: 'walkaround-list',
        subjectId: requestId,
        detail: { type: type.name, version: value.version, why },
      },
    };
  },
});
