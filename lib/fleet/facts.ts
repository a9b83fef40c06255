import { calendarDate, calendarDateOrNull, instant } from '../db/dates';
import type { Prisma, Tx } from '../db/client';
import type {
  AircraftFacts,
  AircraftTypeFacts,
  DeferralFacts,
  DiscrepancyFacts,
  EquipmentFacts,
  FindingKind,
  MelFacts,
  OwedTest,
  PaperFacts,
  PaperKind,
  RequirementFacts,
  RequirementKind,
  Severity,
  WorkFacts,
} from '../rules/aircraft';
import type { EquipmentFunction } from '../rules/aircraft';
import { factOf, known, unknown, type Fact } from '../rules/facts';
import { rulesFor, type HouseRuleVersion } from '../rules/house/house-rule';
import { readingOr } from '../rules/house/readings';
import { localDate } from '../rules/months';
import type { Place } from '../rules/operations';
import { carriedDetermination, carriedRecordSigned, type OtherDeferral } from './carried-determination';
import { toDeterminerRecord } from './determiner';
import { melItemNow } from './mel-item-now';
import { readHouse, type HouseOfAircraft } from './house-facts';

/** What has been flown or tested since a piece of work was signed. */
const SINCE_SIGNED = {
  checkFlight: true,
  signOff: { select: { signedAt: true } },
  tests: { where: { state: 'signed' } },
} as const satisfies Prisma.MaintenanceActionInclude;

/** Everything the rules need of an aircraft, in one query with a fixed number of joins. */
export const AIRCRAFT_FACTS = {
  type: true,
  base: true,
  operator: { select: { part141: true } },
  // What was taken off the list is no equipment any more.
  equipment: { where: { removedOn: null }, orderBy: { name: 'asc' } },
  mel: { include: { items: true } },
  papers: true,
  requirements: {
    where: { endedOn: null },
    include: { compliances: { orderBy: { recordedAt: 'desc' } } },
    orderBy: { name: 'asc' },
  },
  directives: { where: { endedOn: null } },
  discrepancies: {
    where: { state: { not: 'closed' } },
    orderBy: { number: 'asc' },
    include: {
      finding: { select: { station: true } },
      determinations: { orderBy: { signedAt: 'desc' } },
      deferrals: {
        orderBy: { begunAt: 'desc' },
        include: { determination: true, placards: true, end: true, work: true, extension: true },
      },
    },
  },
  // Only work that still stands between the aircraft and a flight: unsigned, or signed with a check flight or a test owed,
  // or not spoken about. All signed work ever done would make every answer slower with every year.
  work: {
    where: {
      OR: [
        { state: { in: ['started', 'entered'] } },
        {
          state: 'signed',
          checkFlight: null,
          OR: [{ checkFlightNeeded: null }, { checkFlightNeeded: true }],
        },
        { state: 'signed', testsOwed: { isEmpty: false } },
      ],
      // A signed correction speaks in the place of the entry it corrects.
      corrections: { none: { state: 'signed' } },
    },
    // What was flown and tested after an entry counts for its correction too; of a third correction it is asked anew.
    include: {
      ...SINCE_SIGNED,
      supersedes: { include: { ...SINCE_SIGNED, supersedes: { include: SINCE_SIGNED } } },
    },
  },
  eltUses: true,
} as const satisfies Prisma.AircraftInclude;

type RowAlone = Prisma.AircraftGetPayload<{ include: typeof AIRCRAFT_FACTS }>;
export type AircraftRow = RowAlone & { readonly house: HouseOfAircraft };
type DiscrepancyRow = AircraftRow['discrepancies'][number];
type DeferralRow = DiscrepancyRow['deferrals'][number];
type RequirementRow = AircraftRow['requirements'][number];

/** Reads one aircraft of the operator with all that can decide an answer, or null. */
export async function readAircraft(tx: Tx, operatorId: string, id: string): Promise<AircraftRow | null> {
  const [row] = await readSome(tx, { operatorId, id });
  return row ?? null;
}

/** Reads the whole fleet likewise, in order of registration. */
export const readFleet = (tx: Tx): Promise<AircraftRow[]> => readSome(tx, { retiredOn: null });

/** Reads these aircraft likewise, in order of registration; with `proposed` as if those rules of the house were set. */
export async function readSome(
  tx: Tx,
  where: Prisma.AircraftWhereInput,
  proposed: readonly HouseRuleVersion[] = [],
): Promise<AircraftRow[]> {
  const rows = await tx.aircraft.findMany({
    where,
    include: AIRCRAFT_FACTS,
    orderBy: { registration: 'asc' },
  });
  const house = await readHouse(
    tx,
    rows.map(({ id, typeId }) => ({ id, typeId })),
    proposed,
  );
  return rows.map((row) => ({ ...row, house: house(row) }));
}

/** Turns rows into the plain facts the rules take. A null column becomes an unknown that names itself. */
export function aircraftFacts(row: AircraftRow): AircraftFacts {
  return {
    id: row.id,
    registration: row.registration,
    type: typeFacts(row.type),
    standardCategory: factOf(row.standardCategory, `whether ${row.registration} is in standard category`),
    manufacturedOn: factOf(
      calendarDateOrNull(row.manufacturedOn),
      `when ${row.registration} was manufactured`,
    ),
    part141: factOf(row.operator.part141, 'whether the school is certificated under part 141'),
    ttisTenths: factOf(row.ttisTenths, `the total time in service of ${row.registration}`),
    equipment: row.equipment.map((item) => equipmentFacts(item, row.registration)),
    directives: row.directivesReviewedOn
      ? known(
          row.directives.map(({ id, number, title, equipmentId, requiresOperable }) => ({
            id,
            number,
            title,
            equipmentId,
            requiresOperable,
          })),
        )
      : unknown(`which airworthiness directives apply to ${row.registration}`),
    mel: melFacts(row),
    papers: row.papers.map(paperFacts),
    requirements: row.requirements.map(requirementFacts),
    discrepancies: row.discrepancies.map((discrepancy) => discrepancyFacts(row, discrepancy)),
    work: row.work.map((work) => workFacts(row, work)),
    eltUseMinutes: eltUseMinutes(row),
    houseRules: rulesFor(row.house.versions, row, (at) => localDate(at, row.base.zone)),
    lastOil: readingOr(row.house.lastOil, `how much oil ${row.registration} has`),
    lastWalkaround: readingOr(
      row.house.lastWalkaround,
      `when the last walkaround of ${row.registration} was finished`,
    ),
  };
}

/** The base of an aircraft as a place on the ground, with what a local flight meets there. */
export function basePlace(base: AircraftRow['base']): Place & {
  readonly transponderAirspace: Fact<boolean>;
  readonly adsbAirspace: Fact<boolean>;
  readonly controlledAirspace: Fact<boolean>;
} {
  return {
    ident: base.ident,
    latitudeDeg: base.latitudeDeg,
    longitudeDeg: base.longitudeDeg,
    zone: base.zone,
    repairAvailable: factOf(base.repairAvailable, `whether repair is to be had at ${base.ident}`),
    transponderAirspace: factOf(
      base.transponderAirspace,
      `whether ${base.ident} lies in transponder airspace`,
    ),
    adsbAirspace: factOf(base.adsbAirspace, `whether ${base.ident} lies in ADS-B airspace`),
    controlledAirspace: factOf(base.controlledAirspace, `whether ${base.ident} lies in controlled airspace`),
  };
}

function typeFacts(type: AircraftRow['type']): AircraftTypeFacts {
  const of = (what: string) => `${what} of type ${type.name}`;
  return {
    name: type.name,
    category: type.category as AircraftTypeFacts['category'],
    turbine: factOf(type.turbine, of('whether turbine or piston is the engine')),
    maxTakeoffWeightLb: factOf(type.maxTakeoffWeightLb, of('the maximum takeoff weight')),
    mmelPublished: factOf(
      type.mmelPublished,
      of('whether a master minimum equipment list is published, for the engine'),
    ),
    certificatedOn: factOf(calendarDateOrNull(type.certificatedOn), of('the certification date')),
    certificatedUnderPart23: factOf(
      type.certificatedUnderPart23,
      of('whether part 23 is the certification basis'),
    ),
    engines: type.engines,
    cooling: factOf(type.cooling as 'air' | 'liquid' | null, of('the engine cooling')),
    altitudeEngine: factOf(type.altitudeEngine, of('whether the engine is supercharged or turbocharged,')),
    retractableGear: factOf(type.retractableGear, of('whether the landing gear retracts,')),
    fuelTanks: factOf(type.fuelTanks, of('the number of fuel tanks')),
    seats: factOf(type.seats, of('the number of seats')),
    frontSeats: factOf(type.frontSeats, of('the number of front seats')),
    usesFuses: factOf(type.usesFuses, of('whether fuses or breakers protect the circuits')),
  };
}

function equipmentFacts(row: AircraftRow['equipment'][number], registration: string): EquipmentFacts {
  const { requiredDayVfr, requiredNightVfr, requiredDayIfr, requiredNightIfr } = row;
  const counted =
    requiredDayVfr !== null &&
    requiredNightVfr !== null &&
    requiredDayIfr !== null &&
    requiredNightIfr !== null
      ? {
          dayVfr: requiredDayVfr,
          nightVfr: requiredNightVfr,
          dayIfr: requiredDayIfr,
          nightIfr: requiredNightIfr,
        }
      : null;
  return {
    id: row.id,
    name: row.name,
    function: row.function as EquipmentFunction,
    jasc: row.jasc,
    installed: row.installed,
    vfrDayTypeDesign: factOf(row.vfrDayTypeDesign, `whether ${row.name} is VFR-day type design equipment`),
    requiredByList: factOf(counted, `whether the equipment list requires ${row.name}`),
    // A line from before the question is trusted as it was then.
    confirmed:
      row.origin === null || row.vouchingId !== null
        ? known(true)
        : unknown(`nobody has confirmed ${row.name} of ${registration} against its own documents`),
  };
}

function melFacts(row: AircraftRow): Fact<MelFacts | null> {
  // A list that a newer one replaced stays only for the deferrals that stand on it.
  const mel = row.mel.find(({ endedAt }) => endedAt === null);
  if (mel) {
    return known({
      reference: mel.reference,
      letterAboard: factOf(
        mel.letterAboard,
        `whether the letter of authorization is aboard ${row.registration}`,
      ),
      enforceCategories: mel.enforceCategories,
      extension:
        mel.extensionReference !== null && mel.extensionCategories.length > 0
          ? {
              categories: mel.extensionCategories as ('A' | 'B' | 'C' | 'D')[],
              reference: mel.extensionReference,
            }
          : null,
      items: mel.items.map((item) => ({
        id: item.id,
        equipmentId: item.equipmentId,
        title: item.title,
        category: item.category as 'A' | 'B' | 'C' | 'D',
        categoryADays: factOf(item.categoryADays, `the repair interval of MEL item ${item.title}`),
        installed: item.installed,
        requiredForDispatch: item.requiredForDispatch,
        allowed: { night: item.allowedNight, ifr: item.allowedIfr, hire: item.allowedHire },
        proviso: item.proviso,
        operatingProcedure: item.operatingProcedure,
        maintenanceProcedure: item.maintenanceProcedure,
      })),
    });
  }
  return row.withoutMel ? known(null) : unknown(`whether ${row.registration} has a minimum equipment list`);
}

function paperFacts(row: AircraftRow['papers'][number]): PaperFacts {
  const missing = `how long the ${row.kind.replaceAll('-', ' ')} is valid`;
  const validThrough: Fact<string | null> =
    row.expires === false ? known(null) : factOf(calendarDateOrNull(row.validThrough), missing);
  return {
    id: row.id,
    kind: row.kind as PaperKind,
    aboard: factOf(row.aboard, `whether the ${row.kind.replaceAll('-', ' ')} is aboard`),
    validThrough,
  };
}

/** The compliances that no later one supersedes, newest first by what they are about. */
function standingCompliances(row: RequirementRow): RequirementRow['compliances'] {
  const superseded = new Set(row.compliances.map((compliance) => compliance.supersedesId));
  return row.compliances
    .filter((compliance) => !superseded.has(compliance.id))
    .sort((a, b) => b.doneOn.getTime() - a.doneOn.getTime() || b.ttisTenths - a.ttisTenths);
}

/** The newest compliance that no later one supersedes. */
const standingCompliance = (row: RequirementRow): RequirementRow['compliances'][number] | undefined =>
  standingCompliances(row)[0];

function requirementFacts(row: RequirementRow): RequirementFacts {
  const last = standingCompliance(row);
  return {
    id: row.id,
    kind: row.kind as RequirementKind,
    name: row.name,
    binding: row.binding,
    intervalMonths: row.intervalMonths,
    intervalDays: row.intervalDays,
    intervalTenths: row.intervalTenths,
    lastDone: last
      ? known({
          on: calendarDate(last.doneOn),
          ttisTenths: last.ttisTenths,
          wasDueTenths: last.wasDueTenths,
          approvedByAuthorised: factOf(
            last.approvedByAuthorised,
            `whether whoever approved "${row.name}" was authorized`,
          ),
        })
      : unknown(`when "${row.name}" was last done`),
    fixedExpiry: calendarDateOrNull(last?.newExpiry ?? row.fixedExpiry),
    testedToFt:
      row.kind === 'static-and-altimeter'
        ? factOf(last?.testedToFt, 'the altitude to which the altimeter system was tested')
        : null,
  };
}

function discrepancyFacts(aircraft: AircraftRow, row: DiscrepancyRow): DiscrepancyFacts {
  // Newest first: a judgement of severity made since takes the place of a finding within limits.
  const judged = row.determinations.find(({ kind }) => kind === 'within-limits' || kind === 'severity');
  const within = judged?.kind === 'within-limits' ? judged : undefined;
  const live = row.deferrals.find((deferral) => !deferral.end);
  return {
    id: row.id,
    number: row.number,
    title: row.title,
    kind: row.kind as FindingKind,
    severity: factOf(row.severity as Severity | null, `how severe ${row.number} is`),
    jasc: row.jasc,
    equipmentId: row.equipmentId,
    inoperativeCount: factOf(row.inoperativeCount, `how many of the items in ${row.number} do not work`),
    reportedAt: instant(row.openedAt),
    withinLimits: within
      ? {
          by: within.personName,
          on: calendarDate(within.signedOn),
          limit: within.limitText ?? '',
          source: within.limitSource ?? '',
        }
      : null,
    deferral: live ? deferralFacts(aircraft, row, live) : null,
    station: row.finding.station,
    mechanicJudged: mechanicJudged(row),
  };
}

/** Certificates under which somebody signs as a mechanic. */
const AS_MECHANIC: readonly string[] = ['mechanic', 'inspection-authorization', 'repair-station'];

/**
 * The newest judgement somebody signed here as a mechanic: severity, within limits, no hazard, or at an inspection. One that was carried
 * over from a paper is signed by whoever vouches for the paper, who judged nothing.
 */
function mechanicJudged({ determinations }: DiscrepancyRow): DiscrepancyFacts['mechanicJudged'] {
  const signed = determinations.find(
    ({ certificateKind, vouchingId }) => vouchingId === null && AS_MECHANIC.includes(certificateKind),
  );
  return signed ? { by: signed.personName, on: calendarDate(signed.signedOn) } : null;
}

/** A required inspection for 91.405(c): annual or 100-hour. */
const ENDS_DEFERRALS: readonly string[] = ['annual', 'hundred-hour'];

function deferralFacts(aircraft: AircraftRow, discrepancy: DiscrepancyRow, row: DeferralRow): DeferralFacts {
  const begunOn = localDate(instant(row.begunAt), aircraft.base.zone);
  const inspected = discrepancy.determinations.filter(
    (entry) => entry.kind === 'inspected-at-inspection' && entry.deferralId === row.id,
  );
  const inspectedAt = (done: RequirementRow['compliances'][number]) =>
    inspected.some(
      (entry) =>
        entry.complianceId === done.id ||
        (entry.inspectionId !== null && entry.inspectionId === done.inspectionId),
    );
  return {
    id: row.id,
    basis: row.basis as DeferralFacts['basis'],
    method: row.method as DeferralFacts['method'],
    deactivationIsMaintenance: row.deactivationIsMaintenance,
    maintenanceRecordSigned:
      row.work.some((work) => work.state === 'signed') || carriedRecordSigned(row.determination),
    determination:
      row.determination.vouchingId === null
        ? known({
            by: toDeterminerRecord(row.determination.content, row.determination.personName),
            on: calendarDate(row.determination.signedOn),
          })
        : carriedDetermination(
            row.determination,
            discrepancy,
            otherDeferrals(aircraft, discrepancy),
            aircraft.base.zone,
          ),
    placardPlaced:
      row.placards.length > 0 && row.placards.every((placard) => placard.placedAt && !placard.removedAt),
    eltRemoval: row.eltFirstRemovedOn
      ? {
          firstRemovedOn: calendarDate(row.eltFirstRemovedOn),
          recordComplete: row.eltRecordComplete === true,
        }
      : null,
    melItemId: melItemNow(row.melItemId, aircraft.mel),
    extendedThrough: calendarDateOrNull(row.extension?.untilOn ?? null),
    melProceduresDone: row.melProceduresDone,
    recordedOn: calendarDate(row.recordedOn),
    inspectionsSince: aircraft.requirements
      .filter((requirement) => ENDS_DEFERRALS.includes(requirement.kind))
      .flatMap((requirement) =>
        requirement.compliances
          // A record corrected since says nothing; its correction does.
          .filter((done) => !requirement.compliances.some((other) => other.supersedesId === done.id))
          .filter((done) => done.recordedAt > row.begunAt && calendarDate(done.doneOn) >= begunOn)
          .map((done) => ({
            name: requirement.name,
            on: calendarDate(done.doneOn),
            disposition: inspectedAt(done) ? ('inspected' as const) : null,
          })),
      ),
  };
}

/** Every other live deferral of the aircraft. */
const otherDeferrals = (aircraft: AircraftRow, { id }: DiscrepancyRow): OtherDeferral[] =>
  aircraft.discrepancies
    .filter((other) => other.id !== id)
    .flatMap(({ number, openedAt, deferrals }) => {
      const live = deferrals.find((deferral) => !deferral.end);
      return live ? [{ number, openedAt, determination: live.determination }] : [];
    });

function workFacts(aircraft: AircraftRow, row: AircraftRow['work'][number]): WorkFacts {
  const flown = corrected(row).some((entry) => entry.checkFlight !== null);
  const checkFlight: WorkFacts['checkFlight'] = flown
    ? known('flown')
    : row.checkFlightNeeded === null
      ? unknown(`whether "${row.title}" could have changed flight characteristics`)
      : known(row.checkFlightNeeded ? 'owed' : 'not-needed');
  return {
    id: row.id,
    title: row.title,
    state: row.state as WorkFacts['state'],
    checkFlight,
    testsOwed: row.state === 'signed' ? testsStillOwed(aircraft, row) : [],
  };
}

type WorkOfAircraft = AircraftRow['work'][number];

/** A piece of work and the signed entries it corrects, the newest first. */
const corrected = (row: WorkOfAircraft) =>
  [row, row.supersedes, row.supersedes?.supersedes].filter((entry) => entry !== null && entry !== undefined);

/**
 * Tests owed after work, less those signed since: by work that names it, or by the test of 91.411 done on a later day. One
 * of the same day may have come before the work; only a test that names the work settles it then. The transponder test of
 * 91.413(a) is Appendix F; what 91.413(b) asks after work is Appendix E(c), so only the test for this very work settles that.
 */
function testsStillOwed(aircraft: AircraftRow, row: AircraftRow['work'][number]): OwedTest[] {
  const signedAt = corrected(row).at(-1)?.signOff?.signedAt;
  const testedSince = (kind: RequirementKind) =>
    aircraft.requirements
      .filter((requirement) => requirement.kind === kind)
      .flatMap(standingCompliances)
      .some(
        (done) =>
          signedAt !== undefined &&
          done.approvedByAuthorised === true &&
          done.recordedAt > signedAt &&
          row.completedOn !== null &&
          done.doneOn > row.completedOn,
      );
  const named = corrected(row)
    .flatMap(({ tests }) => tests)
    .map(({ workKind, part }) => `${workKind}/${part}`);
  const done: Record<OwedTest, boolean> = {
    'static-leak':
      named.some((test) => test.startsWith('static-test/')) ||
      named.includes('altimeter-transponder-test/instrument') ||
      testedSince('static-and-altimeter'),
    'altimeter-error':
      named.includes('altimeter-transponder-test/instrument') || testedSince('static-and-altimeter'),
    'transponder-error': named.includes('altimeter-transponder-test/avionics'),
  };
  return (row.testsOwed as OwedTest[]).filter((test) => !done[test]);
}

/**
 * Minutes of use since the battery now fitted; all of them when none is on record. A use on the day it was fitted may have
 * come after it, so it counts, whenever either was recorded.
 */
function eltUseMinutes(row: AircraftRow): number {
  const battery = row.requirements.find(({ kind }) => kind === 'elt-battery');
  const fitted = battery && standingCompliance(battery);
  return row.eltUses
    .filter((use) => !fitted || use.usedOn >= fitted.doneOn)
    .reduce((sum, use) => sum + use.minutes, 0);
}
