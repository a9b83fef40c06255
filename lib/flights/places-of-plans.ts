import { airportByIdent } from '../airports/find-airport';
import type { Tx } from '../db/client';
import type { NamedPlace } from '../releases/place-text';

/** Ident as a plan keeps it, and the base of its aircraft, to the place that is meant. */
export type PlaceOfPlan = (ident: string | null, base: NamedPlace) => NamedPlace;

/**
 * The places plans name: bases of the operator before airports of the shipped file; the aircraft's base where a plan says
 * nothing. A place that left the file meanwhile keeps its letters; its clock is not known any more, and the base's is taken.
 */
export async function placesOfPlans(tx: Tx, operatorId: string): Promise<PlaceOfPlan> {
  const bases = await tx.base.findMany({ where: { operatorId } });
  return (ident, base) => {
    const { name, zone } =
      ident === null
        ? base
        : (bases.find((one) => one.ident === ident) ??
          airportByIdent(ident) ?? { name: 'not known any more', zone: base.zone });
    return { ident: ident ?? base.ident, name, zone };
  };
}
