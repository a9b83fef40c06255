import { command } from '../access/service';
import { vouch } from '../records/vouch';
import { aircraftColumns, aircraftContent, hourColumns } from './columns';
import { requireNewRegistration, requireTypeAndBase } from './require';
import { addAircraftInput, AIRCRAFT_STATEMENT } from './schema';

/**
 * Adds an aircraft; its id is the request's. It has no equipment, papers or inspections yet, so every answer about it is no go and says
 * what is missing. Signed, with the document named. Refuses a registration that is here already, and a type or base that is not.
 */
export const addAircraft = command({
  verb: 'aircraft.add',
  input: addAircraftInput,
  signing: true,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    await requireNewRegistration(tx, operatorId, input.registration);
    const { type, base } = await requireTypeAndBase(tx, operatorId, input);
    const columns = aircraftColumns(input);
    const hours = hourColumns(input);
    await tx.aircraft.create({
      data: { id: requestId, operatorId, ...columns, ...hours, addedById: actor.personId, addedAt: now },
    });
    const content = { ...aircraftContent(columns), type: type.name, base: base.ident, hours };
    const vouched = await vouch(tx, {
      operatorId,
      actor,
      now,
      zone: base.zone,
      subjectKind: 'aircraft',
      subjectId: requestId,
      aircraftId: requestId,
      source: input.source,
      statement: AIRCRAFT_STATEMENT,
      content,
    });
    return {
      value: { aircraftId: requestId, registration: input.registration },
      audit: {
        subjectKind: 'aircraft',
        subjectId: requestId,
        detail: { aircraft: content, source: input.source, vouching: vouched.id, hash: vouched.hash },
      },
    };
  },
});
