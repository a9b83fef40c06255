import type { Tx } from '../../lib/db/client';
import { writeInOperator } from '../../lib/db/scope';
import { dateColumn } from '../../lib/db/dates';
import { appendAudit } from '../../lib/records/audit';
import type { AircraftPlan } from '../shapes';
import { daysBefore, instantAt } from './calendar';
import * as ids from './ids';
import { compliancesOf, type CompliancePlan } from './inspections';
import { hoursPast, readMeters, ttisAt } from './meters';
import type { Happening, Stage } from './stage';

const READ_EVERY_DAYS = 28;

/** Done often and deciding nothing of the past year's releases: entered with the next reading of the meters. */
const ENTERED_LATER: readonly CompliancePlan['kind'][] = ['vor-check', 'maker-interval'];

interface Complied {
  readonly plan: AircraftPlan;
  readonly done: CompliancePlan;
}

/** What is not a person's tap but fills the year: meter readings, inspections and tests, somebody who leaves. */
export function quietYear(stage: Stage, began: Date): Happening[] {
  const all = stage.operator.aircraft.flatMap((plan) => {
    const { zone } = stage.baseOf(plan.registration);
    return compliancesOf(hoursPast(plan, stage.now, zone), stage.now, zone).map((done) => ({ plan, done }));
  });
  const later = all.filter(({ done }) => ENTERED_LATER.includes(done.kind));
  const atOnce = all.filter(({ done }) => !ENTERED_LATER.includes(done.kind));
  return [...inspections(stage, atOnce, began), ...meterReadings(stage, later, began), ...departures(stage)];
}

/** Inspections and tests; those of one aircraft and moment go in together. What is older than the year goes in first. */
function inspections(stage: Stage, all: readonly Complied[], began: Date): Happening[] {
  const { operator, operatorId } = stage;
  const byMoment = new Map<string, Complied[]>();
  for (const one of all) {
    const moment = `${one.plan.registration} ${Math.max(one.done.at.getTime(), began.getTime())}`;
    byMoment.set(moment, [...(byMoment.get(moment) ?? []), one]);
  }
  return [...byMoment.values()].flatMap((complied) => {
    const [first] = complied;
    if (!first) return [];
    const { plan } = first;
    const at = new Date(Math.max(first.done.at.getTime(), began.getTime()));
    return [
      {
        at,
        what: `${plan.registration}: ${complied.map(({ done }) => done.kind).join(', ')}`,
        play: () =>
          writeInOperator(operatorId, async (tx) => {
            await tx.compliance.createMany({ data: complied.map((one) => complianceRow(stage, one, at)) });
            const ttisTenths = Math.max(...complied.map(({ done }) => done.ttisTenths));
            const reading = { at, ttisTenths, readById: ids.personId(operator.key, operator.enteredBy) };
            await readMeters(tx, { key: operator.key, id: operatorId }, [{ plan, ...reading }]);
            await noteLoad(tx, stage, at, `done/${plan.registration}`, {
              aircraft: plan.registration,
              complied: complied.map(({ done }) => ({ kind: done.kind, on: done.doneOn })),
            });
          }),
      },
    ];
  });
}

function complianceRow(stage: Stage, { plan, done }: Complied, recordedAt: Date) {
  const { operator, operatorId } = stage;
  const checker = operator.people.find((person) => person.key === operator.vorChecker)?.name ?? '';
  const approvedBy = { inspector: operator.inspector, station: operator.station, pilot: checker };
  const { kind, doneOn, ttisTenths, wasDueTenths, testedToFt, by } = done;
  return {
    id: ids.demoId(`${operator.key}/done/${plan.registration}/${kind}/${doneOn}/${ttisTenths}`),
    operatorId,
    requirementId: ids.requirementId(operator.key, plan.registration, kind),
    doneOn: dateColumn(doneOn),
    ttisTenths,
    wasDueTenths,
    testedToFt,
    approvedByAuthorised: true,
    approvedBy: approvedBy[by],
    recordedById: ids.personId(operator.key, operator.enteredBy),
    recordedAt,
  };
}

/** All meters every four weeks and once more at the moment of loading, with what was done since the reading before. */
function meterReadings(stage: Stage, later: readonly Complied[], began: Date): Happening[] {
  const { operator, operatorId, now } = stage;
  const zone = operator.bases[0]?.zone ?? 'UTC';
  const readById = ids.personId(operator.key, operator.enteredBy);
  const moments = [now];
  for (let daysAgo = READ_EVERY_DAYS; ; daysAgo += READ_EVERY_DAYS) {
    const at = instantAt(now, zone, daysAgo, '19:00');
    if (at <= began) break;
    moments.unshift(at);
  }
  return moments.map((at, index) => ({
    at,
    what: 'meters read',
    play: () =>
      writeInOperator(operatorId, async (tx) => {
        const since = moments[index - 1] ?? new Date(0);
        const complied = later.filter(({ done }) => done.at > since && done.at <= at);
        await tx.compliance.createMany({ data: complied.map((one) => complianceRow(stage, one, at)) });
        const readings = operator.aircraft.map((plan) => {
          const past = hoursPast(plan, now, stage.baseOf(plan.registration).zone);
          return { plan, at, ttisTenths: ttisAt(past, at), readById };
        });
        await readMeters(tx, { key: operator.key, id: operatorId }, readings);
        await noteLoad(tx, stage, at, 'meters', {
          meters: operator.aircraft.map((plan) => plan.registration),
          complied: complied.map(({ plan, done }) => `${plan.registration} ${done.kind} ${done.doneOn}`),
        });
      }),
  }));
}

/** The audit row of something that was written without a person's tap. */
const noteLoad = (tx: Tx, stage: Stage, at: Date, name: string, detail: Record<string, unknown>) =>
  appendAudit(tx, stage.operatorId, {
    at,
    personId: ids.personId(stage.operator.key, stage.operator.enteredBy),
    verb: 'demo.load',
    subjectKind: 'operator',
    subjectId: stage.operatorId,
    requestId: ids.demoId(`${stage.operator.key}/${name}/${at.toISOString()}`),
    detail,
  });

/** Whoever left can no longer sign in or sign anything from that day on. */
function departures(stage: Stage): Happening[] {
  const { operator, operatorId, now } = stage;
  const zone = operator.bases[0]?.zone ?? 'UTC';
  return operator.people.flatMap((person) => {
    const { leftDaysAgo } = person;
    if (leftDaysAgo === undefined) return [];
    const at = instantAt(now, zone, leftDaysAgo, '17:00');
    const id = ids.personId(operator.key, person.key);
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
            await noteLoad(tx, stage, at, `left/${person.key}`, { left: person.name });
          }),
      },
    ];
  });
}
