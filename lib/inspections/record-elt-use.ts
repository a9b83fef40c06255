import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { fieldRefusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { recordEltUseInput } from './requirement-schema';
import { said } from '../words/said';

/** The emergency locator transmitter was on, a test included: the minutes count towards the hour of 91.207(c)(1). */
export const recordEltUse = command({
  verb: 'elt-use.record',
  input: recordEltUseInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    if (input.usedOn > dayAtBase(now, aircraft.base.zone)) {
      throw fieldRefusal('usedOn', said('This day has not come yet.'));
    }
    const { minutes, words } = input;
    await tx.eltUse.create({
      data: {
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        usedOn: dateColumn(input.usedOn),
        minutes,
        words,
        recordedById: actor.personId,
        recordedAt: now,
      },
    });
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { eltUseId: requestId },
      audit: {
        subjectKind: 'aircraft',
        subjectId: aircraft.id,
        detail: { aircraft: aircraft.registration, usedOn: input.usedOn, minutes, words },
      },
    };
  },
});
