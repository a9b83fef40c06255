import { calendarDateOrNull } from '../db/dates';
import type { Tx } from '../db/client';
import { fieldRefusal, Refusal } from '../problems';
import { findingOf } from '../rules/findings/catalogue';
import type { MeasurementRole } from '../rules/findings/finding';
import {
  isUsableLimit,
  judgeAgainstLimit,
  type StoredLimit,
} from '../rules/findings/measured-against-limits';
import {
  measurementOf,
  sayBounds,
  sayMeasured,
  type Measurement,
  type MeasureUnit,
} from '../rules/findings/measurements';
import { sayBoundsInUnits, sayInUnits, type Units } from '../units/say';
import { filled, said } from '../words/said';

/** A stored limit of the aircraft that can judge the finding of a write-up. */
export interface LimitOfWriteUp {
  readonly id: string;
  readonly measurement: Measurement;
  readonly role: MeasurementRole;
  readonly limit: StoredLimit;
}

interface Of {
  readonly operatorId: string;
  readonly aircraftId: string;
  readonly findingKey: string | null;
}

/**
 * The stored limits that can judge this finding, in the order of the catalogue: a measurement means one thing wherever it is
 * taken, so the finding beside which a limit was stored does not matter. What has no source judges nothing.
 */
export async function limitsOfWriteUp(tx: Tx, of: Of): Promise<readonly LimitOfWriteUp[]> {
  const finding = of.findingKey === null ? null : findingOf(of.findingKey);
  if (finding === null) return [];
  const rows = await tx.storedLimit.findMany({
    where: { operatorId: of.operatorId, aircraftId: of.aircraftId, endedAt: null },
    orderBy: { id: 'asc' },
  });
  return finding.measurements.flatMap(({ key, role }) => {
    const measurement = measurementOf(key);
    if (measurement === null || role === 'described') return [];
    return rows
      .filter((row) => row.measurement === key)
      .map((row) => ({
        id: row.id,
        measurement,
        role,
        limit: { ...row, sourceDate: calendarDateOrNull(row.sourceDate) },
      }))
      .filter(({ limit }) => isUsableLimit(limit, measurement));
  });
}

/**
 * What has to be measured of the finding and has no stored limit that could judge it, by name; for these the number, the limit
 * and its source are asked in words. A finding none of whose limits is stored is asked wholly in words, and has none here.
 */
export function neededInWords(
  findingKey: string | null,
  limits: readonly LimitOfWriteUp[],
): readonly string[] {
  const finding = findingKey === null ? null : findingOf(findingKey);
  if (finding === null || limits.length === 0) return [];
  return finding.measurements.flatMap(({ key, role }) =>
    role === 'needed' && !limits.some(({ measurement }) => measurement.key === key)
      ? [measurementOf(key)?.label ?? key]
      : [],
  );
}

/** A limit as the form shows it beside its box, in the units of the reader. */
export interface LimitView {
  readonly id: string;
  readonly label: string;
  readonly unit: MeasureUnit;
  readonly needed: boolean;
  readonly bounds: string;
  readonly source: string;
  /** What the reporter measured, in words; null when they did not. */
  readonly reported: string | null;
}

/** The limits for the form. `reported`: what was measured on the walkaround, by measurement. */
export const limitViews = (
  limits: readonly LimitOfWriteUp[],
  reported: Readonly<Record<string, number>>,
  units: Units,
): readonly LimitView[] =>
  limits.map(({ id, role, measurement, limit }) => {
    const { key, label, unit } = measurement;
    const value = Object.hasOwn(reported, key) ? reported[key] : undefined;
    return {
      id,
      label,
      unit,
      needed: role === 'needed',
      bounds: sayBoundsInUnits(limit, unit, units),
      source: sourceWords(limit),
      reported: value === undefined ? null : sayInUnits(value, unit, units),
    };
  });

/** One number as it was measured. */
export interface Reading {
  readonly limitId: string;
  readonly measuredValue: number;
}

/** Measurement, limit and source in a person's words. */
export interface InWords {
  readonly measured: string;
  readonly limitText: string;
  readonly limitSource: string;
}

/** What is signed and kept of a finding within limits. */
export interface MeasuredWithin extends InWords {
  readonly readings: readonly {
    readonly limitId: string;
    readonly measurement: string;
    readonly measuredValue: number;
    readonly unit: string;
  }[];
}

/**
 * Holds every number against its limit; on the limit is within. Refused in the field of the number: a limit that is not
 * this finding's, one that has to be measured and was not, and a value outside, with the paragraph (91.405(a)).
 * What has to be measured beside them and has no stored limit is asked in words, each refused in its field: numbers for a
 * part of the finding do not make the whole of it within limits.
 * @param readings the first is the one typed beside `measuredValue`, the others stand in `alsoMeasured`
 * @param beside what `neededInWords` names, and the words given for it
 */
export function heldAgainstLimits(
  limits: readonly LimitOfWriteUp[],
  readings: readonly Reading[],
  beside: { readonly needed: readonly string[]; readonly words: InWords },
): MeasuredWithin {
  const held = readings.map((reading, index) => {
    const field = index === 0 ? 'measuredValue' : `alsoMeasured.${index - 1}.measuredValue`;
    const of = limits.find(({ id }) => id === reading.limitId);
    if (!of)
      throw fieldRefusal(
        index === 0 ? 'limitId' : field,
        said('This is no limit of this finding. Look again.'),
      );
    // Two stored limits may bound one measurement; the number is held against both.
    const outside = limits
      .filter(({ measurement }) => measurement.key === of.measurement.key)
      .map(({ limit, measurement }) => judgeAgainstLimit(reading.measuredValue, limit, measurement))
      .find(({ effect }) => effect === 'bars');
    if (outside) {
      const { cite, because } = outside;
      throw new Refusal('invalid', { fields: { [field]: [because] }, lines: [{ cite, because }] });
    }
    return { ...of, value: reading.measuredValue };
  });
  const left = limits.find(({ id, role }) => role === 'needed' && !held.some((one) => one.id === id));
  if (left) {
    throw fieldRefusal(
      'measuredValue',
      filled(said('{label} has to be measured too: it has a limit of its own.'), {
        label: left.measurement.label,
      }),
    );
  }
  const rest = wordsFor(beside);
  const many = held.length > 1 || rest !== null;
  return {
    measured: [
      ...held.map(
        ({ measurement, value }) => `${measurement.label}: ${sayMeasured(value, measurement.unit)}`,
      ),
      ...(rest ? [`${rest.of}: ${rest.measured}`] : []),
    ].join('; '),
    limitText: [
      ...held.map(
        ({ measurement, limit }) =>
          `${many ? `${measurement.label}: ` : ''}${sayBounds(limit, measurement.unit)}`,
      ),
      ...(rest ? [`${rest.of}: ${rest.limitText}`] : []),
    ].join('; '),
    limitSource: [
      ...new Set([...held.map(({ limit }) => sourceWords(limit)), ...(rest ? [rest.limitSource] : [])]),
    ].join('; '),
    readings: held.map(({ id, measurement, value }) => ({
      limitId: id,
      measurement: measurement.key,
      measuredValue: value,
      unit: measurement.unit,
    })),
  };
}

/** The words for what has no stored limit; null when nothing is left to say. Refuses at each field left empty. */
function wordsFor(beside: { readonly needed: readonly string[]; readonly words: InWords }) {
  if (beside.needed.length === 0) return null;
  const of = beside.needed.join(' and ');
  const { measured, limitText, limitSource } = beside.words;
  const fields = {
    ...(measured === '' ? { measured: [`${of}: no limit is stored, so write what was measured.`] } : {}),
    ...(limitText === '' ? { limitText: [`${of}: write the limit as its source states it.`] } : {}),
    ...(limitSource === '' ? { limitSource: [`${of}: write where the limit comes from.`] } : {}),
  };
  if (Object.keys(fields).length > 0) throw new Refusal('invalid', { fields });
  return { of, measured, limitText, limitSource };
}

/** The source with its date, as a person would look it up. */
const sourceWords = ({ source, sourceDate }: StoredLimit): string =>
  `${source.trim()}, ${sourceDate ?? 'undated'}`;
