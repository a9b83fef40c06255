import { command } from '../access/service';
import { calendarDate, dateColumn } from '../db/dates';
import type { Tx } from '../db/client';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import type { HoursTenths } from '../rules/facts';
import { formatTenths, parseTenths } from '../rules/hours';
import { dayInWords } from '../rules/in-words';
import { requireOpenInspection, type InspectionRow } from './inspection';
import { standingRecords } from './requirement';
import { enterInspectionInput } from './schema';
import { filled, said } from '../words/said';

const NO_CHECK_FLIGHT =
  'An inspection changes nothing; work it leads to has its own entry and its own answer.';

/**
 * Writes what 43.11(a)(1) and (2) and 43.15 ask, once for all three logbooks. May be written again until the first part is
 * signed: a signature binds what stood there. Refuses a total time that does not fit the aircraft's own record.
 */
export const enterInspection = command({
  verb: 'inspection.enter',
  input: enterInspectionInput,
  async run({ tx, operatorId, actor, now }, input) {
    const inspection = await requireOpenInspection(tx, operatorId, input.inspectionId);
    if (inspection.work.some(({ signOff }) => signOff)) {
      throw new Refusal('conflict', {
        say: said('A part is signed already: what was signed is not written again.'),
      });
    }
    const { registration, base } = inspection.aircraft;
    const today = dayAtBase(now, base.zone);
    const begunOn = dayAtBase(inspection.begunAt, base.zone);
    if (input.completedOn > today) throw fieldRefusal('completedOn', said('This day has not come yet.'));
    if (input.completedOn < begunOn) {
      throw fieldRefusal(
        'completedOn',
        filled(said('The inspection began on {day}.'), { day: dayInWords(begunOn) }),
      );
    }
    const ttisTenths = parseTenths(input.ttis);
    if (ttisTenths === null) throw fieldRefusal('ttis', said('Hours as the record shows them.'));
    refuseOtherTime(inspection, ttisTenths);
    await refuseLessThanBefore(tx, operatorId, inspection, ttisTenths);

    const { madeToDetermineAirworthiness, checklistCoversAppendixD, runUp } = input;
    const completedOn = dateColumn(input.completedOn);
    const entered = { enteredById: actor.personId, enteredAt: now };
    await tx.inspection.update({
      where: { operatorId_id: { operatorId, id: inspection.id } },
      data: {
        state: 'entered',
        extent: input.extent,
        checklist: input.checklist,
        runUp: { madeToDetermineAirworthiness, checklistCoversAppendixD, runUp },
        ttisTenths,
        completedOn,
        ...entered,
      },
    });
    for (const work of inspection.work) {
      await tx.maintenanceAction.update({
        where: { operatorId_id: { operatorId, id: work.id } },
        data: {
          state: 'entered',
          description: input.extent,
          references: input.checklist,
          completedOn,
          ttisTenths,
          checkFlightNeeded: false,
          checkFlightReason: NO_CHECK_FLIGHT,
          ...entered,
        },
      });
    }
    await factsChanged(tx, operatorId, inspection.aircraftId);
    return {
      value: { inspectionId: inspection.id },
      audit: {
        subjectKind: 'inspection',
        subjectId: inspection.id,
        detail: { aircraft: registration, kind: inspection.kind, ttisTenths, completedOn: input.completedOn },
      },
    };
  },
});

/** An entry ahead of the meters would ground the aircraft until they catch up; one behind them cannot be true. */
function refuseOtherTime({ aircraft }: InspectionRow, written: HoursTenths): void {
  if (aircraft.ttisTenths === null || written === aircraft.ttisTenths) return;
  const record = formatTenths(aircraft.ttisTenths);
  throw fieldRefusal(
    'ttis',
    written < aircraft.ttisTenths
      ? filled(said('{registration} has {record} h on record, more than this.'), {
          registration: aircraft.registration,
          record,
        })
      : filled(
          said('{registration} has {record} h on record, less than this. Have the meters put right first.'),
          { registration: aircraft.registration, record },
        ),
  );
}

async function refuseLessThanBefore(
  tx: Tx,
  operatorId: string,
  inspection: InspectionRow,
  written: HoursTenths,
): Promise<void> {
  const requirements = await tx.requirement.findMany({
    where: { operatorId, id: { in: inspection.requirementIds } },
    include: { compliances: true },
  });
  for (const { name, compliances } of requirements) {
    const last = standingRecords(compliances)[0];
    if (!last || last.ttisTenths <= written) continue;
    const at = `${formatTenths(last.ttisTenths)} h on ${dayInWords(calendarDate(last.doneOn))}`;
    throw fieldRefusal(
      'ttis',
      filled(said('{name} was last recorded at {at}. Correct that record first if it is wrong.'), {
        name,
        at,
      }),
    );
  }
}
