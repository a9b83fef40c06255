import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { dayAtBase } from '../records/signature';
import { nextClockChange, type ClockChange } from '../rules/clock-change';
import type { Instant } from '../rules/facts';
import { sunOfDay, type SunOfDay } from '../rules/sun-of-day';

export interface BaseView {
  readonly id: string;
  readonly ident: string;
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly zone: string;
  /** `typed`, `airport KXYZ`, or null when nobody said. */
  readonly source: string | null;
  readonly repairAvailable: boolean | null;
  readonly transponderAirspace: boolean | null;
  readonly adsbAirspace: boolean | null;
  readonly controlledAirspace: boolean | null;
  /** Registrations of the aircraft based here that are in service. */
  readonly aircraft: readonly string[];
  readonly today: SunOfDay;
  /** Null: the clocks there do not change within 400 days. */
  readonly clockChange: ClockChange | null;
}

export interface Bases {
  readonly asOf: Instant;
  readonly bases: readonly BaseView[];
}

/** The operator's bases by ident, with the sun of today (the date there) and when clocks change next. */
export const readBases = query({
  verb: 'base.read',
  input: z.object({}),
  async run({ tx, operatorId, now }): Promise<Bases> {
    const rows = await tx.base.findMany({
      where: { operatorId },
      include: {
        aircraft: {
          where: { retiredOn: null },
          select: { registration: true },
          orderBy: { registration: 'asc' },
        },
      },
      orderBy: { ident: 'asc' },
    });
    const asOf = instant(now);
    return {
      asOf,
      bases: rows.map((row) => ({
        id: row.id,
        ident: row.ident,
        name: row.name,
        latitudeDeg: row.latitudeDeg,
        longitudeDeg: row.longitudeDeg,
        zone: row.zone,
        source: row.source,
        repairAvailable: row.repairAvailable,
        transponderAirspace: row.transponderAirspace,
        adsbAirspace: row.adsbAirspace,
        controlledAirspace: row.controlledAirspace,
        aircraft: row.aircraft.map(({ registration }) => registration),
        today: sunOfDay(dayAtBase(now, row.zone), row),
        clockChange: nextClockChange(row.zone, asOf),
      })),
    };
  },
});
