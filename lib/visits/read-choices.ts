import { z } from 'zod';
import { query } from '../access/service';
import { aircraftFacts, readAircraft } from '../fleet/facts';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import { dueSoon, type DueSoon } from '../rules/due-soon';
import { openVisits } from './open-visits';
import { said } from '../words/said';

/** What a visit of one aircraft can take in. */
export interface VisitChoices {
  readonly aircraftId: string;
  readonly registration: string;
  /** Today at the base. */
  readonly today: string;
  /** Open write-ups that no open visit holds. */
  readonly writeUps: readonly {
    readonly id: string;
    readonly number: string;
    readonly title: string;
    /** Where on the aircraft, in the words of whoever found it. */
    readonly place: string;
  }[];
  /** Inspections and recurring items due within 30 days or 25 hours, that no open visit holds. */
  readonly due: readonly DueSoon[];
}

/** What may be put into a visit of this aircraft: nothing of it is chosen. Refuses `not_found`. */
export const readVisitChoices = query({
  verb: 'visit.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId, now }, { aircraftId }): Promise<VisitChoices> {
    const row = await readAircraft(tx, operatorId, aircraftId);
    if (!row || row.retiredOn)
      throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
    const today = dayAtBase(now, row.base.zone);
    const writeUps = await tx.discrepancy.findMany({
      where: { operatorId, aircraftId, state: { not: 'closed' } },
      select: { id: true, number: true, title: true, finding: { select: { place: true } } },
      orderBy: { number: 'asc' },
    });
    const visits = await openVisits(tx, operatorId);
    const held = new Set(visits.flatMap((visit) => [...visit.discrepancyIds, ...visit.requirementIds]));
    return {
      aircraftId,
      registration: row.registration,
      today,
      writeUps: writeUps
        .filter(({ id }) => !held.has(id))
        .map(({ id, number, title, finding }) => ({ id, number, title, place: finding.place })),
      due: dueSoon(aircraftFacts(row), today).filter(({ requirementId }) => !held.has(requirementId)),
    };
  },
});
