import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { contentHash } from '../records/canonical';
import { dayAtBase } from '../records/signature';
import { endDirectiveInput } from './schema';
import { said } from '../words/said';

/** A directive that applies no more, with the document that says so: from then on nothing asks for it, so it is a signature. */
export const endDirective = command({
  verb: 'directive.end',
  input: endDirectiveInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const key = { operatorId_id: { operatorId, id: input.directiveId } };
    const row = await tx.directive.findUnique({
      where: key,
      include: { aircraft: { include: { base: true } } },
    });
    if (!row || row.aircraft.retiredOn) {
      throw new Refusal('not_found', { say: said('There is no such directive here.') });
    }
    if (row.endedOn) throw new Refusal('conflict', { say: said('This has been ended already.') });
    const endedOn = dayAtBase(now, row.aircraft.base.zone);
    const { why, reference } = input;
    const content = { directive: row.number, title: row.title, why, reference, endedOn };
    await tx.directive.update({
      where: key,
      data: { endedOn: dateColumn(endedOn), endedWhy: `${why}; ${reference}`, endedById: actor.personId },
    });
    await factsChanged(tx, operatorId, row.aircraftId);
    return {
      value: { directiveId: row.id },
      audit: {
        subjectKind: 'directive',
        subjectId: row.id,
        detail: {
          registration: row.aircraft.registration,
          ...content,
          hash: contentHash(content),
          by: actor.name,
        },
      },
    };
  },
});
