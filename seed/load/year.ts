import { writeInOperator } from '../../lib/db/scope';
import { dateColumn } from '../../lib/db/dates';
import { appendAudit } from '../../lib/records/audit';
import type { AircraftPlan } from '../shapes';
import { daysBefore, instantAt } from './calendar';
import * as ids from './ids';
import { compliancesOf, type CompliancePlan } from './inspections';
import { hoursPast, readMeters, ttisAt } from './meters';
import type { Happening, Stage } from './stage';

const READ_EVERY_DAYS = 14;

/** What is not a person's tap but fills the year: meter readings, inspections and tests, somebody who leaves. */
export function quietYear(stage: Stage, began: Date): Happening[] {
  return [
    ...stage.operator.aircraft.flatMap((plan) => inspections(stage, plan, began)),
    ...meterReadings(stage, began),
    ...departures(stage),
  ];
}

/** Inspections and tests of an aircraft; those of one moment go in together. What is older than the year goes in first. */
function inspections(stage: Stage, plan: AircraftPlan, began: Date): Happening[] {
  const { zone } = stage.baseOf(plan.registration);
  const byMoment = new Map<number, CompliancePlan[]>();
  for (const one of compliancesOf(hoursPast(plan, stage.now, zone), stage.now, zone)) {
    const moment = Math.max(one.at.getTime(), began.getTime());
    byMoment.set(moment, [...(byMoment.get(moment) ?? []), one]);
  }
  return [...byMoment].map(([moment, done]) => ({
    at: new Date(moment),
    what: `${plan.registration}: ${done.map((one) => one.kind).join(', ')}`,
    play: () => recordCompliances(stage, plan, new Date(moment), done),
  }));
}

async function recordCompliances(
  stage: Stage,
  plan: AircraftPlan,
  at: Date,
  done: readonly CompliancePlan[],
): Promise<void> {
  const { operator, operatorId } = stage;
  const enteredBy = ids.personId(operator.key, operator.enteredBy);
  const checker = operator.people.find((person) => person.key === operator.vorChecker)?.name ?? '';
  const approvedBy = { inspector: operator.inspector, station: operator.station, pilot: checker };
  await writeInOperator(operatorId, async (tx) => {
    await tx.compliance.createMany({
      data: done.map((one) => ({
        id: ids.demoId(
          `${operator.key}/done/${plan.registration}/${one.kind}/${one.doneOn}/${one.ttisTenths}`,
        ),
        operatorId,
        requirementId: ids.requirementId(operator.key, plan.registration, one.kind),
        doneOn: dateColumn(one.doneOn),
        ttisTenths: one.ttisTenths,
        wasDueTenths: one.wasDueTenths,
        testedToFt: one.testedToFt,
        approvedByAuthorised: true,
        approvedBy: approvedBy[one.by],
        recordedById: enteredBy,
        recordedAt: at,
      })),
    });
    const ttisTenths = Math.max(...done.map((one) => one.ttisTenths));
    await readMeters(tx, { key: operator.key, id: operatorId }, plan, {
      at,
      ttisTenths,
      readById: enteredBy,
    });
    await appendAudit(tx, operatorId, {
      at,
      personId: enteredBy,
      verb: 'demo.load',
      subjectKind: 'aircraft',
      subjectId: ids.aircraftId(operator.key, plan.registration),
      requestId: ids.demoId(`${operator.key}/done/${plan.registration}/${at.toISOString()}`),
      detail: {
        aircraft: plan.registration,
        complied: done.map((one) => ({ kind: one.kind, on: one.doneOn, ttisTenths: one.ttisTenths })),
      },
    });
  });
}

/** All meters every other week, and once more at the moment of loading. */
function meterReadings(stage: Stage, began: Date): Happening[] {
  const { operator, operatorId, now } = stage;
  const zone = operator.bases[0]?.zone ?? 'UTC';
  const readById = ids.personId(operator.key, operator.enteredBy);
  const read = (at: Date): Happening => ({
    at,
    what: 'meters read',
    play: () =>
      writeInOperator(operatorId, async (tx) => {
        for (const plan of operator.aircraft) {
          const past = hoursPast(plan, now, stage.baseOf(plan.registration).zone);
          const reading = { at, ttisTenths: ttisAt(past, at), readById };
          await readMeters(tx, { key: operator.key, id: operatorId }, plan, reading);
        }
        await appendAudit(tx, operatorId, {
          at,
          personId: readById,
          verb: 'demo.load',
          subjectKind: 'operator',
          subjectId: operatorId,
          requestId: ids.demoId(`${operator.key}/meters/${at.toISOString()}`),
          detail: { meters: operator.aircraft.map((plan) => plan.registration) },
        });
      }),
  });
  const happenings = [read(now)];
  for (let daysAgo = READ_EVERY_DAYS; ; daysAgo += READ_EVERY_DAYS) {
    const at = instantAt(now, zone, daysAgo, '19:00');
    if (at <= began) return happenings;
    happenings.push(read(at));
  }
}

/** Whoever left can no longer sign in or sign anything from that day on. */
function departures(stage: Stage): Happening[] {
  const { operator, operatorId, now } = stage;
  const zone = operator.bases[0]?.zone ?? 'UTC';
  return operator.people.flatMap((person) => {
    const { leftDaysAgo } = person;
    if (leftDaysAgo === undefined) return [];
    const at = instantAt(now, zone, leftDaysAgo, '17:00');
    const id = ids.personId(operator.key, person.key);
    const managerId = ids.personId(operator.key, operator.enteredBy);
    return [
      {
        at,
        what: `${person.name} leaves`,
        play: () =>
          writeInOperator(operatorId, async (tx) => {
            await tx.person.update({
              where: { operatorId_id: { operatorId, id } },
              data: {
                leftOn: dateColumn(daysBefore(now, zone, leftDaysAgo)),
                sessionVersion: { increment: 1 },
              },
            });
            await appendAudit(tx, operatorId, {
              at,
              personId: managerId,
              verb: 'demo.load',
              subjectKind: 'person',
              subjectId: id,
              requestId: ids.demoId(`${operator.key}/left/${person.key}`),
              detail: { left: person.name },
            });
          }),
      },
    ];
  });
}
