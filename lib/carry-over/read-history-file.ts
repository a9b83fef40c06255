import type { Tx } from '../db/client';
import { readRows, type RowFault, type RowFormat } from '../equipment/read-rows';
import type { HistoryKind } from './history-schema';
import { lastDoneRows, type LastDoneToKeep } from './last-done-rows';
import { writeUpRows, type WriteUpToKeep } from './write-up-rows';
import { lastDoneRow } from './last-done-columns';
import { writeUpRow } from './write-up-columns';

/** What taking a row in would do: it is new, it stands here already, or something is wrong with it. */
export interface CheckedHistoryRow {
  readonly row: number;
  readonly does: 'add' | 'keep' | 'wrong';
  /** "N012AB: Landing light does not come on". */
  readonly title: string;
  /** What the person should know before signing ("Grounds until a mechanic has judged it"). */
  readonly notes: readonly string[];
}

export interface CheckedHistory {
  readonly what: HistoryKind;
  readonly rows: readonly CheckedHistoryRow[];
  readonly errors: readonly RowFault[];
  readonly notes: readonly string[];
}

export interface HistoryToKeep {
  readonly checked: CheckedHistory;
  readonly writeUps: readonly WriteUpToKeep[];
  readonly lastDone: readonly LastDoneToKeep[];
}

/** Reads a file and holds it against the fleet: the same for the look beforehand and for the import itself. */
export async function readHistoryFile(
  tx: Tx,
  operatorId: string,
  now: Date,
  { what, format, text }: { readonly what: HistoryKind; readonly format: RowFormat; readonly text: string },
): Promise<HistoryToKeep> {
  if (what === 'write-ups') {
    const read = readRows(format, text, writeUpRow);
    const held = await writeUpRows(tx, operatorId, now, read.rows);
    return {
      checked: checkedOf(what, read, held),
      writeUps: held.toKeep,
      lastDone: [],
    };
  }
  const read = readRows(format, text, lastDoneRow);
  const held = await lastDoneRows(tx, operatorId, now, read.rows);
  return { checked: checkedOf(what, read, held), writeUps: [], lastDone: held.toKeep };
}

/** What both kinds of rows come out as. */
export interface HeldRows<T> {
  readonly rows: readonly CheckedHistoryRow[];
  readonly errors: readonly RowFault[];
  readonly toKeep: readonly T[];
}

function checkedOf(
  what: HistoryKind,
  read: { readonly errors: readonly RowFault[]; readonly notes: readonly string[] },
  held: HeldRows<unknown>,
): CheckedHistory {
  const broken = [...new Set(read.errors.filter(({ row }) => row > 0).map(({ row }) => row))].map(
    (row): CheckedHistoryRow => ({ row, does: 'wrong', title: '', notes: [] }),
  );
  return {
    what,
    rows: [...held.rows, ...broken].toSorted((a, b) => a.row - b.row),
    errors: [...read.errors, ...held.errors].toSorted((a, b) => a.row - b.row),
    notes: read.notes,
  };
}
