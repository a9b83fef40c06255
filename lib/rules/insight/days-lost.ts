/**
 * Days lost by chapter of the system codes: how long write-ups of a chapter grounded their aircraft. No regulation; the
 * definition is ours and stands beside the figure.
 */
import { JASC_CODES } from '../jasc';
import { timeHere } from './availability';
import { heldByWriteUp } from './held';
import type { AircraftHistory } from './history';
import { clip, minutesIn, type Span, type Stretch } from './spans';
import { said } from '../said';

export const DAYS_LOST_DEFINITION = said(
  'Time in which write-ups of a chapter (the first two digits of their JASC code, as filed now) grounded their aircraft, held as under availability, work on the write-up included; in days of 24 hours, rounded to a tenth. Two write-ups of one chapter on one aircraft at the same time count once; of different chapters each counts in its own, so that the chapters can sum to more than the aircraft stood. Time lost to inspections and overdue limits belongs to no chapter.',
);

export const MINUTES_A_DAY = 1440;
const MINUTES_A_TENTH_OF_A_DAY = 144;

export interface ChapterLost {
  /** "33"; null: filed under no code. */
  readonly chapter: string | null;
  readonly title: string;
  readonly minutes: number;
  /** Rounded, half up. */
  readonly tenthsOfDays: number;
  readonly writeUps: number;
  readonly aircraft: number;
}

export interface DaysLostFigure {
  readonly definition: string;
  /** Most lost first. */
  readonly rows: readonly ChapterLost[];
  /** All chapters summed, and what the aircraft stood for write-ups with overlaps counted once. */
  readonly summedTenths: number;
  readonly stoodTenths: number;
  readonly counts: { readonly aircraft: number; readonly writeUps: number };
}

/** Whole tenths of days of 24 hours; 72 minutes and more round up. */
export const tenthsOfDays = (minutes: number): number =>
  Math.floor((minutes + MINUTES_A_TENTH_OF_A_DAY / 2) / MINUTES_A_TENTH_OF_A_DAY);

export function daysLostFigure(
  fleet: readonly AircraftHistory[],
  windowOf: (aircraft: AircraftHistory) => Stretch,
): DaysLostFigure {
  const lost = fleet.flatMap((aircraft) => {
    const here = timeHere(aircraft, windowOf(aircraft));
    return aircraft.writeUps.flatMap((writeUp) => {
      const spans = heldByWriteUp(writeUp).flatMap((span) => clip(span, here));
      return spans.length === 0 ? [] : [{ aircraftId: aircraft.id, chapter: chapterOf(writeUp.jasc), spans }];
    });
  });
  const chapters = [...new Set(lost.map(({ chapter }) => chapter))];
  const rows = chapters.map((chapter): ChapterLost => {
    const some = lost.filter((one) => one.chapter === chapter);
    const minutes = oncePerAircraft(some);
    return {
      chapter,
      title: titleOfChapter(chapter),
      minutes,
      tenthsOfDays: tenthsOfDays(minutes),
      writeUps: some.length,
      aircraft: new Set(some.map(({ aircraftId }) => aircraftId)).size,
    };
  });
  rows.sort((a, b) => b.minutes - a.minutes || ((a.chapter ?? '~') < (b.chapter ?? '~') ? -1 : 1));
  return {
    definition: DAYS_LOST_DEFINITION,
    rows,
    summedTenths: tenthsOfDays(rows.reduce((sum, { minutes }) => sum + minutes, 0)),
    stoodTenths: tenthsOfDays(oncePerAircraft(lost)),
    counts: {
      aircraft: new Set(lost.map(({ aircraftId }) => aircraftId)).size,
      writeUps: lost.length,
    },
  };
}

const oncePerAircraft = (
  lost: readonly { readonly aircraftId: string; readonly spans: readonly Span[] }[],
): number =>
  [...new Set(lost.map(({ aircraftId }) => aircraftId))]
    .map((id) => minutesIn(lost.filter(({ aircraftId }) => aircraftId === id).flatMap(({ spans }) => spans)))
    .reduce((sum, minutes) => sum + minutes, 0);

/** The first two digits of a code; null for what is none. */
export const chapterOf = (jasc: string): string | null => (/^\d{4}$/.test(jasc) ? jasc.slice(0, 2) : null);

/** "Lights"; said where the table has no such chapter. */
export function titleOfChapter(chapter: string | null): string {
  if (chapter === null) return 'No system code';
  return JASC_CODES.find(({ code }) => code.startsWith(chapter))?.chapterTitle ?? 'Not in the table';
}
