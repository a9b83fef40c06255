import type { z } from 'zod';
import type { Tx } from '../db/client';
import { calendarDate, dateColumn } from '../db/dates';
import type { ReadRow, RowFault } from '../equipment/read-rows';
import { paperRecordFault, type BesideIt } from '../inspections/paper-record';
import { REQUIREMENT_ROW } from '../inspections/requirement';
import { dayAtBase } from '../records/signature';
import { answered } from '../rules/carried-over';
import { parseTenths } from '../rules/hours';
import { said } from '../words/said';
import { COLUMN } from './columns-of-record';
import type { lastDoneRow, LastDone } from './last-done-columns';
import type { CheckedHistoryRow, HeldRows } from './read-history-file';
import { same } from './write-up-on-paper';

export interface LastDoneToKeep {
  readonly row: number;
  readonly requirementId: string;
  readonly written: LastDone;
}

/**
 * Rows of inspections last done, held against what recurs here. A record of the same day and hours that stands already is left as
 * it is; rows of one file are held against each other in their order, as they would be taken in.
 */
export async function lastDoneRows(
  tx: Tx,
  operatorId: string,
  now: Date,
  read: readonly ReadRow<z.output<typeof lastDoneRow>>[],
): Promise<HeldRows<LastDoneToKeep>> {
  const requirements = await tx.requirement.findMany({
    where: { operatorId, endedOn: null, aircraft: { retiredOn: null } },
    include: REQUIREMENT_ROW,
  });
  const registrations = new Set(requirements.map(({ aircraft }) => aircraft.registration));
  const added = new Map<string, BesideIt['compliances']>();
  const rows: CheckedHistoryRow[] = [];
  const errors: RowFault[] = [];
  const toKeep: LastDoneToKeep[] = [];
  for (const { row, value } of read) {
    const title = `${value.aircraft}: ${value.inspection}, ${value.done_on}`;
    const wrong = (field: string | null, message: string) => {
      errors.push({ row, field, message });
      rows.push({ row, does: 'wrong', title, notes: [] });
    };
    const ofAircraft = requirements.filter(({ aircraft }) => same(aircraft.registration, value.aircraft));
    if (ofAircraft.length === 0) {
      const known = [...registrations].some((registration) => same(registration, value.aircraft));
      wrong(
        'aircraft',
        known
          ? said('Nothing recurs on this aircraft yet.')
          : said('No aircraft of yours with anything that recurs has this registration.'),
      );
      continue;
    }
    const found = ofAircraft.filter(
      ({ name, kind }) =>
        same(name, value.inspection) || kind === value.inspection.toLowerCase().replaceAll(' ', '-'),
    );
    const [requirement] = found;
    if (!requirement || found.length > 1) {
      wrong(
        'inspection',
        said('No one inspection or test of this aircraft has this name. Add it first, or write its name.'),
      );
      continue;
    }
    const tenths = parseTenths(value.hours) ?? 0;
    const before = [...requirement.compliances, ...(added.get(requirement.id) ?? [])];
    if (before.some((done) => calendarDate(done.doneOn) === value.done_on && done.ttisTenths === tenths)) {
      rows.push({ row, does: 'keep', title, notes: [] });
      continue;
    }
    const beside = { ...requirement, compliances: before };
    const fault = paperRecordFault(beside, recordOf(value), dayAtBase(now, requirement.aircraft.base.zone));
    if (fault) {
      wrong(fault.field === null ? null : (COLUMN[fault.field] ?? fault.field), fault.message);
      continue;
    }
    added.set(requirement.id, [
      ...(added.get(requirement.id) ?? []),
      { id: `row ${row}`, doneOn: dateColumn(value.done_on), ttisTenths: tenths, supersedesId: null },
    ]);
    const notes =
      value.authorised === 'yes'
        ? []
        : [said('Not known, or no, whether whoever approved it was authorized: it bars as if overdue.')];
    rows.push({ row, does: 'add', title, notes });
    toKeep.push({ row, requirementId: requirement.id, written: value });
  }
  return { rows, errors, toKeep };
}

/** A row as the record it would become. */
export const recordOf = (written: LastDone) => ({
  doneOn: written.done_on,
  ttis: written.hours,
  approvedBy: written.approved_by,
  certificateKind: written.certificate,
  certificateNumber: written.certificate_number,
  authorised: answered(written.authorised),
  papers: written.document,
  testedToFt: written.tested_to_ft,
  newExpiry: written.new_expiry,
  method: written.method,
  revision: written.revision,
  supersedesId: null,
  why: '',
});
