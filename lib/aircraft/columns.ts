import { calendarDateOrNull, dateColumn } from '../db/dates';
import type { Prisma } from '../db/client';
import { parseTenths } from '../rules/hours';
import { knownOf } from './asked';
import type { AircraftInput } from './schema';

const tenths = (text: string): number | null => (text === '' ? null : parseTenths(text));

/** The hours that were typed, in tenths. Null: not known yet. */
export const hourColumns = (input: Pick<AircraftInput, 'hobbs' | 'tach' | 'ttis'>) => ({
  hobbsTenths: tenths(input.hobbs),
  tachTenths: tenths(input.tach),
  ttisTenths: tenths(input.ttis),
});
export type HourColumns = ReturnType<typeof hourColumns>;

/** What was typed beside the hours, as columns. */
export const aircraftColumns = (input: AircraftInput) => ({
  registration: input.registration,
  serial: input.serial,
  typeId: input.typeId,
  baseId: input.baseId,
  forHire: input.forHire === 'yes',
  standardCategory: knownOf(input.standardCategory),
  manufacturedOn: input.manufacturedOn === '' ? null : dateColumn(input.manufacturedOn),
  ttisMeter: input.ttisMeter === 'not-known' ? null : input.ttisMeter,
});
export type AircraftColumns = ReturnType<typeof aircraftColumns>;

type AircraftRow = Prisma.AircraftGetPayload<object>;

/**
 * An aircraft as it is signed for, and as verification reads it back: plain JSON. Hours are no part of it: they go on with every flight.
 * What they were at the signature stands beside it, under `hours`.
 */
export const aircraftContent = (row: Pick<AircraftRow, keyof AircraftColumns>) => ({
  registration: row.registration,
  serial: row.serial,
  typeId: row.typeId,
  baseId: row.baseId,
  forHire: row.forHire,
  standardCategory: row.standardCategory,
  manufacturedOn: calendarDateOrNull(row.manufacturedOn),
  ttisMeter: row.ttisMeter,
});
export type AircraftContent = ReturnType<typeof aircraftContent>;
