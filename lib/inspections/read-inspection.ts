import { z } from 'zod';
import { query, type Context } from '../access/service';
import { calendarDate, calendarDateOrNull, instant } from '../db/dates';
import { nameIn, namesOf } from '../people/names';
import { readSigner, signerFacts } from '../people/signer';
import { dayAtBase } from '../records/signature';
import type { AircraftFacts, DiscrepancyFacts } from '../rules/aircraft';
import type { CalendarDate, HoursTenths } from '../rules/facts';
import {
  INSPECTION_PARTS,
  inspectionStatement,
  standingAtInspection,
  type InspectionKind,
  type InspectionPart,
  type StandingAtInspection,
} from '../rules/part-43/43-11-inspection-entry';
import { countedTogether, type CountedTogether } from '../rules/part-91/91-213-judgements';
import type { Line } from '../rules/verdict';
import { mayDetermineNoHazard } from '../rules/who-may-determine';
import { whoCanSentence } from '../rules/who-may-sign';
import type { Ruling } from '../rules/ruling';
import {
  disposedAt,
  inspectionHash,
  itemsOf,
  listInForce,
  performanceOf,
  requireInspection,
  type InspectionRow,
  type InspectionWork,
  type SignedItem,
} from './inspection';
import { openAtInspection, openHash } from './open-at-inspection';
import type { Performance } from './schema';
import { whatTheLawAsks } from './sign-inspection';
import { mayGiveList, mayInspect, partToSign } from './who-inspects';

/** One logbook's entry of an inspection, and whether the person looking could sign it as it stands. */
export interface PartView {
  readonly part: InspectionPart;
  readonly entryHash: string;
  readonly signed: {
    readonly by: string;
    readonly certificateKind: string;
    readonly certificateNumber: string;
    readonly airworthy: boolean;
    readonly statement: string;
    readonly at: string;
    readonly hash: string;
  } | null;
  /** Null once signed. */
  readonly mine:
    | (Ruling & {
        readonly whoCan: string;
        readonly certificate: { readonly kind: string; readonly number: string } | null;
      })
    | null;
}

export interface OpenWriteUpView {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly standing: StandingAtInspection;
  readonly severity: string | null;
  readonly withinLimits: string | null;
}

export interface DeferredView {
  readonly deferralId: string;
  readonly discrepancyId: string;
  readonly number: string;
  readonly title: string;
  readonly basis: string;
  readonly method: 'removed' | 'deactivated';
  readonly removalSigned: boolean;
  readonly placard: string | null;
  readonly inspected: boolean;
  /** Everything else that is out or limited: the hazard is asked of all together. */
  readonly together: readonly CountedTogether[];
}

export interface InspectionView {
  readonly id: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly zone: string;
  readonly today: CalendarDate;
  readonly kind: InspectionKind;
  readonly state: string;
  readonly begunBy: string;
  readonly begunAt: string;
  readonly completedAt: string | null;
  readonly givenUpWhy: string | null;
  readonly visitId: string | null;
  /** The requirements it answers, by name. */
  readonly answers: readonly { readonly id: string; readonly name: string }[];
  readonly entry: {
    readonly extent: string | null;
    readonly checklist: string | null;
    readonly performance: Performance | null;
    readonly ttisTenths: HoursTenths | null;
    readonly completedOn: CalendarDate | null;
  };
  readonly onRecordTenths: HoursTenths | null;
  readonly open: readonly OpenWriteUpView[];
  readonly deferred: readonly DeferredView[];
  /** Hash of what stands open and its placards; demanded back with the list. */
  readonly openHash: string;
  readonly list: {
    readonly id: string;
    readonly dated: CalendarDate;
    readonly by: string;
    readonly items: readonly SignedItem[];
  } | null;
  readonly parts: readonly PartView[];
  /** What stands against each answer, beside the certificate; empty lists when nothing does, or nothing is entered yet. */
  readonly against: { readonly airworthy: readonly Line[]; readonly notAirworthy: readonly Line[] };
  readonly statements: { readonly airworthy: string; readonly notAirworthy: string | null };
  readonly me: {
    readonly name: string;
    readonly mayDetermine: Ruling;
    readonly mayGiveList: Ruling;
  };
}

/** One inspection whole, with everything that is asked of it next. */
export const readInspection = query({
  verb: 'inspection.read',
  input: z.object({ inspectionId: z.uuid() }),
  async run(context, { inspectionId }): Promise<InspectionView> {
    const { tx, operatorId, actor, now } = context;
    const inspection = await requireInspection(tx, operatorId, inspectionId);
    const { aircraft } = inspection;
    const today = dayAtBase(now, aircraft.base.zone);
    const me = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const names = await namesOf(tx, [inspection.begunById]);
    const answers = await tx.requirement.findMany({
      where: { operatorId, id: { in: inspection.requirementIds } },
      select: { id: true, name: true },
      orderBy: { name: 'asc' },
    });
    const { facts, open, placards } = await openAtInspection(context, inspection.aircraftId);
    const kind = inspection.kind as InspectionKind;
    const list = listInForce(inspection);
    const isOpen = inspection.state === 'begun' || inspection.state === 'entered';
    const disposed = disposedAt(inspection);
    return {
      id: inspection.id,
      aircraftId: aircraft.id,
      registration: aircraft.registration,
      typeName: aircraft.type.name,
      zone: aircraft.base.zone,
      today,
      kind,
      state: inspection.state,
      begunBy: nameIn(names, inspection.begunById),
      begunAt: instant(inspection.begunAt),
      completedAt: inspection.completedAt ? instant(inspection.completedAt) : null,
      givenUpWhy: inspection.givenUpWhy,
      visitId: inspection.visitId,
      answers,
      entry: {
        extent: inspection.extent,
        checklist: inspection.checklist,
        performance: performanceOf(inspection),
        ttisTenths: inspection.ttisTenths,
        completedOn: calendarDateOrNull(inspection.completedOn),
      },
      onRecordTenths: aircraft.ttisTenths,
      open: isOpen ? open.filter((d) => d.deferral === null).map(openView) : [],
      deferred: isOpen
        ? open.flatMap((d) => deferredView(facts, d, placards.get(d.id) ?? null, disposed))
        : [],
      openHash: openHash({ open, placards }),
      list: list && {
        id: list.id,
        dated: calendarDate(list.dated),
        by: list.personName,
        items: itemsOf(list),
      },
      parts: INSPECTION_PARTS.flatMap((part) => {
        const work = inspection.work.find((one) => one.part === part);
        return work ? [partView(inspection, work, part, me, today)] : [];
      }),
      against: await againstSigning(context, inspection),
      statements: {
        airworthy: inspectionStatement(kind, { airworthy: true }),
        notAirworthy:
          list && inspectionStatement(kind, { airworthy: false, listDated: calendarDate(list.dated) }),
      },
      me: {
        name: me.name,
        mayDetermine: mayDetermineNoHazard(me, aircraft.type.rating, today),
        mayGiveList: mayGiveList(me, inspection, today),
      },
    };
  },
});

const openView = (d: DiscrepancyFacts): OpenWriteUpView => ({
  id: d.id,
  number: d.number,
  title: d.title,
  standing: standingAtInspection(d),
  severity: d.severity.known ? d.severity.value : null,
  withinLimits: d.withinLimits && `${d.withinLimits.limit} (${d.withinLimits.source})`,
});

function deferredView(
  facts: AircraftFacts,
  d: DiscrepancyFacts,
  placard: string | null,
  disposed: ReadonlySet<string>,
): readonly DeferredView[] {
  if (!d.deferral) return [];
  return [
    {
      deferralId: d.deferral.id,
      discrepancyId: d.id,
      number: d.number,
      title: d.title,
      basis: d.deferral.basis,
      method: d.deferral.method,
      removalSigned: d.deferral.maintenanceRecordSigned,
      placard: d.deferral.placardPlaced ? placard : null,
      inspected: disposed.has(d.deferral.id),
      together: countedTogether(facts, d),
    },
  ];
}

function partView(
  inspection: InspectionRow,
  work: InspectionWork,
  part: InspectionPart,
  me: Parameters<typeof mayInspect>[0],
  today: CalendarDate,
): PartView {
  const ruling = mayInspect(me, inspection, part, true, today);
  const { signOff } = work;
  return {
    part,
    entryHash: inspectionHash(inspection, work),
    signed: signOff && {
      by: signOff.personName,
      certificateKind: signOff.certificateKind,
      certificateNumber: signOff.certificateNumber,
      airworthy: signOff.airworthy === true,
      statement: signOff.statement,
      at: instant(signOff.signedAt),
      hash: signOff.hash,
    },
    mine: signOff
      ? null
      : {
          allowed: ruling.allowed,
          lines: ruling.lines,
          whoCan: whoCanSentence(partToSign(inspection, part, true)),
          certificate: ruling.under?.certificate ?? null,
        },
  };
}

/** Asked as for somebody whose certificate reaches it: what is left then is about the aircraft, not about the person. */
async function againstSigning(
  context: Omit<Context, 'requestId'>,
  inspection: InspectionRow,
): Promise<InspectionView['against']> {
  if (inspection.state !== 'entered') return { airworthy: [], notAirworthy: [] };
  const somebody = {
    allowed: true,
    lines: [],
    under: { capacity: 'mechanic' as const, certificate: { number: 'any', kind: 'any' } },
  };
  const bars = async (airworthy: boolean) =>
    (await whatTheLawAsks(context, inspection, somebody, airworthy)).filter(
      ({ effect }) => effect === 'bars',
    );
  return { airworthy: await bars(true), notAirworthy: await bars(false) };
}
