import { type OfficeFleet } from '@/lib/aircraft/read-office-fleet';
import { type AircraftChoices } from './aircraft-form';

/** Types and bases as a form offers them. */
export const choicesOf = ({ types, bases }: OfficeFleet): AircraftChoices => ({
  types: types.map(({ id, name }) => ({ value: id, label: name })),
  bases: bases.map(({ id, ident, name }) => ({ value: id, label: `${ident}, ${name}` })),
});
