import { z } from 'zod';
import { query } from '../access/service';
import { calendarDateOrNull } from '../db/dates';
import { typeContent, type TypeContent } from '../types/columns';

export interface OfficeAircraft {
  readonly id: string;
  readonly registration: string;
  readonly serial: string;
  readonly typeName: string;
  readonly baseIdent: string;
  readonly retiredOn: string | null;
  readonly retiredWhy: string | null;
  readonly equipment: number;
  /** Lines of the equipment list nobody has confirmed. */
  readonly unconfirmed: number;
}

export interface OfficeType extends TypeContent {
  readonly id: string;
  /** Registrations in service. */
  readonly aircraft: readonly string[];
  /** Facts nobody knows yet. */
  readonly notKnown: number;
}

export interface OfficeFleet {
  readonly aircraft: readonly OfficeAircraft[];
  readonly types: readonly OfficeType[];
  readonly bases: readonly { readonly id: string; readonly ident: string; readonly name: string }[];
}

/** Types and aircraft as the office keeps them, retired aircraft too. */
export const readOfficeFleet = query({
  verb: 'type.read',
  input: z.object({}),
  async run({ tx, operatorId }): Promise<OfficeFleet> {
    // One after the other: they share the connection of the transaction.
    const aircraft = await tx.aircraft.findMany({
      where: { operatorId },
      include: {
        type: true,
        base: true,
        equipment: { where: { removedOn: null }, select: { origin: true, vouchingId: true } },
      },
      orderBy: { registration: 'asc' },
    });
    const types = await tx.aircraftType.findMany({ where: { operatorId }, orderBy: { name: 'asc' } });
    const bases = await tx.base.findMany({ where: { operatorId }, orderBy: { ident: 'asc' } });
    return {
      aircraft: aircraft.map((row) => ({
        id: row.id,
        registration: row.registration,
        serial: row.serial,
        typeName: row.type.name,
        baseIdent: row.base.ident,
        retiredOn: calendarDateOrNull(row.retiredOn),
        retiredWhy: row.retiredWhy,
        equipment: row.equipment.length,
        unconfirmed: row.equipment.filter(({ origin, vouchingId }) => origin !== null && vouchingId === null)
          .length,
      })),
      types: types.map((row) => {
        const content = typeContent(row);
        const { equipmentListSource: _source, ...facts } = content;
        return {
          ...content,
          id: row.id,
          aircraft: aircraft
            .filter(({ typeId, retiredOn }) => typeId === row.id && !retiredOn)
            .map(({ registration }) => registration),
          notKnown: Object.values(facts).filter((value) => value === null).length,
        };
      }),
      bases: bases.map(({ id, ident, name }) => ({ id, ident, name })),
    };
  },
});
