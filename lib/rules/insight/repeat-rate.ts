/** The share of write-ups that came back. What a repeat is: `lib/rules/repeat-defect.ts`, 30 days or 10 flights, our choice. */
import { said } from '../said';
import type { AircraftHistory } from './history';
import { LEAST_FOR_PERCENTILES } from './quantile';
import { openedIn } from './times';
import type { Stretch } from './spans';

/** The window as lib/rules/repeat-defect.ts has it; a test holds the two together. */
export const REPEAT_RATE_DEFINITION = said(
  'Share of the write-ups opened in the period that came within 30 days or 10 flights of a sign-off on the same aircraft for the same finding, the same line of the equipment list, or a code with the same first three digits; could not duplicate counts as a sign-off. The window and what counts as the same are our own choice, no source. Rounded down to a whole per cent; with fewer than five write-ups only the numbers are given.',
);

/** What a write-up repeats. */
export interface Repeated {
  readonly earlierNumber: string;
  readonly days: number;
  readonly how: string;
}

export interface RepeatRow extends Repeated {
  readonly writeUpId: string;
  readonly number: string;
  readonly title: string;
  readonly registration: string;
}

export interface RepeatRateFigure {
  readonly definition: string;
  /** The repeats, by aircraft and number. */
  readonly rows: readonly RepeatRow[];
  readonly byAircraft: readonly {
    readonly registration: string;
    readonly opened: number;
    readonly repeats: number;
  }[];
  /** Whole per cent, rounded down; null with fewer than five write-ups. */
  readonly percent: number | null;
  readonly counts: { readonly opened: number; readonly repeats: number };
}

/** @param repeats what each write-up repeats, by its id; those that are no repeat are left out */
export function repeatRateFigure(
  fleet: readonly AircraftHistory[],
  windowOf: (aircraft: AircraftHistory) => Stretch,
  repeats: ReadonlyMap<string, Repeated>,
): RepeatRateFigure {
  const inOrder = fleet.toSorted((a, b) => (a.registration < b.registration ? -1 : 1));
  const opened = inOrder.flatMap((aircraft) =>
    aircraft.writeUps
      .filter((writeUp) => openedIn(writeUp, windowOf(aircraft)))
      .toSorted((a, b) => (a.number < b.number ? -1 : 1))
      .map((writeUp) => ({ registration: aircraft.registration, writeUp })),
  );
  const rows = opened.flatMap(({ registration, writeUp }) => {
    const repeated = repeats.get(writeUp.id);
    const { id, number, title } = writeUp;
    return repeated ? [{ writeUpId: id, number, title, registration, ...repeated }] : [];
  });
  const of = (registration: string) => (row: { readonly registration: string }) =>
    row.registration === registration;
  return {
    definition: REPEAT_RATE_DEFINITION,
    rows,
    byAircraft: inOrder
      .map(({ registration }) => ({
        registration,
        opened: opened.filter(of(registration)).length,
        repeats: rows.filter(of(registration)).length,
      }))
      .filter((row) => row.opened > 0),
    percent: opened.length < LEAST_FOR_PERCENTILES ? null : Math.floor((rows.length * 100) / opened.length),
    counts: { opened: opened.length, repeats: rows.length },
  };
}
