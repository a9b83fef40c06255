/** The columns of a file of a minimum equipment list (docs/import.md). What each means is 91.213(a): how many may be out, and when. */
import { z } from 'zod';
import { columnDoc, type ColumnDoc } from '../equipment/column-doc';
import { neededText, oneOf, optionalText } from '../carry-over/answers';
import { said } from '../words/said';

const YES_NO = said('Write yes or no.');
/** A list says what it allows: an empty cell would be a guess, so it is refused. */
const yesOrNo = z
  .string()
  .trim()
  .toLowerCase()
  .refine((text) => ['yes', 'no', 'true', 'false'].includes(text), YES_NO)
  .transform((text) => text === 'yes' || text === 'true');

const wholeFrom = (least: number, error: string) =>
  z
    .string()
    .trim()
    .refine((text) => /^\d{1,3}$/.test(text) && Number(text) >= least && Number(text) <= 100, error)
    .transform(Number);

export const melRow = z
  .object({
    title: neededText(said('The title of the item is needed.'), 200),
    equipment: neededText(said('Name the line of the equipment list it is about.'), 200),
    category: oneOf(['a', 'b', 'c', 'd'], said('Write A, B, C or D.')).transform(
      (letter) => letter.toUpperCase() as 'A' | 'B' | 'C' | 'D',
    ),
    days_for_a: z
      .string()
      .trim()
      .refine(
        (text) => text === '' || (/^\d{1,3}$/.test(text) && Number(text) >= 1),
        said('Whole days, from 1 on.'),
      )
      .transform((text) => (text === '' ? null : Number(text))),
    installed: wholeFrom(1, said('How many are installed is a whole number from 1 to 100.')),
    required_for_dispatch: wholeFrom(0, said('How many must work is a whole number from 0 to 100.')),
    allowed_night: yesOrNo,
    allowed_ifr: yesOrNo,
    allowed_hire: yesOrNo,
    proviso: optionalText(2000),
    operating_procedure: optionalText(2000),
    maintenance_procedure: optionalText(2000),
  })
  .superRefine(({ category, days_for_a: days, installed, required_for_dispatch: required }, context) => {
    const fault = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (category !== 'A' && days !== null) fault('days_for_a', said('Days belong to category A only.'));
    if (required > installed) fault('required_for_dispatch', said('More must work than are installed.'));
  });
export type MelRow = z.output<typeof melRow>;

type Column = keyof z.input<typeof melRow>;
const doc = columnDoc<Column>;

export const MEL_DOCS: readonly ColumnDoc<Column>[] = [
  doc('title', said('Title of the item, as the list has it.'), 'Landing light', true),
  doc('equipment', said('Name of the line of the equipment list of this aircraft.'), 'Landing light', true),
  doc('category', said('Repair category: A, B, C or D.'), 'C', true),
  doc('days_for_a', said('Category A only: the days its remarks give. Empty: not known, and that bars.'), ''),
  doc('installed', said('How many are installed, as the list says.'), '1', true),
  doc('required_for_dispatch', said('How many must work for dispatch.'), '0', true),
  doc('allowed_night', said('The list allows flight at night with it out: yes or no.'), 'no', true),
  doc('allowed_ifr', said('The list allows flight under IFR with it out: yes or no.'), 'yes', true),
  doc('allowed_hire', said('The list allows flight for hire with it out: yes or no.'), 'yes', true),
  doc('proviso', said('Remarks and exceptions, in the words of the list.'), 'Not used at night'),
  doc('operating_procedure', said('The (O) procedure, if there is one.'), ''),
  doc('maintenance_procedure', said('The (M) procedure, if there is one.'), 'Collar the breaker'),
];
