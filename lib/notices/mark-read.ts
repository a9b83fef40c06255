import { command } from '../access/service';
import { Refusal } from '../problems';
import { markNoticesReadInput } from './schema';

/** The person it was for says that these notices were seen. One seen before stays as it was. */
export const markNoticesRead = command({
  verb: 'notice.mark-read',
  input: markNoticesReadInput,
  async run({ tx, operatorId, actor, now }, input) {
    const ids = [...new Set(input.noticeIds)];
    const own = { operatorId, personId: actor.personId, id: { in: ids } };
    if ((await tx.notice.count({ where: own })) !== ids.length) throw new Refusal('not_found');
    const { count } = await tx.notice.updateMany({ where: { ...own, readAt: null }, data: { readAt: now } });
    return {
      value: { read: count },
      audit: { subjectKind: 'person', subjectId: actor.personId, detail: { notices: ids } },
    };
  },
});
