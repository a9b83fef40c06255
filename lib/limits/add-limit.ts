import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { readMeasurement } from '../findings/measurement-input';
import { factsChanged, requireAircraft } from '../fleet/require-aircraft';
import { fieldRefusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { FINDING_CATALOGUE } from '../rules/findings/catalogue';
import { measurementOf, type MeasureUnit } from '../rules/findings/measurements';
import { addLimitInput } from './schema';
import { said } from '../words/said';

/**
 * Stores a limit with where it comes from. None is built in: one maker's figure is no limit of another aircraft. Several of one
 * measurement may stand; one value outside any of them decides.
 */
export const addLimit = command({
  verb: 'limit.add',
  input: addLimitInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const aircraft = await requireAircraft(tx, operatorId, input.aircraftId);
    const measurement = measurementOf(input.measurement);
    if (!measurement) throw fieldRefusal('measurement', said('There is no such measurement.'));
    const { unit } = measurement;
    const min = bound('min', input.min, unit);
    const max = bound('max', input.max, unit);
    if (min !== null && max !== null && min > max) {
      throw fieldRefusal('max', said('The most allowed is less than the least allowed.'));
    }
    if (input.sourceDate !== null && input.sourceDate > dayAtBase(now, aircraft.base.zone)) {
      throw fieldRefusal('sourceDate', said('This day has not come yet.'));
    }
    const row = {
      // Beside which finding it is shown; a measurement means one thing wherever it is taken.
      findingKey:
        FINDING_CATALOGUE.find(({ measurements }) => measurements.some(({ key }) => key === measurement.key))
          ?.key ?? '',
      measurement: measurement.key,
      unit,
      min,
      max,
      source: input.source,
    };
    await tx.storedLimit.create({
      data: {
        ...row,
        id: requestId,
        operatorId,
        aircraftId: aircraft.id,
        sourceDate: input.sourceDate === null ? null : dateColumn(input.sourceDate),
        addedById: actor.personId,
        addedAt: now,
      },
    });
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { limitId: requestId },
      audit: {
        subjectKind: 'limit',
        subjectId: requestId,
        detail: { ...row, sourceDate: input.sourceDate, registration: aircraft.registration },
      },
    };
  },
});

function bound(field: 'min' | 'max', text: string, unit: MeasureUnit): number | null {
  if (text === '') return null;
  const read = readMeasurement(text, unit);
  if (!read.ok) throw fieldRefusal(field, read.say);
  return read.value;
}
