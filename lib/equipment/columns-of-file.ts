/** The columns of a file of equipment: what each holds, how a row is read, and the template that shows them. Pure. */
import { z } from 'zod';
import { stringify } from 'csv-stringify/sync';
import { FOR_SPREADSHEETS } from '../feeds/export/for-spreadsheets';
import { EQUIPMENT_FUNCTIONS } from '../rules/aircraft';
import { AUTHORITIES, faultsOfLine, lineInput, type LineInput } from './line';
import type { RowFault } from './read-rows';
import { said } from '../words/said';

export interface FileColumn {
  readonly column: string;
  readonly needed: boolean;
  readonly what: string;
}

export const EQUIPMENT_COLUMNS: readonly FileColumn[] = [
  {
    column: 'aircraft',
    needed: false,
    what: 'Registration. Empty, or that of the aircraft the file is taken in for; any other is refused.',
  },
  {
    column: 'name',
    needed: true,
    what: 'Name of the item, once in a list. It is what a row is known by the next time.',
  },
  { column: 'function', needed: true, what: `What it does, one of: ${EQUIPMENT_FUNCTIONS.join(', ')}.` },
  { column: 'jasc', needed: true, what: 'Four-digit system code of the JASC table.' },
  { column: 'installed', needed: true, what: 'How many are installed, 0 to 50. 0: the aircraft has none.' },
  {
    column: 'vfr_day_type_design',
    needed: false,
    what: 'Part of the VFR-day equipment of the type’s certification: yes or no. Empty: not known yet.',
  },
  {
    column: 'required_day_vfr',
    needed: false,
    what: 'How many the equipment list or kinds-of-operations list requires for day VFR. All four numbers, or none: not known yet.',
  },
  { column: 'required_night_vfr', needed: false, what: 'The same for night VFR.' },
  { column: 'required_day_ifr', needed: false, what: 'The same for day IFR.' },
  { column: 'required_night_ifr', needed: false, what: 'The same for night IFR.' },
  {
    column: 'authority',
    needed: false,
    what: `By what authority it is required, several with a semicolon between: ${AUTHORITIES.join('; ')}.`,
  },
];

/** Field of a line -> column of the file. */
const COLUMN_OF: Record<keyof LineInput, string> = {
  name: 'name',
  function: 'function',
  jasc: 'jasc',
  installed: 'installed',
  vfrDayTypeDesign: 'vfr_day_type_design',
  requiredDayVfr: 'required_day_vfr',
  requiredNightVfr: 'required_night_vfr',
  requiredDayIfr: 'required_day_ifr',
  requiredNightIfr: 'required_night_ifr',
  authority: 'authority',
};

/** A row of the file: texts. What they mean is asked of `lineOfRow`. */
export const equipmentRow = z.object({
  aircraft: z.string(),
  name: z.string().min(1, said('It is missing.')),
  function: z.string().min(1, said('It is missing.')),
  jasc: z.string().min(1, said('It is missing.')),
  installed: z.string().min(1, said('It is missing.')),
  vfr_day_type_design: z.string(),
  required_day_vfr: z.string(),
  required_night_vfr: z.string(),
  required_day_ifr: z.string(),
  required_night_ifr: z.string(),
  authority: z.string(),
});
export type EquipmentRow = z.output<typeof equipmentRow>;

/** The line a row says, or everything that is wrong with it. */
export function lineOfRow(
  row: number,
  cells: EquipmentRow,
  registration: string,
):
  | { readonly line: LineInput; readonly faults: readonly [] }
  | { readonly line: null; readonly faults: readonly RowFault[] } {
  const faults: RowFault[] = [];
  const wrong = (field: string, message: string) => faults.push({ row, field, message });
  if (cells.aircraft !== '' && cells.aircraft.toUpperCase() !== registration) {
    wrong('aircraft', `This file is taken in for ${registration}; the row is of ${cells.aircraft}.`);
  }
  const design = YES_NO[cells.vfr_day_type_design.toLowerCase()];
  if (design === undefined)
    wrong('vfr_day_type_design', 'Write yes or no, or leave it empty: not known yet.');
  const parts = cells.authority
    .split(/[;,]/)
    .map((part) => part.trim().toLowerCase())
    .filter((part) => part !== '');
  const parsed = lineInput.safeParse({
    name: cells.name,
    function: cells.function.toLowerCase(),
    jasc: cells.jasc,
    installed: cells.installed,
    vfrDayTypeDesign: design ?? 'not-known',
    requiredDayVfr: cells.required_day_vfr,
    requiredNightVfr: cells.required_night_vfr,
    requiredDayIfr: cells.required_day_ifr,
    requiredNightIfr: cells.required_night_ifr,
    authority: [...new Set(parts)],
  });
  if (!parsed.success) {
    for (const { path, message } of parsed.error.issues) {
      const field = path[0] as keyof LineInput;
      wrong(COLUMN_OF[field], MESSAGES[field] ?? message);
    }
    return { line: null, faults };
  }
  for (const { field, message } of faultsOfLine(parsed.data)) wrong(COLUMN_OF[field], message);
  return faults.length > 0 ? { line: null, faults } : { line: parsed.data, faults: [] };
}

const YES_NO: Record<string, LineInput['vfrDayTypeDesign']> = {
  '': 'not-known',
  'not-known': 'not-known',
  'not known': 'not-known',
  yes: 'yes',
  no: 'no',
};

/** Where a form says "Choose", a file needs other words. */
const MESSAGES: Partial<Record<keyof LineInput, string>> = {
  function: 'There is no such function. The columns are explained on the page.',
  jasc: 'There is no such code in the JASC table.',
  authority: `Only these, with a semicolon between: ${AUTHORITIES.join('; ')}.`,
};

/** Rows of the template. They begin with "Example", and their aircraft is nobody's: left in, they are refused. */
const EXAMPLES: readonly EquipmentRow[] = [
  {
    aircraft: 'N0EXAMPLE',
    name: 'Example: landing light (write over or delete this row)',
    function: 'landing-light',
    jasc: '3340',
    installed: '1',
    vfr_day_type_design: 'no',
    required_day_vfr: '0',
    required_night_vfr: '1',
    required_day_ifr: '0',
    required_night_ifr: '1',
    authority: 'equipment-list; 91.205',
  },
  {
    aircraft: 'N0EXAMPLE',
    name: 'Example: fuel quantity gauges (write over or delete this row)',
    function: 'fuel-quantity-gauge',
    jasc: '2841',
    installed: '2',
    vfr_day_type_design: 'yes',
    required_day_vfr: '2',
    required_night_vfr: '2',
    required_day_ifr: '2',
    required_night_ifr: '2',
    authority: 'type-design; koel',
  },
];

/** The file to begin with. */
export const equipmentTemplate = (format: 'csv' | 'json'): string =>
  format === 'json'
    ? `${JSON.stringify({ rows: EXAMPLES }, null, 2)}\n`
    : stringify(
        EXAMPLES.map((row) => ({ ...row })),
        { ...FOR_SPREADSHEETS, header: true, columns: EQUIPMENT_COLUMNS.map(({ column }) => column) },
      );
