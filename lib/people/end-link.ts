import { command } from '../access/service';
import { Refusal } from '../problems';
import { endLinkInput } from './schema';
import { said } from '../words/said';

/** Ends a link before anybody used it. One that was used or has ended stays as it is. */
export const endPersonLink = command({
  verb: 'person.end-link',
  input: endLinkInput,
  async run({ tx, operatorId, now }, { linkId }) {
    const link = await tx.personLink.findUnique({ where: { operatorId_id: { operatorId, id: linkId } } });
    if (!link) throw new Refusal('not_found', { say: said('There is no such link here.') });
    await tx.personLink.updateMany({
      where: { operatorId, id: linkId, usedAt: null, endedAt: null },
      data: { endedAt: now, sealedToken: null },
    });
    return {
      value: { linkId },
      audit: { subjectKind: 'person', subjectId: link.personId, detail: { linkId, kind: link.kind } },
    };
  },
});
