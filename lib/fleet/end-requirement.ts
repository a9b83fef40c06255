import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { Refusal } from '../problems';
import { contentHash } from '../records/canonical';
import { dayAtBase } from '../records/signature';
import type { RequirementKind } from '../rules/aircraft';
import { barsToEnding } from '../rules/end-of-requirement';
import { aircraftFacts, readAircraft } from './facts';
import { factsChanged } from './require-aircraft';
import { endRequirementInput } from './requirement-schema';
import { said } from '../words/said';

/**
 * Ends a requirement that applies no more, with the reason and the document that says so: from then on nothing warns of it,
 * so it is a signature. The audit row keeps the content and its hash. No paragraph says who may; its records stay. Refuses what a regulation asks for
 * (lib/rules/end-of-requirement.ts), and one that work or an inspection under way is about.
 */
export const endRequirement = command({
  verb: 'requirement.end',
  input: endRequirementInput,
  signing: true,
  auditRefusals: true,
  async run({ tx, operatorId, actor, now }, input) {
    const key = { operatorId_id: { operatorId, id: input.requirementId } };
    const row = await tx.requirement.findUnique({
      where: key,
      include: {
        aircraft: { include: { base: true } },
        work: { where: { state: { in: ['started', 'entered'] } }, select: { id: true } },
      },
    });
    if (!row || row.aircraft.retiredOn) {
      throw new Refusal('not_found', { say: said('There is no such requirement here.') });
    }
    if (row.endedOn) throw new Refusal('conflict', { say: said('This has been ended already.') });
    const inspections = await tx.inspection.count({
      where: {
        operatorId,
        aircraftId: row.aircraftId,
        state: { in: ['begun', 'entered'] },
        requirementIds: { has: row.id },
      },
    });
    if (row.work.length > 0 || inspections > 0) {
      throw new Refusal('conflict', {
        say: said('Work on this is under way. Finish it or give it up first.'),
      });
    }
    const aircraft = await readAircraft(tx, operatorId, row.aircraftId);
    if (!aircraft) throw new Refusal('not_found');
    const bars = barsToEnding(row.kind as RequirementKind, aircraftFacts(aircraft).equipment);
    if (bars.length > 0) {
      throw new Refusal('conflict', {
        say: said('The regulation asks for this; it was not ended.'),
        lines: bars,
      });
    }
    const endedOn = dayAtBase(now, row.aircraft.base.zone);
    const { why, reference } = input;
    const content = { requirement: row.name, kind: row.kind, why, reference, endedOn };
    await tx.requirement.update({
      where: key,
      data: {
        endedOn: dateColumn(endedOn),
        endedWhy: `${why}; ${reference}`,
        endedById: actor.personId,
      },
    });
    await factsChanged(tx, operatorId, row.aircraftId);
    return {
      value: { requirementId: row.id },
      audit: {
        subjectKind: 'requirement',
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
