import { saidOf } from '@/lib/aircraft/asked';
import { type TypeContent } from '@/lib/types/columns';

/** The form of a type as typed. Nothing is chosen beforehand. */
export const EMPTY_TYPE = {
  name: '',
  category: '',
  rating: '',
  engines: '',
  turbine: '',
  maxTakeoffWeightLb: '',
  mmelPublished: '',
  certificatedOn: '',
  certificatedUnderPart23: '',
  cooling: '',
  altitudeEngine: '',
  retractableGear: '',
  fuelTanks: '',
  seats: '',
  frontSeats: '',
  usesFuses: '',
  equipmentListSource: '',
  source: '',
  password: '',
};
export type TypeAsTyped = typeof EMPTY_TYPE;

const number = (value: number | null): string => (value === null ? '' : String(value));

/** A type as the form shows it. */
export const typeAsTyped = (type: TypeContent): TypeAsTyped => ({
  name: type.name,
  category: type.category,
  rating: type.rating,
  engines: String(type.engines),
  turbine: saidOf(type.turbine),
  maxTakeoffWeightLb: number(type.maxTakeoffWeightLb),
  mmelPublished: saidOf(type.mmelPublished),
  certificatedOn: type.certificatedOn ?? '',
  certificatedUnderPart23: saidOf(type.certificatedUnderPart23),
  cooling: type.cooling ?? 'not-known',
  altitudeEngine: saidOf(type.altitudeEngine),
  retractableGear: saidOf(type.retractableGear),
  fuelTanks: number(type.fuelTanks),
  seats: number(type.seats),
  frontSeats: number(type.frontSeats),
  usesFuses: saidOf(type.usesFuses),
  equipmentListSource: type.equipmentListSource ?? '',
  source: '',
  password: '',
});
