/** One line of an equipment list, as it is typed, stored and signed for. Pure. */
import { z } from 'zod';
import { knownOf, yesNoOrNot } from '../aircraft/asked';
import type { Prisma } from '../db/client';
import { EQUIPMENT_FUNCTIONS } from '../rules/aircraft';
import { jascCode } from '../rules/jasc';
import { said } from '../words/said';

/** By what authority an item is required. */
export const AUTHORITIES = ['type-design', 'equipment-list', 'koel', 'directive', '91.205', 'mel'] as const;
export type Authority = (typeof AUTHORITIES)[number];

export const AUTHORITY_WORDS: Record<Authority, string> = {
  'type-design': said('Type design'),
  'equipment-list': said('Equipment list'),
  koel: said('Kinds-of-operations list'),
  directive: said('Airworthiness directive'),
  '91.205': said('91.205 or its neighbours'),
  mel: said('Minimum equipment list'),
};

/** How many the documents require, by kind of operation: all four are known, or none is. */
export const REQUIRED_COLUMNS = [
  'requiredDayVfr',
  'requiredNightVfr',
  'requiredDayIfr',
  'requiredNightIfr',
] as const;

/** The most of one item an aircraft can have. */
const MOST = 50;
const NUMBER = said('Enter a whole number, 0 to 50.');

const isCount = (text: string): boolean => /^\d{1,2}$/.test(text) && Number(text) <= MOST;
const count = z.string().trim().refine(isCount, NUMBER);
const countOrNot = z
  .string()
  .trim()
  .refine((text) => text === '' || isCount(text), NUMBER);

export const lineShape = {
  name: z
    .string()
    .trim()
    .min(1, said('Enter the name of the item.'))
    .max(120, said('120 characters at most.')),
  function: z.enum(EQUIPMENT_FUNCTIONS, said('Choose what it does.')),
  jasc: z
    .string()
    .trim()
    .refine((code) => jascCode(code).known, said('Choose a system code of the table.')),
  installed: count,
  vfrDayTypeDesign: yesNoOrNot,
  requiredDayVfr: countOrNot,
  requiredNightVfr: countOrNot,
  requiredDayIfr: countOrNot,
  requiredNightIfr: countOrNot,
  authority: z.array(z.enum(AUTHORITIES)).max(AUTHORITIES.length),
};

/** The line as a form holds it: texts. */
export const lineInput = z.object(lineShape);
export type LineInput = z.output<typeof lineInput>;

export interface LineFault {
  readonly field: keyof LineInput;
  readonly message: string;
}

/** What is wrong with a line though each of its fields can be read. */
export function faultsOfLine(line: LineInput): readonly LineFault[] {
  const empty = REQUIRED_COLUMNS.filter((name) => line[name] === '');
  const half = empty.length > 0 && empty.length < REQUIRED_COLUMNS.length;
  return [
    ...(half
      ? empty.map((field) => ({
          field,
          message: said('Enter all four numbers, or none: not known yet.'),
        }))
      : []),
  ];
}

/** The columns of a line. What is not known stays null; what is required by authority stands in the order of the table above. */
export const lineColumns = (line: LineInput) => {
  const required = (name: (typeof REQUIRED_COLUMNS)[number]) =>
    line[name] === '' ? null : Number(line[name]);
  return {
    name: line.name,
    function: line.function as string,
    jasc: line.jasc,
    installed: Number(line.installed),
    vfrDayTypeDesign: knownOf(line.vfrDayTypeDesign),
    requiredDayVfr: required('requiredDayVfr'),
    requiredNightVfr: required('requiredNightVfr'),
    requiredDayIfr: required('requiredDayIfr'),
    requiredNightIfr: required('requiredNightIfr'),
    authority: AUTHORITIES.filter((one) => line.authority.includes(one)) as string[],
  };
};
export type LineColumns = ReturnType<typeof lineColumns>;

type EquipmentRow = Prisma.EquipmentGetPayload<object>;

/** The line as it is signed for, and as verification reads it back. */
export const lineContent = (row: Pick<EquipmentRow, keyof LineColumns>): LineColumns => ({
  name: row.name,
  function: row.function,
  jasc: row.jasc,
  installed: row.installed,
  vfrDayTypeDesign: row.vfrDayTypeDesign,
  requiredDayVfr: row.requiredDayVfr,
  requiredNightVfr: row.requiredNightVfr,
  requiredDayIfr: row.requiredDayIfr,
  requiredNightIfr: row.requiredNightIfr,
  authority: row.authority,
});

/** The columns in which two lines differ. */
export const differences = (a: LineColumns, b: LineColumns): (keyof LineColumns)[] =>
  (Object.keys(a) as (keyof LineColumns)[]).filter(
    (name) => JSON.stringify(a[name]) !== JSON.stringify(b[name]),
  );

/** Two lines of one name could not be told apart in a write-up. */
export const nameKey = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, ' ');

/** What is signed for each line. */
export const LINE_STATEMENT = said(
  'I have held this line against the aircraft’s own documents named here, and it agrees with them.',
);
export const REMOVAL_STATEMENT = said(
  'By the documents named here this item is not installed on the aircraft and not on its equipment list.',
);
