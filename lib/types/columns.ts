import { knownOf } from '../aircraft/asked';
import { calendarDateOrNull, dateColumn } from '../db/dates';
import type { Prisma } from '../db/client';
import type { TypeInput } from './schema';

const number = (text: string): number | null => (text === '' ? null : Number(text));

/** What was typed, as columns. What is not known stays null. */
export const typeColumns = (input: TypeInput) => ({
  name: input.name,
  category: input.category,
  rating: input.rating,
  engines: Number(input.engines),
  turbine: knownOf(input.turbine),
  maxTakeoffWeightLb: number(input.maxTakeoffWeightLb),
  mmelPublished: knownOf(input.mmelPublished),
  certificatedOn: input.certificatedOn === '' ? null : dateColumn(input.certificatedOn),
  certificatedUnderPart23: knownOf(input.certificatedUnderPart23),
  cooling: input.cooling === 'not-known' ? null : input.cooling,
  altitudeEngine: knownOf(input.altitudeEngine),
  retractableGear: knownOf(input.retractableGear),
  fuelTanks: number(input.fuelTanks),
  seats: number(input.seats),
  frontSeats: number(input.frontSeats),
  usesFuses: knownOf(input.usesFuses),
  equipmentListSource: input.equipmentListSource === '' ? null : input.equipmentListSource,
});
export type TypeColumns = ReturnType<typeof typeColumns>;

type TypeRow = Prisma.AircraftTypeGetPayload<object>;

/** A type as it is signed for, and as verification reads it back: plain JSON, dates as texts. */
export const typeContent = (row: Pick<TypeRow, keyof TypeColumns>) => ({
  name: row.name,
  category: row.category,
  rating: row.rating,
  engines: row.engines,
  turbine: row.turbine,
  maxTakeoffWeightLb: row.maxTakeoffWeightLb,
  mmelPublished: row.mmelPublished,
  certificatedOn: calendarDateOrNull(row.certificatedOn),
  certificatedUnderPart23: row.certificatedUnderPart23,
  cooling: row.cooling,
  altitudeEngine: row.altitudeEngine,
  retractableGear: row.retractableGear,
  fuelTanks: row.fuelTanks,
  seats: row.seats,
  frontSeats: row.frontSeats,
  usesFuses: row.usesFuses,
  equipmentListSource: row.equipmentListSource,
});
export type TypeContent = ReturnType<typeof typeContent>;
