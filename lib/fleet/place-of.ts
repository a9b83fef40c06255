import { airportByIdent } from '../airports/find-airport';
import type { Tx } from '../db/client';
import { unknown } from '../rules/facts';
import type { Place } from '../rules/operations';
import { basePlace } from './facts';

/** A place a flight can name. What an airport of the file says nothing about is unknown, never assumed. */
export type KnownPlace = ReturnType<typeof basePlace>;

/**
 * The place called `ident`: the operator's own base first (it knows more, and an invented or private field may bear an
 * airport's letters), else the airport of the shipped file; null when neither is there.
 */
export async function placeOfIdent(tx: Tx, operatorId: string, ident: string): Promise<KnownPlace | null> {
  const wanted = ident.trim().toUpperCase();
  const base = await tx.base.findUnique({ where: { operatorId_ident: { operatorId, ident: wanted } } });
  return base ? basePlace(base) : airportPlace(wanted);
}

/** The airport of the file as a place, or null. */
export function airportPlace(ident: string): KnownPlace | null {
  const airport = airportByIdent(ident);
  if (!airport) return null;
  const place: Place = {
    ident: airport.ident,
    latitudeDeg: airport.latitudeDeg,
    longitudeDeg: airport.longitudeDeg,
    zone: airport.zone,
    repairAvailable: unknown(`whether repair is to be had at ${airport.ident}`),
  };
  return {
    ...place,
    transponderAirspace: unknown(`whether ${airport.ident} lies in transponder airspace`),
    adsbAirspace: unknown(`whether ${airport.ident} lies in ADS-B airspace`),
    controlledAirspace: unknown(`whether ${airport.ident} lies in controlled airspace`),
  };
}
