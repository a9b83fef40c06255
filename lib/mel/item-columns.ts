import type { MelItemRow } from './read-mel-file';

const orNull = (text: string): string | null => (text === '' ? null : text);

/** A row of a file as the columns of an item. */
export const itemColumns = (item: MelItemRow) => ({
  equipmentId: item.equipmentId,
  title: item.title,
  category: item.category,
  categoryADays: item.days_for_a,
  installed: item.installed,
  requiredForDispatch: item.required_for_dispatch,
  allowedNight: item.allowed_night,
  allowedIfr: item.allowed_ifr,
  allowedHire: item.allowed_hire,
  proviso: item.proviso,
  operatingProcedure: orNull(item.operating_procedure),
  maintenanceProcedure: orNull(item.maintenance_procedure),
});
