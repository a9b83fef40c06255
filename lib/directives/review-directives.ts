import { command } from '../access/service';
import { DIRECTIVES_STATEMENT } from '../carry-over/statements';
import { dateColumn } from '../db/dates';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { fieldRefusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { vouch } from '../records/vouch';
import { reviewDirectivesInput } from './schema';
import { said } from '../words/said';

/**
 * Somebody went through all directives that apply to the aircraft (39.3, 91.403(a)), on a day and by a document, and signs for it.
 * Until then which apply is not known, and the answer is no go.
 */
export const reviewDirectives = command({
  verb: 'directives.review',
  input: reviewDirectivesInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const zone = aircraft.base.zone;
    const { reviewedOn, document } = input;
    if (reviewedOn > dayAtBase(now, zone))
      throw fieldRefusal('reviewedOn', said('This day has not come yet.'));
    const directives = await tx.directive.findMany({
      where: { operatorId, aircraftId: aircraft.id, endedOn: null },
      orderBy: [{ number: 'asc' }, { id: 'asc' }],
      select: { number: true, title: true, equipmentId: true, requiresOperable: true },
    });
    const { hash } = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone,
      subjectKind: 'directives',
      subjectId: aircraft.id,
      aircraftId: aircraft.id,
      source: document,
      statement: DIRECTIVES_STATEMENT,
      content: { reviewedOn, directives },
    });
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId, id: aircraft.id } },
      data: { directivesReviewedOn: dateColumn(reviewedOn) },
    });
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { aircraftId: aircraft.id },
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraft.id,
        detail: { registration: aircraft.registration, reviewedOn, document, hash },
      },
    };
  },
});
