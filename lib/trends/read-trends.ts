import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import type { Tx } from '../db/client';
import { requireAircraft } from '../fleet/require-aircraft';
import { storedLimits } from '../findings/open-write-up';
import { STANDING } from '../releases/readings';
import { measurementOf, type Measurement } from '../rules/findings/measurements';
import {
  levelOf,
  oilSpans,
  oilUse,
  type OilAdded,
  type OilSpan,
  type RecentAgainstBefore,
} from '../rules/trend';
import { newestLists, NOT_FITTED_YET } from '../walkarounds/newest-list';
import { measuredPoints, type SourcedPoint } from './measured-points';

/** A limit drawn as a line. */
export interface TrendLimit {
  readonly min: number | null;
  readonly max: number | null;
  readonly source: string;
}

/** One measured thing over time. */
export interface TrendSeries {
  readonly measurement: Measurement;
  /** Oldest first. */
  readonly points: readonly SourcedPoint[];
  readonly limit: TrendLimit | null;
  readonly level: RecentAgainstBefore | null;
}

export interface TrendsView {
  readonly asOf: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly zone: string;
  /** How far back is looked. */
  readonly days: number;
  readonly series: readonly TrendSeries[];
  readonly oil: {
    readonly spans: readonly OilSpan[];
    readonly added: readonly OilAdded[];
    /** Thousandths of a quart an hour; null when no span counts. */
    readonly use: RecentAgainstBefore | null;
  } | null;
}

/** A year: what repeats with the season is seen once. */
const DAYS = 365;
const A_DAY = 86_400_000;
const OIL = 'oil-quantity';
/** What was put in, or how often somebody sampled: no trend of the aircraft. */
const SAYS_NO_WEAR = ['fuel-in-left-tank', 'fuel-in-right-tank', 'fuel-sample-repeats'];

/** Everything measured on one aircraft in the last year, by what was measured; oil also as used an hour. */
export const readTrends = query({
  verb: 'trends.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId, now }, { aircraftId }): Promise<TrendsView> {
    const aircraft = await requireAircraft(tx, operatorId, aircraftId);
    const since = new Date(now.getTime() - DAYS * A_DAY);
    const readings = await tx.meterReading.findMany({
      where: { operatorId, aircraftId, ...STANDING, ttisTenths: { not: null } },
      select: { at: true, ttisTenths: true },
      orderBy: [{ at: 'asc' }, { ttisTenths: 'asc' }],
    });
    const times = readings.map((row) => ({ at: instant(row.at), ttisTenths: row.ttisTenths ?? 0 }));
    const byKey = await measuredPoints(tx, operatorId, aircraftId, since, times);
    const limits = await limitsOf(tx, operatorId, aircraft);
    const levels = byKey.get(OIL) ?? [];
    const added = await oilAdded(tx, operatorId, aircraftId, since);
    const spans = oilSpans(levels, added);
    return {
      asOf: instant(now),
      aircraftId,
      registration: aircraft.registration,
      typeName: aircraft.type.name,
      zone: aircraft.base.zone,
      days: DAYS,
      series: [...byKey]
        .flatMap(([key, points]) => {
          const measurement = measurementOf(key);
          return measurement === null || SAYS_NO_WEAR.includes(key)
            ? []
            : [{ measurement, points, limit: limits.get(key) ?? null, level: levelOf(points) }];
        })
        .toSorted((a, b) => b.points.length - a.points.length),
      oil: levels.length === 0 ? null : { spans, added, use: oilUse(spans) },
    };
  },
});

/** The limit of this very aircraft for each measurement; else its type's, out of the walkaround list. */
async function limitsOf(
  tx: Tx,
  operatorId: string,
  aircraft: { readonly id: string; readonly typeId: string },
): Promise<ReadonlyMap<string, TrendLimit>> {
  const list = (await newestLists(tx, operatorId)).get(aircraft.typeId) ?? NOT_FITTED_YET;
  const ofType = list.list.stations
    .flatMap(({ items }) => items)
    .flatMap((item): [string, TrendLimit][] =>
      item.kind === 'number' && item.limit ? [[item.measurement, item.limit]] : [],
    );
  const ofAircraft = (await storedLimits(tx, operatorId, aircraft.id)).map(
    ({ measurement, min, max, source }): [string, TrendLimit] => [measurement, { min, max, source }],
  );
  return new Map([...ofType, ...ofAircraft]);
}

const servicingSaid = z.looseObject({ oilAddedTenths: z.int().positive() });

/** Oil that was recorded as added when servicing was signed for. */
async function oilAdded(tx: Tx, operatorId: string, aircraftId: string, since: Date): Promise<OilAdded[]> {
  const rows = await tx.determination.findMany({
    where: { operatorId, kind: 'servicing', discrepancy: { aircraftId }, signedAt: { gte: since } },
    select: { signedAt: true, content: true },
    orderBy: { signedAt: 'asc' },
  });
  return rows.flatMap(({ signedAt, content }) => {
    const said = servicingSaid.safeParse(content);
    return said.success ? [{ at: instant(signedAt), tenths: said.data.oilAddedTenths }] : [];
  });
}
