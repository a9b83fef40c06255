/** The columns of a file of open write-ups (docs/import.md); the form of one write-up sends the same texts. */
import { z } from 'zod';
import { columnDoc, type ColumnDoc } from '../equipment/column-doc';
import { FINDING_KINDS } from '../findings/schema';
import { said } from '../words/said';
import {
  neededDate,
  neededText,
  oneOf,
  oneOfOrEmpty,
  optionalCount,
  optionalDate,
  optionalText,
  yesNoUnknown,
  yesOrEmpty,
} from './answers';

export const SEVERITIES_ON_PAPER = ['grounding', 'limiting', 'note', 'not-known'] as const;
export const CERTIFICATES_ON_PAPER = ['mechanic', 'repair-station', 'pilot', 'other', 'not-known'] as const;
export const PILOT_GRADES = [
  'student',
  'sport',
  'recreational',
  'private',
  'commercial',
  'airline-transport',
] as const;

/** Everything of a write-up but which aircraft it is of. */
export const writeUpShape = {
  found_on: neededDate,
  found_by: optionalText(120),
  words: neededText(said('The words of the write-up are needed.'), 2000),
  kind: oneOf(FINDING_KINDS, said('Choose what kind of trouble it is.')),
  jasc: z
    .string()
    .trim()
    .regex(/^\d{4}$/, said('A JASC code has four digits.')),
  equipment: optionalText(200),
  how_many: optionalCount(50, said('How many is a whole number from 1 to 50.')),
  place: optionalText(200),
  severity: oneOf(SEVERITIES_ON_PAPER, said('Write grounding, limiting, note, or not known.')),
  document: neededText(said('Name the document it is written in.'), 300),
  deferred: yesOrEmpty,
  basis: oneOfOrEmpty(['91.213(d)', 'mel'], said('Write 91.213(d) or mel.')),
  mel_item: optionalText(200),
  method: oneOfOrEmpty(['removed', 'deactivated'], said('Write removed or deactivated.')),
  method_words: optionalText(500),
  is_maintenance: yesNoUnknown,
  recorded_on: optionalDate,
  determined_on: optionalDate,
  determined_by: optionalText(120),
  certificate: oneOfOrEmpty(
    CERTIFICATES_ON_PAPER,
    said('Write mechanic, repair station, pilot, other, or not known.'),
  ),
  certificate_number: optionalText(60),
  mechanic_ratings: z
    .string()
    .trim()
    .toLowerCase()
    .transform((text) => text.split(/[;,/+ ]+/).filter((part) => part !== '' && part !== 'and'))
    .refine(
      (parts) => parts.every((part) => part === 'airframe' || part === 'powerplant'),
      said('Write airframe, powerplant, or both with a semicolon between.'),
    )
    .transform((parts) => parts as ('airframe' | 'powerplant')[]),
  mechanic_recent: yesNoUnknown,
  station_authorised: yesNoUnknown,
  pilot_grade: oneOfOrEmpty(
    PILOT_GRADES,
    said('Write student, sport, recreational, private, commercial or airline transport.'),
  ),
  pilot_rated: yesNoUnknown,
  no_hazard: yesNoUnknown,
  counted_together: yesNoUnknown,
  record_signed: yesNoUnknown,
  record_by: optionalText(200),
  record_authorised: yesNoUnknown,
  placard_in_place: yesNoUnknown,
  placard_words: optionalText(120),
  placard_location: optionalText(120),
  procedures_done: yesNoUnknown,
  elt_removed_on: optionalDate,
  elt_record_complete: yesNoUnknown,
} as const;

export const writeUpFields = z.object(writeUpShape);
export type WrittenUp = z.output<typeof writeUpFields>;

/** A row of a file names its aircraft by registration. */
export const writeUpRow = z.object({
  aircraft: neededText(said('Name the aircraft by its registration.'), 20),
  ...writeUpShape,
});

type Column = keyof z.input<typeof writeUpRow>;
const doc = columnDoc<Column>;

/** What stands in docs/import.md and on the screen, in the order of the template. */
export const WRITE_UP_DOCS: readonly ColumnDoc<Column>[] = [
  doc('aircraft', said('Registration, as it stands here.'), 'N012AB', true),
  doc('found_on', said('The day it was found, as 2026-11-25.'), '2026-11-02', true),
  doc('found_by', said('Who wrote it up, as the paper says.'), 'Vera Alderbank'),
  doc(
    'words',
    said('The words of the write-up, as they stand on paper.'),
    'Landing light does not come on',
    true,
  ),
  doc(
    'kind',
    said('inoperative, damage, wear, leak, contamination, fastener, servicing, document or cosmetic.'),
    'inoperative',
    true,
  ),
  doc('jasc', said('Four digits of the JASC code.'), '3340', true),
  doc(
    'equipment',
    said('Name of the line of the equipment list, as it stands here. Needed for a deferral.'),
    'Landing light',
  ),
  doc('how_many', said('How many of them do not work. Needed for a deferral.'), '1'),
  doc('place', said('Where on the aircraft.'), 'left wing'),
  doc(
    'severity',
    said('grounding, limiting, note or not known. Not known grounds until a mechanic judges it.'),
    'limiting',
    true,
  ),
  doc('document', said('The document it is written in, with page or date.'), 'Squawk sheet 41', true),
  doc('deferred', said('yes where a deferral stands on paper. The columns below are then read.'), 'yes'),
  doc('basis', said('91.213(d) or mel.'), '91.213(d)'),
  doc('mel_item', said('Title of the item in the minimum equipment list, as it stands here.')),
  doc('method', said('removed or deactivated.'), 'deactivated'),
  doc('method_words', said('How, in the words of the paper.'), 'Breaker pulled and collared'),
  doc(
    'is_maintenance',
    said('Whether that was maintenance: yes, no, not known. Not known counts as yes.'),
    'no',
  ),
  doc(
    'recorded_on',
    said(
      'The day it was recorded inoperative; the interval of a list counts from it. Empty: the day it was found.',
    ),
    '2026-11-02',
  ),
  doc('determined_on', said('The day of the determination of no hazard.'), '2026-11-03'),
  doc('determined_by', said('Who determined it, as the paper says.'), 'Otto Birkmoor'),
  doc('certificate', said('mechanic, repair station, pilot, other or not known.'), 'mechanic'),
  doc('certificate_number', said('The number of that certificate.'), '1234567'),
  doc(
    'mechanic_ratings',
    said('Of a mechanic: airframe, powerplant, or both with a semicolon between.'),
    'airframe; powerplant',
  ),
  doc(
    'mechanic_recent',
    said('Of a mechanic: had recent experience on that day (65.83): yes, no, not known.'),
    'yes',
  ),
  doc(
    'station_authorised',
    said(
      'Of a repair station: rated for this aircraft, and the person could sign for it: yes, no, not known.',
    ),
  ),
  doc(
    'pilot_grade',
    said('Of a pilot: student, sport, recreational, private, commercial or airline transport.'),
  ),
  doc(
    'pilot_rated',
    said('Of a pilot: rated for the category and class of this aircraft: yes, no, not known.'),
  ),
  doc('no_hazard', said('The paper says that it is no hazard to the aircraft: yes, no, not known.'), 'yes'),
  doc(
    'counted_together',
    said('The determination counted everything else that was out then: yes, no, not known.'),
    'yes',
  ),
  doc('record_signed', said('The part 43 record of removing or deactivating is signed: yes, no, not known.')),
  doc('record_by', said('Who signed that record, with certificate kind and number.')),
  doc('record_authorised', said('That person could approve this work: yes, no, not known.')),
  doc('placard_in_place', said('The placard is in place: yes, no, not known.'), 'yes'),
  doc('placard_words', said('The wording of the placard.'), 'LANDING LIGHT INOPERATIVE'),
  doc('placard_location', said('Where the placard is or goes.'), 'Beside its switch'),
  doc('procedures_done', said('The procedures of the list are done: yes, no, not known.')),
  doc('elt_removed_on', said('Of a removed emergency locator transmitter: the day it was first removed.')),
  doc(
    'elt_record_complete',
    said('Of the same: make, model, serial number and reason are recorded: yes, no, not known.'),
  ),
];
