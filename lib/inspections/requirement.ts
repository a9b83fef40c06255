import { calendarDate } from '../db/dates';
import type { Prisma, Tx } from '../db/client';
import { aircraftFacts, readAircraft, type AircraftRow } from '../fleet/facts';
import { Refusal } from '../problems';
import type { CalendarDate, HoursTenths } from '../rules/facts';
import { hundredHourDue } from '../rules/part-91/91-409-inspections';
import { said } from '../words/said';

/** What every act on a requirement needs with it. */
export const REQUIREMENT_ROW = {
  aircraft: { include: { base: true, type: true } },
  compliances: { orderBy: { recordedAt: 'desc' } },
} as const satisfies Prisma.RequirementInclude;

export type RequirementRow = Prisma.RequirementGetPayload<{ include: typeof REQUIREMENT_ROW }>;

/** Something due that still applies, or a refusal. */
export async function requireRequirement(tx: Tx, operatorId: string, id: string): Promise<RequirementRow> {
  const requirement = await tx.requirement.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: REQUIREMENT_ROW,
  });
  if (!requirement || requirement.aircraft.retiredOn) {
    throw new Refusal('not_found', { say: said('Nothing of that kind falls due here.') });
  }
  if (requirement.endedOn) {
    throw new Refusal('conflict', { say: said('This does not apply any more since it was ended.') });
  }
  return requirement;
}

type Done = Pick<
  AircraftRow['requirements'][number]['compliances'][number],
  'id' | 'doneOn' | 'ttisTenths' | 'supersedesId'
>;

/** Records that no later one corrects, newest first by what they are about. */
export function standingRecords<T extends Done>(compliances: readonly T[]): readonly T[] {
  const superseded = new Set(compliances.map(({ supersedesId }) => supersedesId));
  return compliances
    .filter(({ id }) => !superseded.has(id))
    .toSorted((a, b) => b.doneOn.getTime() - a.doneOn.getTime() || b.ttisTenths - a.ttisTenths);
}

/**
 * When the 100-hour inspection was due that something done on `doneOn` at `ttisTenths` answers: the pay-back of 91.409(b)
 * needs it. Null where the aircraft has no 100-hour inspection on record before that.
 * @param instead the standing record that the new one corrects; it then counts no more, nor does any that it corrected
 */
export async function dueBefore(
  tx: Tx,
  operatorId: string,
  aircraftId: string,
  done: { readonly doneOn: CalendarDate; readonly ttisTenths: HoursTenths; readonly instead: string | null },
): Promise<HoursTenths | null> {
  const row = await readAircraft(tx, operatorId, aircraftId);
  if (!row) throw new Refusal('not_found');
  // What stands is chosen first: a corrected record must not come back because its correction is taken out or came later.
  const before = (compliance: Done) =>
    compliance.id !== done.instead &&
    calendarDate(compliance.doneOn) <= done.doneOn &&
    compliance.ttisTenths <= done.ttisTenths;
  const then: AircraftRow = {
    ...row,
    requirements: row.requirements.map((requirement) => ({
      ...requirement,
      compliances: standingRecords(requirement.compliances).filter(before),
    })),
  };
  const { requirements } = aircraftFacts(then);
  const hundred = requirements.find(({ kind }) => kind === 'hundred-hour');
  return hundred ? hundredHourDue(hundred, requirements) : null;
}
