import type { z } from 'zod';
import type { Tx } from '../db/client';
import { instant } from '../db/dates';
import type { ReadRow, RowFault } from '../equipment/read-rows';
import { localDate } from '../rules/months';
import { said } from '../words/said';
import { aircraftOfPapers } from './aircraft-of-paper';
import type { CheckedHistoryRow, HeldRows } from './read-history-file';
import type { writeUpRow } from './write-up-columns';
import { plain, same, writeUpOnPaper, type AircraftOfPaper, type CarriedWriteUp } from './write-up-on-paper';
import { filled } from '../words/said';

export interface WriteUpToKeep {
  readonly row: number;
  readonly aircraft: AircraftOfPaper;
  readonly carried: CarriedWriteUp;
}

/**
 * Rows of write-ups held against the fleet. One that was carried over already (same aircraft, day and words) stands as it is, so
 * that the same file twice adds nothing; two alike in one file are a mistake.
 */
export async function writeUpRows(
  tx: Tx,
  operatorId: string,
  now: Date,
  read: readonly ReadRow<z.output<typeof writeUpRow>>[],
): Promise<HeldRows<WriteUpToKeep>> {
  const fleet = await aircraftOfPapers(tx, operatorId, now);
  const standing = await carriedAlready(tx, operatorId);
  const inFile = new Map<string, number>();
  const rows: CheckedHistoryRow[] = [];
  const errors: RowFault[] = [];
  const toKeep: WriteUpToKeep[] = [];
  for (const { row, value } of read) {
    const title = `${value.aircraft}: ${value.words}`;
    const wrong = (faults: readonly { field: string; message: string }[]) => {
      errors.push(...faults.map((fault) => ({ row, ...fault })));
      rows.push({ row, does: 'wrong', title, notes: [] });
    };
    const aircraft = fleet.find(({ registration }) => same(registration, value.aircraft));
    if (!aircraft) {
      wrong([{ field: 'aircraft', message: said('No aircraft of yours has this registration.') }]);
      continue;
    }
    const held = writeUpOnPaper(value, aircraft);
    if (!held.ok) {
      wrong(held.faults);
      continue;
    }
    const key = keyOf(aircraft.id, value.found_on, value.words);
    const earlier = inFile.get(key);
    if (earlier !== undefined) {
      wrong([
        {
          field: 'words',
          message: filled(said('The same as row {earlier}: same aircraft, day and words.'), { earlier }),
        },
      ]);
      continue;
    }
    inFile.set(key, row);
    const stands = standing.get(key);
    if (stands !== undefined && !saysTheSame(stands, held.value)) {
      wrong([{ field: 'words', message: OTHER_THINGS }]);
      continue;
    }
    if (stands !== undefined) {
      rows.push({ row, does: 'keep', title, notes: [] });
      continue;
    }
    rows.push({ row, does: 'add', title, notes: notesOf(held.value) });
    toKeep.push({ row, aircraft, carried: held.value });
  }
  return { rows, errors, toKeep };
}

const keyOf = (aircraftId: string, foundOn: string, words: string): string =>
  JSON.stringify([aircraftId, foundOn, plain(words)]);

/** Every write-up ever carried over, closed ones too: what was repaired since does not come back. */
async function carriedAlready(tx: Tx, operatorId: string): Promise<ReadonlyMap<string, unknown>> {
  const rows = await tx.discrepancy.findMany({
    where: { operatorId, vouchingId: { not: null } },
    select: {
      aircraftId: true,
      openedAt: true,
      finding: { select: { words: true } },
      aircraft: { select: { base: { select: { zone: true } } } },
      vouching: { select: { content: true } },
    },
  });
  return new Map(
    rows.map((row) => [
      keyOf(
        row.aircraftId,
        foundOnOf(row.vouching?.content) ?? localDate(instant(row.openedAt), row.aircraft.base.zone),
        row.finding.words,
      ),
      row.vouching?.content,
    ]),
  );
}

const OTHER_THINGS = said(
  'A write-up of this day and these words was carried over already and says other things. Word this one differently, or go on with that one.',
);

/** What was signed of the one that stands, in everything that decides: two finds in the same words are two finds. */
function saysTheSame(content: unknown, carried: CarriedWriteUp): boolean {
  const subject = (content as { subject?: Record<string, unknown> } | null)?.subject;
  if (!subject) return false;
  const { kind, jasc, equipmentId, inoperativeCount, severity } = carried;
  const now = { kind, jasc, equipmentId, inoperativeCount, severityOnPaper: severity };
  return Object.entries(now).every(([name, value]) => subject[name] === value);
}

/** The day as it was signed; a base that moved to another zone since does not change it. */
function foundOnOf(content: unknown): string | null {
  const subject = (content as { subject?: { foundOn?: unknown } } | null)?.subject;
  return typeof subject?.foundOn === 'string' ? subject.foundOn : null;
}

/** What it will mean, so that nobody is surprised after signing. */
function notesOf({ severity, kind, deferral }: CarriedWriteUp): string[] {
  if (deferral === null) {
    if (severity === 'note' && kind === 'cosmetic') return [];
    return [said('Bars flight until a mechanic has judged, deferred or repaired it.')];
  }
  const { judged, placard, noHazard } = deferral;
  return [
    ...(judged.allowed && noHazard === 'yes'
      ? []
      : [said('The determination on paper does not count: what is asked of it is not known or not met.')]),
    ...(placard.inPlace === 'yes' ? [] : [said('The placard is owed.')]),
  ];
}
