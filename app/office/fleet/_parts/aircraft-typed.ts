import { saidOf } from '@/lib/aircraft/asked';
import { type OfficeAircraftView } from '@/lib/aircraft/read-office-aircraft';

/** The form of an aircraft as typed. Nothing is chosen beforehand. */
export const EMPTY_AIRCRAFT = {
  registration: '',
  serial: '',
  typeId: '',
  baseId: '',
  forHire: '',
  standardCategory: '',
  manufacturedOn: '',
  hobbs: '',
  tach: '',
  ttis: '',
  ttisMeter: '',
  source: '',
  password: '',
};
export type AircraftAsTyped = typeof EMPTY_AIRCRAFT;

/** An aircraft as the form shows it. */
export const aircraftAsTyped = (row: OfficeAircraftView): AircraftAsTyped => ({
  registration: row.registration,
  serial: row.serial,
  typeId: row.typeId,
  baseId: row.baseId,
  forHire: row.forHire ? 'yes' : 'no',
  standardCategory: saidOf(row.standardCategory),
  manufacturedOn: row.manufacturedOn ?? '',
  hobbs: row.hobbs ?? '',
  tach: row.tach ?? '',
  ttis: row.ttis ?? '',
  ttisMeter: row.ttisMeter ?? 'not-known',
  source: '',
  password: '',
});
