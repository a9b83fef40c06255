/** The columns of a file of inspections and tests last done (docs/import.md); the form of one sends the same texts. */
import { z } from 'zod';
import { columnDoc, type ColumnDoc } from '../equipment/column-doc';
import { parseTenths } from '../rules/hours';
import { said } from '../words/said';
import { neededDate, neededText, optionalDate, optionalText, yesNoUnknown } from './answers';

const FEET = said('The altitude tested to is whole feet, 60000 at most.');

/** Everything of it but what of which aircraft was done. */
export const lastDoneShape = {
  done_on: neededDate,
  hours: z
    .string()
    .trim()
    .refine(
      (text) => parseTenths(text) !== null,
      said('Hours as the record shows them: 4512.3, one decimal at most.'),
    ),
  approved_by: neededText(said('The name of whoever approved it is needed.'), 200),
  certificate: neededText(said('The kind of certificate is needed.'), 100),
  certificate_number: neededText(said('The certificate number is needed.'), 60),
  authorised: yesNoUnknown,
  document: neededText(said('Name the document that says so.'), 300),
  tested_to_ft: z
    .string()
    .trim()
    .refine(
      (text) => text === '' || (/^\d{1,5}$/.test(text) && Number(text) >= 1 && Number(text) <= 60_000),
      FEET,
    )
    .transform((text) => (text === '' ? null : Number(text))),
  new_expiry: optionalDate,
  method: optionalText(1000),
  revision: optionalText(200),
} as const;

export const lastDoneFields = z.object(lastDoneShape);
export type LastDone = z.output<typeof lastDoneFields>;

export const lastDoneRow = z.object({
  aircraft: neededText(said('Name the aircraft by its registration.'), 20),
  inspection: neededText(said('Name the inspection or test, as it stands here.'), 120),
  ...lastDoneShape,
});

type Column = keyof z.input<typeof lastDoneRow>;
const doc = columnDoc<Column>;

export const LAST_DONE_DOCS: readonly ColumnDoc<Column>[] = [
  doc('aircraft', said('Registration, as it stands here.'), 'N012AB', true),
  doc(
    'inspection',
    said(
      'Its name as it stands here, or annual, hundred-hour, static-and-altimeter, transponder, elt-inspection, elt-battery.',
    ),
    'annual',
    true,
  ),
  doc('done_on', said('The day it was done, as 2026-11-25.'), '2026-05-14', true),
  doc('hours', said('Total time in service then, one decimal at most.'), '4512.3', true),
  doc('approved_by', said('Who approved it, as the record says.'), 'Otto Birkmoor', true),
  doc('certificate', said('The kind of certificate, as the record says.'), 'inspection authorization', true),
  doc('certificate_number', said('Its number, as the record says.'), '1234567', true),
  doc(
    'authorised',
    said('That person held what the law asks on that day: yes, no, not known. Not known bars.'),
    'yes',
  ),
  doc('document', said('Which record says so, and where it is.'), 'Airframe logbook, page 41', true),
  doc('tested_to_ft', said('Altimeter and static test: the highest altitude tested, in feet.')),
  doc('new_expiry', said('Battery and the like: the new date marked on the part.')),
  doc('method', said('A directive: how it was met.')),
  doc('revision', said('A directive: its revision date.')),
];
