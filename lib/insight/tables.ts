import { dayInWords } from '../rules/in-words';
import type { TimesFigure } from '../rules/insight/times';
import type { FigureId } from './figures';
import { lengthInWords, lostInWords, momentHere, shareInWords } from './in-words';
import type { InsightView } from './read-insight';

/** One value: as a spreadsheet reads it, and as a person does. Null: there is none. */
export interface Cell {
  readonly raw: string | number | null;
  readonly said: string;
}

/** A figure's rows. The same on the page, for whoever cannot see the chart, and in the file. */
export interface FigureTable {
  readonly columns: readonly {
    /** Header on the page. */
    readonly shown: string;
    /** Header in the file, with the unit. */
    readonly file: string;
  }[];
  readonly rows: readonly (readonly Cell[])[];
}

const text = (raw: string): Cell => ({ raw, said: raw });
const number = (raw: number): Cell => ({ raw, said: String(raw) });
const minutes = (raw: number | null): Cell => ({ raw, said: raw === null ? 'none' : lengthInWords(raw) });
const day = (raw: string | null): Cell => ({ raw, said: raw === null ? 'not known' : dayInWords(raw) });
const column = (shown: string, file = shown.toLowerCase()) => ({ shown, file });

export function tableOf(view: InsightView, figure: FigureId): FigureTable {
  switch (figure) {
    case 'availability':
      return {
        columns: [
          column('Aircraft'),
          column('Available', 'available (per mille of the time)'),
          column('Looked at', 'looked at (minutes)'),
          column('Held', 'held (minutes)'),
          column('By write-ups', 'held by write-ups (minutes)'),
          column('By other work', 'held by other work (minutes)'),
          column('By what ran out', 'held by what ran out (minutes)'),
          column('Write-ups that held it', 'write-ups that held it'),
        ],
        rows: view.availability.rows.map((row) => [
          text(row.registration),
          { raw: row.permille, said: shareInWords(row.permille) },
          minutes(row.minutes),
          minutes(row.heldMinutes),
          minutes(row.heldBy.writeUps),
          minutes(row.heldBy.work),
          minutes(row.heldBy.requirements),
          number(row.writeUps),
        ]),
      };
    case 'days-lost':
      return {
        columns: [
          column('Chapter'),
          column('System'),
          column('Lost', 'lost (tenths of days)'),
          column('In minutes', 'lost (minutes)'),
          column('Write-ups'),
          column('Aircraft'),
        ],
        rows: view.daysLost.rows.map((row) => [
          { raw: row.chapter, said: row.chapter ?? 'none' },
          text(row.title),
          { raw: row.tenthsOfDays, said: lostInWords(row.tenthsOfDays, row.minutes) },
          number(row.minutes),
          number(row.writeUps),
          number(row.aircraft),
        ]),
      };
    case 'time-to-answer':
      return timesTable(view, view.timeToAnswer);
    case 'time-to-repair':
      return timesTable(view, view.timeToRepair);
    case 'repeat-rate':
      return {
        columns: [
          column('Write-up'),
          column('Aircraft'),
          column('What'),
          column('Repeats', 'repeats write-up'),
          column('After', 'after (days)'),
          column('That was'),
        ],
        rows: view.repeatRate.rows.map((row) => [
          text(row.number),
          text(row.registration),
          text(row.title),
          text(row.earlierNumber),
          { raw: row.days, said: `${row.days} d` },
          text(row.how.replaceAll('-', ' ')),
        ]),
      };
    case 'deferral-age':
      return deferralTable(view);
  }
}

const timesTable = ({ zone }: InsightView, figure: TimesFigure): FigureTable => ({
  columns: [
    column('Write-up'),
    column('Aircraft'),
    column('What'),
    column('Written', 'written (UTC)'),
    column('By'),
    column('Took', 'took (minutes)'),
    column('Waits since', 'waits since (minutes)'),
  ],
  rows: figure.rows.map((row) => [
    text(row.number),
    text(row.registration),
    text(row.title),
    { raw: row.openedAt, said: momentHere(row.openedAt, zone) },
    text(row.by.replaceAll('-', ' ')),
    minutes(row.minutes),
    minutes(row.waitingMinutes),
  ]),
});

const deferralTable = ({ deferralAge }: InsightView): FigureTable => ({
  columns: [
    column('Write-up'),
    column('Aircraft'),
    column('What'),
    column('State'),
    column('Begun', 'begun (day at the base)'),
    column('Age or length', 'age or length (days)'),
    column('Last day', 'last day at the latest'),
    column('Ended', 'ended (day at the base)'),
  ],
  rows: [
    ...deferralAge.rows.map((row) => [
      text(row.number),
      text(row.registration),
      text(row.title),
      text('open'),
      day(row.begunOn),
      { raw: row.days, said: `${row.days} d` },
      day(row.endsOn),
      { raw: null, said: 'not ended' },
    ]),
    ...deferralAge.endedRows.map((row) => [
      text(row.number),
      text(row.registration),
      text(row.title),
      text('ended'),
      day(row.begunOn),
      { raw: row.days, said: `${row.days} d` },
      { raw: null, said: 'none' },
      day(row.endedOn),
    ]),
  ],
});
