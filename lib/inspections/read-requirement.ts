import { z } from 'zod';
import { query } from '../access/service';
import { calendarDate, calendarDateOrNull, instant } from '../db/dates';
import { aircraftFacts, readAircraft } from '../fleet/facts';
import { nameIn, namesOf } from '../people/names';
import { readSigner, signerFacts } from '../people/signer';
import { Refusal } from '../problems';
import { markOf, VOUCHED, type CarriedMark } from '../records/carried-mark';
import { dayAtBase } from '../records/signature';
import type { AircraftFacts, RequirementKind } from '../rules/aircraft';
import { dueOf } from '../rules/due';
import type { CalendarDate, HoursTenths } from '../rules/facts';
import { countedTogether, type CountedTogether } from '../rules/part-91/91-213-judgements';
import { WORK_ROW } from '../work/entry';
import { workView, type WorkView } from '../work/work-view';
import { standingRecords } from './requirement';
import { WAYS, type WayToAnswer } from './work-of-requirement';
import { said } from '../words/said';

/** One time it was answered, as the record says. */
export interface ComplianceView {
  readonly id: string;
  readonly doneOn: CalendarDate;
  readonly ttisTenths: HoursTenths;
  readonly wasDueTenths: HoursTenths | null;
  readonly testedToFt: number | null;
  readonly newExpiry: CalendarDate | null;
  readonly approvedBy: string;
  readonly authorised: boolean | null;
  readonly recordedBy: string;
  readonly recordedAt: string;
  readonly inspectionId: string | null;
  /** It stood on paper before: who vouches for that. */
  readonly carried: CarriedMark | null;
  /** What the record says beyond date and hours, each with its name. */
  readonly details: readonly { readonly name: string; readonly value: string }[];
  /** A later record has taken its place; it stays in the history. */
  readonly superseded: boolean;
}

/** A deferral that a recorded annual or 100-hour passed without a word on it: 91.405(c). */
export interface OwedDisposition {
  readonly deferralId: string;
  readonly complianceId: string;
  readonly discrepancyId: string;
  readonly number: string;
  readonly title: string;
  readonly inspectedOn: CalendarDate;
  readonly method: 'removed' | 'deactivated';
  readonly removalSigned: boolean;
  /** Everything else that is out or limited: the hazard is asked of all together. */
  readonly together: readonly CountedTogether[];
}

export interface RequirementView {
  readonly id: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly zone: string;
  readonly today: CalendarDate;
  readonly ttisTenths: HoursTenths | null;
  readonly kind: RequirementKind;
  readonly name: string;
  readonly reference: string | null;
  readonly binding: boolean;
  readonly endedOn: CalendarDate | null;
  readonly way: WayToAnswer;
  readonly due: {
    readonly on: CalendarDate | null;
    readonly days: number | null;
    readonly tenths: HoursTenths | null;
    readonly remainingTenths: HoursTenths | null;
    readonly missing: string | null;
  };
  /** Newest first. */
  readonly history: readonly ComplianceView[];
  /** Work on it that is not part of an inspection, newest first; signed work is in the history too. */
  readonly work: readonly WorkView[];
  readonly owedDispositions: readonly OwedDisposition[];
  /** Requirements an inspection would answer, for the form that begins one. */
  readonly beside: readonly { readonly id: string; readonly kind: RequirementKind; readonly name: string }[];
  readonly openInspectionId: string | null;
  readonly eltUse: {
    readonly minutes: number;
    readonly rows: readonly {
      readonly id: string;
      readonly usedOn: CalendarDate;
      readonly minutes: number;
      readonly words: string;
      readonly by: string;
    }[];
  } | null;
  readonly me: { readonly name: string };
}

/** One thing that recurs: when it is due, every time it was answered, and what answers it now. */
export const readRequirement = query({
  verb: 'aircraft.read',
  input: z.object({ requirementId: z.uuid() }),
  async run({ tx, operatorId, actor, now }, { requirementId }): Promise<RequirementView> {
    const row = await tx.requirement.findUnique({
      where: { operatorId_id: { operatorId, id: requirementId } },
      include: {
        compliances: {
          include: { vouching: VOUCHED },
          orderBy: [{ doneOn: 'desc' }, { recordedAt: 'desc' }],
        },
        work: { where: { inspectionId: null }, include: WORK_ROW, orderBy: { startedAt: 'desc' } },
      },
    });
    const aircraft = row && (await readAircraft(tx, operatorId, row.aircraftId));
    if (!row || !aircraft)
      throw new Refusal('not_found', { say: said('Nothing of that kind falls due here.') });
    const facts = aircraftFacts(aircraft);
    const today = dayAtBase(now, aircraft.base.zone);
    const kind = row.kind as RequirementKind;
    const me = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const openInspection = await tx.inspection.findFirst({
      where: { operatorId, aircraftId: aircraft.id, state: { in: ['begun', 'entered'] } },
      select: { id: true },
    });
    const names = await namesOf(tx, [
      ...row.compliances.map(({ recordedById }) => recordedById),
      ...row.work.map(({ startedById }) => startedById),
      ...aircraft.eltUses.map(({ recordedById }) => recordedById),
    ]);
    const standing = new Set(standingRecords(row.compliances).map(({ id }) => id));
    const own = facts.requirements.find(({ id }) => id === row.id);
    const due = own && dueOf(own, facts.ttisTenths, facts.requirements);
    return {
      id: row.id,
      aircraftId: aircraft.id,
      registration: aircraft.registration,
      zone: aircraft.base.zone,
      today,
      ttisTenths: aircraft.ttisTenths,
      kind,
      name: row.name,
      reference: row.reference,
      binding: row.binding,
      endedOn: calendarDateOrNull(row.endedOn),
      way: WAYS[kind],
      due: {
        on: due?.on ?? null,
        days: due?.remainingDays(today) ?? null,
        tenths: due?.tenths ?? null,
        remainingTenths: due?.remainingTenths ?? null,
        missing: due?.missing ?? null,
      },
      history: row.compliances.map((done) => ({
        id: done.id,
        doneOn: calendarDate(done.doneOn),
        ttisTenths: done.ttisTenths,
        wasDueTenths: done.wasDueTenths,
        testedToFt: done.testedToFt,
        newExpiry: calendarDateOrNull(done.newExpiry),
        approvedBy: done.approvedBy,
        authorised: done.approvedByAuthorised,
        recordedBy: nameIn(names, done.recordedById),
        recordedAt: instant(done.recordedAt),
        inspectionId: done.inspectionId,
        carried: markOf(done.vouching),
        details: detailsSaid(done.details),
        superseded: !standing.has(done.id),
      })),
      work: row.work.map((work) => workView(work, { me, on: today, names, facts: facts.work })),
      owedDispositions: owedOf(facts, aircraft, row),
      beside: facts.requirements.map(({ id, kind: sort, name }) => ({ id, kind: sort, name })),
      openInspectionId: openInspection?.id ?? null,
      eltUse:
        kind === 'elt-battery'
          ? {
              minutes: facts.eltUseMinutes,
              rows: aircraft.eltUses
                .toSorted((a, b) => b.usedOn.getTime() - a.usedOn.getTime())
                .map(({ id, usedOn, minutes, words, recordedById }) => ({
                  id,
                  usedOn: calendarDate(usedOn),
                  minutes,
                  words,
                  by: nameIn(names, recordedById),
                })),
            }
          : null,
      me: { name: me.name },
    };
  },
});

const VOR_NAMES: Readonly<Record<string, string>> = {
  'test-signal': 'test signal',
  'surface-point': 'point on the surface',
  'airborne-point': 'airborne point',
  airway: 'on an airway',
  dual: 'two receivers against each other',
};

/** Details as the kinds write them (91.171(d), 91.417(a)(2)(v), records from papers); what is not there is left out. */
function detailsSaid(details: unknown): ComplianceView['details'] {
  const said = z
    .looseObject({
      method: z.string().nullish(),
      revision: z.string().nullish(),
      place: z.string().nullish(),
      errorTenths: z.array(z.number()).nullish(),
      papers: z.string().nullish(),
      why: z.string().nullish(),
    })
    .safeParse(details);
  if (!said.success) return [];
  const { method, revision, place, errorTenths, papers, why } = said.data;
  const errors = errorTenths?.map((tenths) => `${tenths / 10}°`).join(' and ');
  return [
    ['How', method && (VOR_NAMES[method] ?? method)],
    ['Revision', revision],
    ['Place', place],
    ['Bearing error', errors],
    ['Papers', papers],
    ['Corrects an earlier record', why],
  ].flatMap(([name, value]) => (name && value ? [{ name, value }] : []));
}

type Aircraft = NonNullable<Awaited<ReturnType<typeof readAircraft>>>;

/** Live deferrals that a record of this requirement, entered from papers after they began, says nothing about. */
function owedOf(
  facts: AircraftFacts,
  aircraft: Aircraft,
  requirement: { readonly id: string; readonly kind: string },
): readonly OwedDisposition[] {
  if (!['annual', 'hundred-hour'].includes(requirement.kind)) return [];
  const compliances = aircraft.requirements.find(({ id }) => id === requirement.id)?.compliances ?? [];
  const fromPapers = standingRecords(compliances).filter(({ inspectionId }) => inspectionId === null);
  return facts.discrepancies.flatMap((d) => {
    const { deferral } = d;
    if (!deferral?.inspectionsSince.some(({ disposition }) => disposition === null)) return [];
    const row = aircraft.discrepancies.find(({ id }) => id === d.id);
    const begunAt = row?.deferrals.find(({ id }) => id === deferral.id)?.begunAt;
    const answered = new Set(row?.determinations.map(({ complianceId }) => complianceId));
    const record = fromPapers.find(
      ({ id, recordedAt }) => begunAt !== undefined && recordedAt > begunAt && !answered.has(id),
    );
    if (!record) return [];
    return [
      {
        deferralId: deferral.id,
        complianceId: record.id,
        discrepancyId: d.id,
        number: d.number,
        title: d.title,
        inspectedOn: calendarDate(record.doneOn),
        method: deferral.method,
        removalSigned: deferral.maintenanceRecordSigned,
        together: countedTogether(facts, d),
      },
    ];
  });
}
