import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate, calendarDateOrNull } from '../db/dates';
import { formatTenths } from '../rules/hours';
import { aircraftContent, type AircraftContent } from './columns';
import { requireAnyAircraft } from './require';

export interface OfficeAircraftView extends AircraftContent {
  readonly id: string;
  readonly typeName: string;
  readonly baseIdent: string;
  /** Hours as a meter shows them; null: not known. */
  readonly hobbs: string | null;
  readonly tach: string | null;
  readonly ttis: string | null;
  readonly retiredOn: string | null;
  readonly retiredWhy: string | null;
  readonly equipment: number;
  readonly unconfirmed: number;
  /** Who signed for the facts as they stand; null: they are from before the question. */
  readonly vouched: { readonly by: string; readonly on: string; readonly source: string } | null;
}

const hours = (tenths: number | null): string | null => (tenths === null ? null : formatTenths(tenths));

/** One aircraft as the office keeps it. */
export const readOfficeAircraft = query({
  verb: 'type.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId }, { aircraftId }): Promise<OfficeAircraftView> {
    const row = await requireAnyAircraft(tx, operatorId, aircraftId);
    const lines = await tx.equipment.findMany({
      where: { operatorId, aircraftId, removedOn: null },
      select: { origin: true, vouchingId: true },
    });
    const vouching = await tx.vouching.findFirst({
      where: { operatorId, subjectKind: 'aircraft', subjectId: aircraftId },
      orderBy: { signedAt: 'desc' },
    });
    return {
      ...aircraftContent(row),
      id: row.id,
      typeName: row.type.name,
      baseIdent: row.base.ident,
      hobbs: hours(row.hobbsTenths),
      tach: hours(row.tachTenths),
      ttis: hours(row.ttisTenths),
      retiredOn: calendarDateOrNull(row.retiredOn),
      retiredWhy: row.retiredWhy,
      equipment: lines.length,
      unconfirmed: lines.filter(({ origin, vouchingId }) => origin !== null && vouchingId === null).length,
      vouched: vouching && {
        by: vouching.personName,
        on: calendarDate(vouching.signedOn),
        source: vouching.source,
      },
    };
  },
});
