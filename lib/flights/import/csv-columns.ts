/** The columns of a CSV of flights, in the words of the page, and the template that shows them. */
import { COLUMNS, type Column } from './parsed';
import { type ColumnDoc } from '../../equipment/column-doc';
import { said } from '../../words/said';

export const COLUMN_DOCS: readonly ColumnDoc<Column>[] = [
  {
    column: 'aircraft',
    needed: true,
    what: said('Registration of an aircraft in service here.'),
    example: 'N000XX',
  },
  {
    column: 'pilot_email',
    needed: false,
    what: said('Address of a person here with a pilot certificate on file. Empty: nobody is named yet.'),
    example: 'pilot@example.org',
  },
  {
    column: 'from',
    needed: false,
    what: said('Identifier of a base here or of an airport in the airport file. Empty: the aircraft’s base.'),
    example: '',
  },
  { column: 'to', needed: false, what: said('As from. Empty: the aircraft’s base.'), example: '' },
  {
    column: 'depart',
    needed: true,
    what: said(
      'Local time at from, YYYY-MM-DD HH:MM; or with an offset or Z, as in ISO 8601: 2026-12-01T14:30Z.',
    ),
    example: '2026-12-01 14:30',
  },
  {
    column: 'arrive',
    needed: true,
    what: said('Local time at to, written as depart. Later than depart, by 24 hours at most.'),
    example: '2026-12-01 16:00',
  },
  { column: 'rules', needed: false, what: said('VFR or IFR.'), example: 'VFR' },
  {
    column: 'purpose',
    needed: false,
    what: said(
      'One of instruction-for-hire, carriage-for-hire, student-solo, private, check-flight, to-inspection.',
    ),
    example: 'private',
  },
  {
    column: 'hours',
    needed: false,
    what: said('Planned time in service in tenths of an hour.'),
    example: '1.2',
  },
  { column: 'words', needed: false, what: said('What for; up to 500 characters.'), example: 'Lesson 4' },
  {
    column: 'id',
    needed: false,
    what: said(
      'The flight’s number where the file comes from. With it, a changed row replaces the flight planned before; without it, a changed row is a new flight and the old one stays. Never used again for another flight.',
    ),
    example: 'A-1001',
  },
];

/** The head and one row to write over. Its registration is nobody's, so that it is refused when it is left in. */
export function csvTemplate(): string {
  const example = new Map(COLUMN_DOCS.map((doc) => [doc.column, doc.example]));
  const lines = [COLUMNS.join(','), COLUMNS.map((column) => example.get(column) ?? '').join(',')];
  return `${lines.join('\r\n')}\r\n`;
}
