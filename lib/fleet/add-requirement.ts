import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { fieldRefusal } from '../problems';
import { parseTenths } from '../rules/hours';
import { factsChanged, requireAircraft } from './require-aircraft';
import { addRequirementInput, INTERVAL_BY_LAW } from './requirement-schema';
import { filled, said } from '../words/said';

/**
 * Puts something that recurs on an aircraft. Until somebody records when it was last done, it is not known and bars what it
 * would bar when overdue. Refuses a second row of a kind that a regulation sets.
 */
export const addRequirement = command({
  verb: 'requirement.add',
  input: addRequirementInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const byLaw = INTERVAL_BY_LAW[input.kind];
    if (byLaw) {
      const standing = await tx.requirement.findFirst({
        where: { operatorId, aircraftId: aircraft.id, kind: input.kind, endedOn: null },
        select: { name: true },
      });
      if (standing) {
        throw fieldRefusal(
          'kind',
          filled(said('{registration} has this already: "{name}".'), {
            registration: aircraft.registration,
            name: standing.name,
          }),
        );
      }
    }
    const row = {
      aircraftId: aircraft.id,
      kind: input.kind,
      name: input.name,
      reference: input.reference,
      binding: input.kind === 'maker-interval' ? input.binding === true : true,
      intervalMonths: byLaw ? byLaw.months : input.intervalMonths,
      intervalDays: byLaw ? byLaw.days : input.intervalDays,
      intervalTenths: byLaw ? byLaw.tenths : parseTenths(input.intervalHours),
    };
    await tx.requirement.create({
      data: {
        ...row,
        id: requestId,
        operatorId,
        fixedExpiry: input.fixedExpiry === null ? null : dateColumn(input.fixedExpiry),
        addedById: actor.personId,
        addedAt: now,
      },
    });
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { requirementId: requestId },
      audit: {
        subjectKind: 'requirement',
        subjectId: requestId,
        detail: {
          ...row,
          registration: aircraft.registration,
          fixedExpiry: input.fixedExpiry,
          by: actor.name,
        },
      },
    };
  },
});
