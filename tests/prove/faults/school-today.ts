/** The invented school of the service tests, with its dates moved to today: these proofs run by the real clock. */
import { writeInOperator } from '@/lib/db/scope';
import type { AircraftFacts } from '@/lib/rules/aircraft';
import { known, unknown } from '@/lib/rules/facts';
import { localDate } from '@/lib/rules/months';
import type { ProposedFlight } from '@/lib/rules/operations';
import { instantOfLocalTime } from '@/lib/fleet/zone';
import { dayLesson } from '../../fixtures/acts';
import { BASE, flightOf, TODAY, trainer } from '../../fixtures/aircraft';
import { makeInspector } from '../../fixtures/inspections';
import { foundSchool, register, type School } from '../../fixtures/school';
import type { Site } from './site';

const A_DAY_MS = 86_400_000;

/** The day at the base, so many days from now. */
export const dayAhead = (days: number): string =>
  localDate(new Date(Date.now() + days * A_DAY_MS).toISOString(), BASE.zone);

/** The healthy trainer with every date as far from today as it is from the day of the fixtures. */
export function trainerToday(registration: string): AircraftFacts {
  const moved = Math.round((Date.parse(dayAhead(0)) - Date.parse(TODAY)) / A_DAY_MS);
  const move = (day: string) => new Date(Date.parse(day) + moved * A_DAY_MS).toISOString().slice(0, 10);
  const healthy = trainer({ registration });
  const text = JSON.stringify({ ...healthy, type: { ...healthy.type, name: `Trainer of ${registration}` } });
  return JSON.parse(text.replace(/(?<=")\d{4}-\d{2}-\d{2}(?=")/g, move)) as AircraftFacts;
}

export interface SchoolToday extends School {
  /** Holds airframe and powerplant as well, so that two can sign one thing. */
  readonly inspector: School['people']['renter'];
}

export async function foundToday(site: Site, name: string): Promise<SchoolToday> {
  const school = await foundSchool(name.toLowerCase(), trainerToday(`N0${name.toUpperCase()}`));
  const inspector = await makeInspector(school);
  await site.sql(
    `UPDATE certificate SET recent_experience_through = $1 WHERE operator_id = $2
    AND recent_experience_through > '2026-12-01'`,
    [dayAhead(300), school.operatorId],
  );
  return { ...school, inspector };
}

/** One more trainer for the school; gives the school as its acts see it. */
export async function withAircraft(school: SchoolToday, registration: string): Promise<SchoolToday> {
  const made = await writeInOperator(school.operatorId, (tx) =>
    register(tx, school.operatorId, school.baseId, trainerToday(registration)),
  );
  return { ...school, ...made };
}

/** The day lesson, so many days from now. */
export const lessonOn = (school: School, days: number) => ({
  ...dayLesson(school),
  departLocal: `${dayAhead(days)}T10:00`,
  arriveLocal: `${dayAhead(days)}T11:12`,
});

/** The same as the rules take it, without asking the application. */
export const flightOn = (days: number): ProposedFlight =>
  flightOf({
    departAt: instantOfLocalTime(`${dayAhead(days)}T10:00`, BASE.zone, 'departLocal'),
    arriveAt: instantOfLocalTime(`${dayAhead(days)}T11:12`, BASE.zone, 'arriveLocal'),
    purpose: 'instruction-for-hire',
    plannedTenths: 12,
    trainingWithin50Nm: known(true),
    controlledAirspace: known(false),
    transponderAirspace: known(false),
    adsbAirspace: known(false),
  });

export const NOT_COUNTED = unknown('how many of the items do not work');
