import { command } from '../access/service';
import { calendarDate, dateColumn } from '../db/dates';
import { factsChanged } from '../fleet/require-aircraft';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { notBack, wherePlanStands } from '../releases/active-releases';
import { distrustDirectives, distrustLines } from './distrust';
import { requireAnyAircraft } from './require';
import { bringBackAircraftInput, retireAircraftInput } from './schema';
import { said } from '../words/said';

/**
 * Takes an aircraft out of service, with the reason: it leaves the board, and nothing is released, planned or written up for it any more.
 * Its records stay. Refuses `conflict` while a released flight is not back or flights are planned.
 */
export const retireAircraft = command({
  verb: 'aircraft.retire',
  input: retireAircraftInput,
  async run({ tx, operatorId, now }, { aircraftId, why }) {
    const row = await requireAnyAircraft(tx, operatorId, aircraftId);
    if (row.retiredOn) throw new Refusal('conflict', { say: said('It is retired already.') });
    const where = { operatorId, aircraftId };
    if ((await tx.release.count({ where: { AND: [notBack(now)], ...where } })) > 0) {
      throw new Refusal('conflict', {
        say: said('A released flight is not back. Close or withdraw it first.'),
      });
    }
    if ((await tx.plannedFlight.count({ where: { ...where, ...wherePlanStands(now) } })) > 0) {
      throw new Refusal('conflict', {
        say: said('Flights are planned with it. Cancel them first, under Desk, Plans.'),
      });
    }
    const retiredOn = dayAtBase(now, row.base.zone);
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId, id: aircraftId } },
      data: { retiredOn: dateColumn(retiredOn), retiredWhy: why },
    });
    return {
      value: { aircraftId },
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraftId,
        detail: { registration: row.registration, retiredOn, why },
      },
    };
  },
});

/**
 * Brings a retired aircraft back. Dates that ran out meanwhile bar, as they would have. On a later day than it was retired nobody here knows
 * what was flown, fitted or ordered while it was away: its time in service, what was confirmed of its equipment list and its directives have
 * to be entered and signed for again, and until then it is no go. Refuses `conflict` for one in service.
 */
export const bringBackAircraft = command({
  verb: 'aircraft.bring-back',
  input: bringBackAircraftInput,
  async run({ tx, operatorId, now }, { aircraftId, why }) {
    const row = await requireAnyAircraft(tx, operatorId, aircraftId);
    if (!row.retiredOn) throw new Refusal('conflict', { say: said('It is in service already.') });
    const away = calendarDate(row.retiredOn) !== dayAtBase(now, row.base.zone);
    await tx.aircraft.update({
      where: { operatorId_id: { operatorId, id: aircraftId } },
      data: { retiredOn: null, retiredWhy: null, ...(away && { ttisTenths: null }) },
    });
    const distrusted = away ? await distrustLines(tx, operatorId, aircraftId) : 0;
    if (away) await distrustDirectives(tx, operatorId, aircraftId);
    await factsChanged(tx, operatorId, aircraftId);
    return {
      value: { aircraftId },
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraftId,
        detail: {
          registration: row.registration,
          why,
          retiredWhy: row.retiredWhy,
          ...(away && { ttisTenthsBefore: row.ttisTenths, linesToConfirmAgain: distrusted }),
        },
      },
    };
  },
});
