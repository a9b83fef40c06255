import { z } from 'zod';
import { query } from '../access/service';
import type { Tx } from '../db/client';
import { readAircraft } from '../fleet/facts';
import { Refusal } from '../problems';
import { startOfDay } from '../rules/months';
import { readAnswers } from './answers';
import type { Asked } from './asked';
import {
  complianceRecords,
  determinationRecords,
  extensionRecords,
  listRecords,
  permitRecords,
} from './other-records';
import type { RecordRow } from './record-row';
import { dayAtBase } from './signature';
import { changesIn } from './signed-row';
import { readSigned } from './signed-tables';
import { statusSheet, type StatusSheet } from './status-sheet';
import { checkFlightRecords, workRecords } from './work-records';
import { vouchingRecords } from './vouching-records';

/** The records of one aircraft (91.417): its status, and what was signed in one year, newest first. */
export interface RecordsView {
  readonly asOf: string;
  readonly zone: string;
  readonly today: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly serial: string;
  readonly typeName: string;
  readonly year: number;
  /** Years that have records, newest first; the one shown is among them. */
  readonly years: readonly number[];
  readonly rows: readonly RecordRow[];
  readonly status: StatusSheet;
}

/**
 * Every signed record of one aircraft that was signed in `year` (this year at the base when left out), verified against
 * its hash and its columns as it is shown, with how long 91.417(b) asks for it. Whoever works here may read it: 91.417(c).
 */
export const readRecords = query({
  verb: 'records.read',
  input: z.object({ aircraftId: z.uuid(), year: z.int().min(1900).max(2999).optional() }),
  async run({ tx, operatorId, now }, { aircraftId, year: wished }): Promise<RecordsView> {
    const row = await readAircraft(tx, operatorId, aircraftId);
    if (!row) throw new Refusal('not_found', { say: 'There is no such aircraft here.' });
    const { zone } = row.base;
    const today = dayAtBase(now, zone);
    const thisYear = Number(today.slice(0, 4));
    const year = wished ?? thisYear;
    const signed = {
      gte: new Date(startOfDay(`${year}-01-01`, zone)),
      lt: new Date(startOfDay(next(year), zone)),
    };
    const signedRows = await readSigned(tx, { operatorId, aircraftId, signed });
    const verified = new Map(signedRows.map((one) => [one.id, changesIn(one)]));
    const asked: Asked = { operatorId, aircraftId, today, zone, signed, verified };
    const answers = await readAnswers(tx, operatorId, aircraftId);
    const rows = [
      ...(await workRecords(tx, asked, answers)),
      ...(await checkFlightRecords(tx, asked)),
      ...(await determinationRecords(tx, asked)),
      ...(await listRecords(tx, asked)),
      ...(await complianceRecords(tx, asked, answers)),
      ...(await extensionRecords(tx, asked)),
      ...(await permitRecords(tx, asked)),
      ...(await vouchingRecords(tx, asked)),
    ].toSorted((a, b) => b.at.localeCompare(a.at) || a.id.localeCompare(b.id));
    return {
      asOf: now.toISOString(),
      zone,
      today,
      aircraftId,
      registration: row.registration,
      serial: row.serial,
      typeName: row.type.name,
      year,
      years: await yearsWithRecords(tx, asked, [year, thisYear]),
      rows,
      status: await statusSheet(tx, row, today),
    };
  },
});

const next = (year: number): string => `${String(year + 1).padStart(4, '0')}-01-01`;

/** From the first year in which something was signed to this one. */
async function yearsWithRecords(tx: Tx, asked: Asked, also: readonly number[]): Promise<readonly number[]> {
  const { operatorId, aircraftId, zone } = asked;
  const firsts = [
    (await tx.signOff.aggregate({ where: { operatorId, work: { aircraftId } }, _min: { signedAt: true } }))
      ._min.signedAt,
    (
      await tx.determination.aggregate({
        where: { operatorId, discrepancy: { aircraftId } },
        _min: { signedAt: true },
      })
    )._min.signedAt,
    (
      await tx.compliance.aggregate({
        where: { operatorId, requirement: { aircraftId } },
        _min: { recordedAt: true },
      })
    )._min.recordedAt,
  ].flatMap((at) => (at ? [Number(dayAtBase(at, zone).slice(0, 4))] : []));
  const from = Math.min(...firsts, ...also);
  const to = Math.max(...also);
  return Array.from({ length: to - from + 1 }, (_, index) => to - index);
}
