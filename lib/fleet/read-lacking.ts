import { z } from 'zod';
import { query } from '../access/service';
import { dayAtBase } from '../records/signature';
import { lackingFor, type Lacking } from '../rules/lacking';
import { aircraftFacts, basePlace, readAircraft, readFleet, type AircraftRow } from './facts';
import { Refusal } from '../problems';

/** What the engine still lacks for one aircraft, and the rows that the missing facts belong to. */
export interface LackingOfAircraft {
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeId: string;
  readonly typeName: string;
  readonly baseId: string;
  readonly baseIdent: string;
  readonly lacking: readonly Lacking[];
}

export interface LackingView {
  readonly asOf: string;
  /** Of the fleet in order of registration, or the one that was asked about. */
  readonly aircraft: readonly LackingOfAircraft[];
}

/**
 * Asks the rules what they still lack, as of now. `aircraftId` null asks about every aircraft that is not retired. Refuses
 * `not_found` for an aircraft that is not the operator's.
 */
export const readLacking = query({
  verb: 'lacking.read',
  input: z.object({ aircraftId: z.uuid().nullable().default(null) }),
  async run({ tx, operatorId, now }, { aircraftId }): Promise<LackingView> {
    if (aircraftId === null) {
      return { asOf: now.toISOString(), aircraft: lackingOfFleet(await readFleet(tx), now) };
    }
    const row = await readAircraft(tx, operatorId, aircraftId);
    if (!row) throw new Refusal('not_found');
    return { asOf: now.toISOString(), aircraft: lackingOfFleet([row], now) };
  },
});

/** The same for rows that were read already. */
export const lackingOfFleet = (rows: readonly AircraftRow[], now: Date): LackingOfAircraft[] =>
  rows.map((row) => ({
    aircraftId: row.id,
    registration: row.registration,
    typeId: row.typeId,
    typeName: row.type.name,
    baseId: row.baseId,
    baseIdent: row.base.ident,
    lacking: lackingFor(
      aircraftFacts(row),
      basePlace(row.base),
      dayAtBase(now, row.base.zone),
      now.toISOString(),
    ),
  }));
