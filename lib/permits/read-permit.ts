import { query } from '../access/service';
import { calendarDate, instant } from '../db/dates';
import { aircraftFacts, basePlace, readAircraft } from '../fleet/facts';
import { nameIn, namesOf } from '../people/names';
import { readSigner, signerFacts } from '../people/signer';
import { Refusal } from '../problems';
import { dayAtBase } from '../records/signature';
import type { CalendarDate } from '../rules/facts';
import { mayInspectForPermit } from '../rules/inspect-for-permit';
import type { Ruling } from '../rules/ruling';
import { applicationFacts, type ApplicationFacts } from './application';
import { coverable, coversOf, type Covered } from './covered';
import { partsOf } from './inspect-for-permit';
import { changedSince, PERMIT_ROW } from './permit-facts';
import { readPermitChoicesInput, readPermitInput } from './schema';
import { said } from '../words/said';

/** Whether a permit can be flown under, in one word. */
export type PermitStanding = 'ready' | 'inspection-owed' | 'not-yet' | 'over' | 'used';

export interface PermitView {
  readonly id: string;
  readonly asOf: string;
  readonly zone: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly serial: string;
  readonly standing: PermitStanding;
  readonly reference: string;
  readonly purpose: string;
  readonly issuedBy: string;
  readonly issuedOn: CalendarDate;
  readonly goodFrom: CalendarDate;
  readonly goodThrough: CalendarDate;
  readonly from: string;
  readonly to: string;
  readonly crew: string;
  readonly limits: readonly string[];
  /** `changed`: judged, deferred or observed again since, so the permit stands in for it no more. */
  readonly covers: readonly (Covered & { readonly changed: boolean })[];
  readonly asksInspection: boolean;
  readonly inspection: {
    readonly by: string;
    readonly certificateKind: string;
    readonly certificateNumber: string;
    readonly statement: string;
    readonly at: string;
    readonly hash: string;
  } | null;
  readonly releaseId: string | null;
  readonly recordedBy: string;
  readonly recordedAt: string;
  readonly hash: string;
  /** What the law says about the person looking, where an inspection is owed. */
  readonly me: { readonly name: string; readonly mayInspect: Ruling };
}

/** One recorded permit whole. Refuses `not_found`. */
export const readPermit = query({
  verb: 'permit.read',
  input: readPermitInput,
  async run({ tx, operatorId, actor, now }, { permitId }): Promise<PermitView> {
    const row = await tx.specialFlightPermit.findUnique({
      where: { operatorId_id: { operatorId, id: permitId } },
      include: { ...PERMIT_ROW, aircraft: { include: { base: true, type: true } } },
    });
    if (!row) throw new Refusal('not_found', { say: said('There is no such permit here.') });
    const { aircraft, inspection } = row;
    const { zone } = aircraft.base;
    const today = dayAtBase(now, zone);
    const covers = coversOf(row.covers);
    const changed = await changedSince(tx, operatorId, row);
    const me = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const { reference, purpose, issuedBy, crew, asksInspection, hash } = row;
    const goodFrom = calendarDate(row.goodFrom);
    const goodThrough = calendarDate(row.goodThrough);
    const inspectionOwed = asksInspection && inspection === null;
    return {
      id: row.id,
      asOf: instant(now),
      zone,
      aircraftId: aircraft.id,
      registration: aircraft.registration,
      typeName: aircraft.type.name,
      serial: aircraft.serial,
      standing: standingOf({ today, goodFrom, goodThrough, used: row.releases.length > 0, inspectionOwed }),
      reference,
      purpose,
      issuedBy,
      issuedOn: calendarDate(row.issuedOn),
      goodFrom,
      goodThrough,
      from: row.from.ident,
      to: row.to.ident,
      crew,
      limits: row.limits as readonly string[],
      covers: covers.map((one) => ({ ...one, changed: changed.has(one.id) })),
      asksInspection,
      inspection: inspection && {
        by: inspection.personName,
        certificateKind: inspection.certificateKind,
        certificateNumber: inspection.certificateNumber,
        statement: inspection.statement,
        at: instant(inspection.signedAt),
        hash: inspection.hash,
      },
      releaseId: row.releases[0]?.id ?? null,
      recordedBy: nameIn(await namesOf(tx, [row.recordedById]), row.recordedById),
      recordedAt: instant(row.signedAt),
      hash,
      me: {
        name: me.name,
        mayInspect: mayInspectForPermit(me, await partsOf(tx, operatorId, covers), today),
      },
    };
  },
});

/** The same words for a list: what stands in the way first. */
export function standingOf(of: {
  readonly today: CalendarDate;
  readonly goodFrom: CalendarDate;
  readonly goodThrough: CalendarDate;
  readonly used: boolean;
  readonly inspectionOwed: boolean;
}): PermitStanding {
  if (of.used) return 'used';
  if (of.today > of.goodThrough) return 'over';
  if (of.inspectionOwed) return 'inspection-owed';
  return of.today < of.goodFrom ? 'not-yet' : 'ready';
}

/** What the screen to record a permit offers, and the facts for the application of 21.199(a). */
export interface PermitChoices {
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly serial: string;
  readonly today: CalendarDate;
  readonly bases: readonly { readonly id: string; readonly ident: string; readonly name: string }[];
  readonly coverable: readonly Covered[];
  readonly application: ApplicationFacts;
  readonly me: { readonly name: string };
  /** Permits recorded for this aircraft, newest first. */
  readonly recorded: readonly {
    readonly id: string;
    readonly reference: string;
    readonly goodThrough: CalendarDate;
    readonly standing: PermitStanding;
  }[];
}

/** Choices for recording a permit of one aircraft. Refuses `not_found`. */
export const readPermitChoices = query({
  verb: 'permit.read',
  input: readPermitChoicesInput,
  async run({ tx, operatorId, actor, now }, { aircraftId }): Promise<PermitChoices> {
    const row = await readAircraft(tx, operatorId, aircraftId);
    if (!row || row.retiredOn)
      throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
    const bases = await tx.base.findMany({ where: { operatorId }, orderBy: { ident: 'asc' } });
    const base = basePlace(row.base);
    const today = dayAtBase(now, base.zone);
    const permits = await tx.specialFlightPermit.findMany({
      where: { operatorId, aircraftId },
      include: PERMIT_ROW,
      orderBy: { signedAt: 'desc' },
      take: 20,
    });
    return {
      aircraftId: row.id,
      registration: row.registration,
      typeName: row.type.name,
      serial: row.serial,
      today,
      bases: bases.map(({ id, ident, name }) => ({ id, ident, name })),
      coverable: coverable(row),
      application: applicationFacts(aircraftFacts(row), base, today, instant(now)),
      me: { name: actor.name },
      recorded: permits.map((permit) => ({
        id: permit.id,
        reference: permit.reference,
        goodThrough: calendarDate(permit.goodThrough),
        standing: standingOf({
          today,
          goodFrom: calendarDate(permit.goodFrom),
          goodThrough: calendarDate(permit.goodThrough),
          used: permit.releases.length > 0,
          inspectionOwed: permit.asksInspection && permit.inspection === null,
        }),
      })),
    };
  },
});
