import { randomUUID } from 'node:crypto';
import { command } from '../access/service';
import type { Tx } from '../db/client';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { INSPECTION_PARTS, type InspectionKind } from '../rules/part-43/43-11-inspection-entry';
import { beginInspectionInput } from './schema';
import { filled, said } from '../words/said';

/** 91.409(b): an annual also satisfies the 100-hour inspection. Nothing else is answered by the inspection itself. */
const ANSWERS: Readonly<Record<InspectionKind, readonly string[]>> = {
  annual: ['annual', 'hundred-hour'],
  'hundred-hour': ['hundred-hour'],
};

const TITLES: Readonly<Record<InspectionKind, string>> = {
  annual: 'Annual inspection',
  'hundred-hour': '100-hour inspection',
};

/**
 * Begins an annual or 100-hour inspection: one entry for each logbook is owed from now on, and the aircraft does not fly
 * (91.407(a)) until all are signed. Refuses a second inspection beside an open one, and requirements it cannot answer.
 */
export const beginInspection = command({
  verb: 'inspection.begin',
  input: beginInspectionInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    if (aircraft.type.turbine) {
      throw new Refusal('conflict', {
        say: said('Inspections of aircraft with turbine engines are not offered here.'),
      });
    }
    const open = await tx.inspection.findFirst({
      where: { operatorId, aircraftId: aircraft.id, state: { in: ['begun', 'entered'] } },
    });
    if (open) {
      throw new Refusal('conflict', {
        say: filled(
          said('An inspection of {registration} is under way already. Sign it or give it up first.'),
          { registration: aircraft.registration },
        ),
      });
    }
    const requirementIds = [...new Set(input.requirementIds)];
    const answered = await tx.requirement.findMany({
      where: { operatorId, aircraftId: aircraft.id, endedOn: null, id: { in: requirementIds } },
    });
    if (answered.length !== requirementIds.length) {
      throw new Refusal('not_found', { say: said('Nothing of that kind falls due on this aircraft.') });
    }
    const own = answered.find(({ kind }) => kind === input.kind);
    if (!own) {
      throw fieldRefusal(
        'requirementIds',
        filled(said('No {titles} falls due on this aircraft.'), { titles: TITLES[input.kind].toLowerCase() }),
      );
    }
    const beyond = answered.find(({ kind }) => !ANSWERS[input.kind].includes(kind));
    if (beyond) {
      throw fieldRefusal(
        'requirementIds',
        filled(said('{name} is not answered by this inspection; it has its own record.'), {
          name: beyond.name,
        }),
      );
    }
    if (input.visitId !== null) await requireOpenVisit(tx, operatorId, aircraft.id, input.visitId);
    await tx.inspection.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        visitId: input.visitId,
        kind: input.kind,
        requirementIds,
        begunById: actor.personId,
        begunAt: now,
        state: 'begun',
      },
    });
    for (const part of INSPECTION_PARTS) {
      await tx.maintenanceAction.create({
        data: {
          id: randomUUID(),
          operatorId,
          aircraftId: aircraft.id,
          inspectionId: requestId,
          requirementId: own.id,
          title: `${TITLES[input.kind]}, ${part}`,
          part,
          jasc: JASC_OF_PART[part],
          workKind: input.kind,
          swapOnly: false,
          state: 'started',
          startedById: actor.personId,
          startedAt: now,
        },
      });
    }
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { inspectionId: requestId },
      audit: {
        subjectKind: 'inspection',
        subjectId: requestId,
        detail: { aircraft: aircraft.registration, kind: input.kind, requirementIds },
      },
    };
  },
});

/** An inspection belongs to no one system; each part is filed under its broadest code. */
const JASC_OF_PART = { airframe: '5300', powerplant: '8500', propeller: '6100' } as const;

async function requireOpenVisit(tx: Tx, operatorId: string, aircraftId: string, id: string): Promise<void> {
  const visit = await tx.visit.findUnique({ where: { operatorId_id: { operatorId, id } } });
  if (!visit || visit.aircraftId !== aircraftId) {
    throw new Refusal('not_found', { say: said('There is no such visit of this aircraft.') });
  }
  if (visit.closedAt) throw new Refusal('conflict', { say: said('This visit is closed already.') });
}
