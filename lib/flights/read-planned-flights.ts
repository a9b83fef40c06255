import { z } from 'zod';
import { query } from '../access/service';
import { instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import { placesOfPlans } from './places-of-plans';
import { newestRelease, RELEASES_OF_PLAN, type PlanRelease } from './plans-to-compose';
import type { HoursTenths, Instant } from '../rules/facts';

export interface PlannedFlightView {
  readonly id: string;
  readonly departAt: Instant;
  readonly arriveAt: Instant;
  /** Null: nobody is named yet. */
  readonly pilot: string | null;
  readonly plannedTenths: HoursTenths | null;
  readonly words: string;
  readonly plannedBy: string;
  /** The aircraft's base where the plan says nothing. */
  readonly from: PlanPlace;
  readonly to: PlanPlace;
  /** Null: nobody has said. */
  readonly rules: string | null;
  readonly purpose: string | null;
  /** Name of the file it came out of; null when it was typed. */
  readonly fromFile: string | null;
  /** Its newest release, and what has become of it. */
  readonly release: PlanRelease | null;
}

export interface PlanPlace {
  readonly ident: string;
  readonly zone: string;
}

/** One aircraft with the flights planned for it, soonest first. */
export interface PlannedAircraft {
  readonly aircraftId: string;
  readonly registration: string;
  readonly baseIdent: string;
  readonly zone: string;
  readonly flights: readonly PlannedFlightView[];
}

export interface PlannedFlights {
  readonly asOf: Instant;
  readonly aircraft: readonly PlannedAircraft[];
}

/** How far ahead the list reaches. */
export const PLAN_DAYS = 7;

/** Flights planned and not cancelled that are not over and depart within seven days, aircraft by aircraft. */
export const readPlannedFlights = query({
  verb: 'planned-flights.read',
  input: z.object({}),
  async run({ tx, operatorId, now }): Promise<PlannedFlights> {
    const until = new Date(now.getTime() + PLAN_DAYS * 86_400_000);
    const fleet = await tx.aircraft.findMany({
      where: { operatorId, retiredOn: null },
      include: {
        base: { select: { ident: true, name: true, zone: true } },
        plannedFlights: {
          where: { cancelledAt: null, arriveAt: { gt: now }, departAt: { lte: until } },
          orderBy: [{ departAt: 'asc' }, { id: 'asc' }],
          include: { releases: RELEASES_OF_PLAN, import: { select: { fileName: true } } },
        },
      },
      orderBy: { registration: 'asc' },
    });
    const people = fleet.flatMap(({ plannedFlights }) =>
      plannedFlights.flatMap((flight) =>
        flight.pilotId ? [flight.plannedById, flight.pilotId] : [flight.plannedById],
      ),
    );
    const names = await namesOf(tx, people);
    const named = await placesOfPlans(tx, operatorId);
    const placeOf = (...given: Parameters<typeof named>): PlanPlace => {
      const { ident, zone } = named(...given);
      return { ident, zone };
    };
    return {
      asOf: instant(now),
      aircraft: fleet.map((row) => ({
        aircraftId: row.id,
        registration: row.registration,
        baseIdent: row.base.ident,
        zone: row.base.zone,
        flights: row.plannedFlights.map((flight) => ({
          id: flight.id,
          departAt: instant(flight.departAt),
          arriveAt: instant(flight.arriveAt),
          pilot: flight.pilotId ? nameIn(names, flight.pilotId) : null,
          plannedTenths: flight.plannedTenths,
          words: flight.words,
          plannedBy: nameIn(names, flight.plannedById),
          from: placeOf(flight.fromIdent, row.base),
          to: placeOf(flight.toIdent, row.base),
          rules: flight.rules,
          purpose: flight.purpose,
          fromFile: flight.import?.fileName ?? null,
          release: newestRelease(flight.releases),
        })),
      })),
    };
  },
});
