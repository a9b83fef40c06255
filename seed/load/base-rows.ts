import type { Tx } from '../../lib/db/client';
import { dateColumn } from '../../lib/db/dates';
import { appendAudit } from '../../lib/records/audit';
import { PAPER_KINDS } from '../../lib/rules/aircraft';
import type { AircraftPlan, OperatorPlan, PersonPlan } from '../shapes';
import { daysBefore, endOfMonth, monthsBefore, oddMarch } from './calendar';
import * as ids from './ids';
import { requirementsOf } from './inspections';
import { hoursPast, metersFor, ttisAt } from './meters';

/**
 * Writes an operator with its bases, people, types and aircraft as they stood when the invented year began, and one
 * audit row that says so. `began` is that moment.
 */
export async function writeBaseRows(
  tx: Tx,
  operator: OperatorPlan,
  passwordHash: string,
  now: Date,
  began: Date,
): Promise<void> {
  const operatorId = ids.operatorId(operator.key);
  const zone = operator.bases[0]?.zone ?? 'UTC';
  await tx.operator.create({
    data: { id: operatorId, name: operator.name, part141: operator.part141, createdAt: began },
  });
  await tx.base.createMany({
    data: operator.bases.map(({ key, ...base }) => ({
      id: ids.baseId(operator.key, key),
      operatorId,
      ...base,
    })),
  });
  await tx.person.createMany({
    data: operator.people.map((person) => ({
      id: ids.personId(operator.key, person.key),
      operatorId,
      name: person.name,
      email: person.email,
      passwordHash,
      passwordSetAt: began,
      roles: [...person.roles],
      homeBaseId: ids.baseId(operator.key, person.base),
      createdAt: began,
    })),
  });
  await tx.certificate.createMany({
    data: operator.people.flatMap((person) => certificatesOf(operator, person, now, zone)),
  });
  await tx.preventiveAuthorization.createMany({
    data: operator.people.flatMap((person) =>
      person.namedForPreventiveMaintenance === undefined
        ? []
        : [
            {
              id: ids.demoId(`${operator.key}/named/${person.key}`),
              operatorId,
              personId: ids.personId(operator.key, person.key),
              grantedById: ids.personId(operator.key, operator.enteredBy),
              grantedAt: began,
              words: person.namedForPreventiveMaintenance,
            },
          ],
    ),
  });
  await tx.aircraftType.createMany({
    data: operator.types.map(({ key, certificatedOn, ...type }) => ({
      id: ids.typeId(operator.key, key),
      operatorId,
      ...type,
      certificatedOn: certificatedOn === null ? null : dateColumn(certificatedOn),
    })),
  });
  for (const aircraft of operator.aircraft) await writeAircraft(tx, operator, aircraft, now, began);
  await appendAudit(tx, operatorId, {
    at: began,
    personId: ids.personId(operator.key, operator.enteredBy),
    verb: 'demo.load',
    subjectKind: 'operator',
    subjectId: operatorId,
    requestId: ids.demoId(`${operator.key}/load`),
    detail: {
      operator: operator.name,
      bases: operator.bases.map((base) => base.ident),
      people: operator.people.length,
      aircraft: operator.aircraft.map((aircraft) => aircraft.registration),
    },
  });
}

function certificatesOf(operator: OperatorPlan, person: PersonPlan, now: Date, zone: string) {
  return person.certificates.map((held) => ({
    id: ids.demoId(`${operator.key}/certificate/${held.number}`),
    operatorId: ids.operatorId(operator.key),
    personId: ids.personId(operator.key, person.key),
    kind: held.kind,
    number: held.number,
    grade: held.grade ?? null,
    ratings: [...(held.ratings ?? [])],
    issuedOn: dateColumn(monthsBefore(now, zone, 74)),
    expiresOn: held.ends === undefined ? null : dateColumn(oddMarch(now, zone, held.ends)),
    recentExperienceThrough:
      held.recentThroughMonths === undefined
        ? null
        : dateColumn(endOfMonth(now, zone, held.recentThroughMonths)),
    firstYearActivityMet: held.kind === 'inspection-authorization' ? true : null,
    authorisedToSign: held.authorisedToSign ?? null,
  }));
}

async function writeAircraft(
  tx: Tx,
  operator: OperatorPlan,
  plan: AircraftPlan,
  now: Date,
  began: Date,
): Promise<void> {
  const operatorId = ids.operatorId(operator.key);
  const id = ids.aircraftId(operator.key, plan.registration);
  const zone = operator.bases.find((base) => base.key === plan.base)?.zone ?? 'UTC';
  const part = (what: string) => ids.demoId(`${operator.key}/aircraft/${plan.registration}/${what}`);
  const equipment = (fn: string) => {
    const item = plan.equipment.find((one) => one.function === fn);
    if (!item) throw new Error(`${plan.registration} has no ${fn} on its equipment list`);
    return ids.equipmentId(operator.key, plan.registration, item.name);
  };
  await tx.aircraft.create({
    data: {
      id,
      operatorId,
      typeId: ids.typeId(operator.key, plan.type),
      baseId: ids.baseId(operator.key, plan.base),
      registration: plan.registration,
      serial: plan.serial,
      forHire: plan.forHire,
      standardCategory: true,
      manufacturedOn: dateColumn(plan.manufacturedOn),
      ...metersFor(plan, ttisAt(hoursPast(plan, now, zone), began)),
      ttisMeter: plan.ttisMeter,
      directivesReviewedOn: dateColumn(monthsBefore(now, zone, plan.directivesReviewedMonthsAgo)),
      withoutMel: plan.mel === null,
    },
  });
  await tx.equipment.createMany({
    data: plan.equipment.map(({ required, ...item }) => ({
      id: ids.equipmentId(operator.key, plan.registration, item.name),
      operatorId,
      aircraftId: id,
      ...item,
      requiredDayVfr: required.dayVfr,
      requiredNightVfr: required.nightVfr,
      requiredDayIfr: required.dayIfr,
      requiredNightIfr: required.nightIfr,
    })),
  });
  await tx.paper.createMany({
    data: PAPER_KINDS.map((kind) => ({
      id: part(`paper/${kind}`),
      operatorId,
      aircraftId: id,
      kind,
      reference: null,
      aboard: true,
      expires: kind === 'registration',
      validThrough:
        kind === 'registration' ? dateColumn(endOfMonth(now, zone, plan.registrationGoodMonths)) : null,
    })),
  });
  await tx.directive.createMany({
    data: plan.directives.map((directive) => ({
      id: part(`directive/${directive.number}`),
      operatorId,
      aircraftId: id,
      number: directive.number,
      title: directive.title,
      equipmentId: directive.equipment === null ? null : equipment(directive.equipment),
      requiresOperable: directive.equipment !== null,
    })),
  });
  await tx.storedLimit.createMany({
    data: plan.limits.map((limit) => ({
      id: part(`limit/${limit.measurement}`),
      operatorId,
      aircraftId: id,
      ...limit,
      sourceDate: dateColumn(daysBefore(now, zone, 700)),
    })),
  });
  await tx.requirement.createMany({
    data: requirementsOf(plan, now, zone).map(({ fixedExpiry, ...row }) => ({
      id: ids.requirementId(operator.key, plan.registration, row.kind),
      operatorId,
      aircraftId: id,
      ...row,
      fixedExpiry: fixedExpiry === null ? null : dateColumn(fixedExpiry),
    })),
  });
  if (plan.mel) {
    await tx.mel.create({
      data: {
        id: part('mel'),
        operatorId,
        aircraftId: id,
        reference: plan.mel.reference,
        letterAboard: true,
        letterReference: plan.mel.letterReference,
        extensionCategories: [...plan.mel.extensionCategories],
        extensionReference: plan.mel.extensionReference,
        enforceCategories: true,
      },
    });
    await tx.melItem.createMany({
      data: plan.mel.items.map(({ equipment: fn, ...item }) => ({
        id: part(`mel/${item.title}`),
        operatorId,
        melId: part('mel'),
        equipmentId: equipment(fn),
        ...item,
      })),
    });
  }
}
