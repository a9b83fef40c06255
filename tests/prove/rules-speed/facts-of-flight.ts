/**
 * The same facts the core is given, as the library reads them: one flat object of numbers, words, dates and lists. A fact that is
 * not known is null. Counting and calendar arithmetic only: nothing here decides.
 */
import {
  EQUIPMENT_FUNCTIONS,
  type AircraftFacts,
  type EquipmentFacts,
  type EquipmentFunction,
  type RequirementFacts,
  type RequirementKind,
} from '@/lib/rules/aircraft';
import type { UseOfAircraft } from '@/lib/rules/operations';
import { addDays, endOfMonthAfter, miles } from './calendar';
import { valueOf, type Counts } from './counts';

export const lastDayOf = ({ departOn, arriveOn }: UseOfAircraft): string =>
  departOn > arriveOn ? departOn : arriveOn;

/** One for each place; with several places a spare elsewhere serves none. */
const each = (places: number | null, installed: number): number | null =>
  places === null || !Number.isSafeInteger(places)
    ? null
    : Math.max(1, places > 1 ? Math.max(places, installed) : 1);

const PER_ENGINE: readonly EquipmentFunction[] = [
  'tachometer',
  'oil-pressure-gauge',
  'coolant-temperature-gauge',
  'oil-temperature-gauge',
  'manifold-pressure-gauge',
];
const WHOLE: readonly EquipmentFunction[] = [
  'anticollision-lights',
  'position-lights',
  'electrical-source',
  'generator',
];

function needs({ type }: AircraftFacts, counts: Counts): Record<string, unknown> {
  const given: Record<string, unknown> = { 'need.one': 1 };
  const installed = (fn: EquipmentFunction) => counts.of(fn).installed;
  for (const fn of PER_ENGINE) given[`need.${fn}`] = each(type.engines, installed(fn));
  for (const fn of WHOLE) given[`whole.${fn}`] = Math.max(1, installed(fn));
  const seats = valueOf(type.seats);
  given['need.fuel-quantity-gauge'] = each(valueOf(type.fuelTanks), installed('fuel-quantity-gauge'));
  given['need.seat-belts'] = each(seats, installed('seat-belts'));
  given['need.shoulder-harness'] = each(seats, installed('shoulder-harness'));
  given['need.front-harness'] = each(valueOf(type.frontSeats), installed('shoulder-harness'));
  given['need.flotation'] = seats === null || !Number.isSafeInteger(seats) ? null : Math.max(1, seats);
  for (const fn of EQUIPMENT_FUNCTIONS) {
    given[`installed.${fn}`] = counts.of(fn).installed;
    given[`working.${fn}`] = counts.of(fn).working;
  }
  return given;
}

/** What the equipment list asks for on this flight: night asks what day asks too, IFR what VFR asks. */
export function asked({ requiredByList }: EquipmentFacts, { light, rules }: UseOfAircraft): number | null {
  if (!requiredByList.known) return null;
  const { dayVfr, nightVfr, dayIfr, nightIfr } = requiredByList.value;
  const night = light === 'night';
  const ifr = rules === 'IFR';
  return Math.max(dayVfr, night ? nightVfr : 0, ifr ? dayIfr : 0, night && ifr ? nightIfr : 0);
}

function lines({ equipment }: AircraftFacts, use: UseOfAircraft): Record<string, unknown> {
  const confirmed = equipment.filter((row) => row.confirmed.known);
  return {
    'lines.confirmed': equipment.map((row) => row.confirmed.known),
    'lines.short': confirmed.map((row) => {
      const count = asked(row, use);
      return count === null ? null : count - row.installed;
    }),
    'lines.absentDesign': confirmed
      .filter(({ installed }) => installed === 0)
      .map(({ vfrDayTypeDesign }) => valueOf(vfrDayTypeDesign)),
  };
}

/** The removals of the transmitter that are on record and placarded. */
function removals({ discrepancies }: AircraftFacts, counts: Counts): Record<string, unknown> {
  const writeUps = discrepancies.filter(
    (d) => d.kind === 'inoperative' && counts.row(d.equipmentId)?.function === 'elt',
  );
  const dates = writeUps
    .flatMap(({ deferral }) =>
      deferral?.method === 'removed' && deferral.placardPlaced && deferral.eltRemoval?.recordComplete
        ? [deferral.eltRemoval.firstRemovedOn]
        : [],
    )
    .sort();
  const [first] = dates;
  return {
    'elt.writeUps': writeUps.length,
    'elt.removals': dates.length,
    'elt.removedOn': first ?? null,
    'elt.removedThrough': first === undefined ? null : addDays(first, 90),
  };
}

/** The record of one kind that a regulation sets. `through` is the last good day. */
function recordOf(
  name: string,
  row: RequirementFacts | undefined,
  lastGood: (on: string) => string,
): Record<string, unknown> {
  const done = row && valueOf(row.lastDone);
  return {
    [`${name}.there`]: row !== undefined,
    [`${name}.done`]: Boolean(done),
    [`${name}.on`]: done?.on ?? null,
    [`${name}.at`]: done?.ttisTenths ?? null,
    [`${name}.approved`]: done ? valueOf(done.approvedByAuthorised) : null,
    [`${name}.through`]: done ? lastGood(done.on) : null,
  };
}

/** 91.409(b): the last inspection that counts, an annual too, and when the next is due; an excess is paid back. */
export function hundredHours(rows: readonly RequirementFacts[]): {
  readonly due: number | null;
  readonly excess: number | null;
} {
  const of = (kind: RequirementKind) => {
    const row = rows.find((one) => one.kind === kind);
    return row ? valueOf(row.lastDone) : null;
  };
  const hundred = of('hundred-hour');
  if (hundred === null) return { due: null, excess: null };
  const next = (at: number, was: number | null) => Math.min(at, was ?? at) + 1000;
  let { ttisTenths: at, wasDueTenths: was } = hundred;
  const annual = of('annual');
  if (annual !== null && valueOf(annual.approvedByAuthorised) === true && annual.ttisTenths > at) {
    was = annual.wasDueTenths ?? next(at, was);
    at = annual.ttisTenths;
  }
  return { due: next(at, was), excess: was === null ? null : at - was };
}

function recurring({ requirements, ttisTenths }: AircraftFacts, use: UseOfAircraft): Record<string, unknown> {
  const of = (kind: RequirementKind) => requirements.find((row) => row.kind === kind);
  const months = (count: number) => (on: string) => endOfMonthAfter(on, count);
  const { due, excess } = hundredHours(requirements);
  const now = valueOf(ttisTenths);
  const tested = of('static-and-altimeter')?.testedToFt;
  return {
    ttis: now,
    after: now === null ? null : now + use.plannedTenths,
    ...recordOf('annual', of('annual'), months(12)),
    ...recordOf('hundred', of('hundred-hour'), () => ''),
    'hundred.due': due,
    'hundred.latest': due === null ? null : due + 100,
    'hundred.excess': excess,
    ...recordOf('static', of('static-and-altimeter'), months(24)),
    'static.testedFt': tested ? valueOf(tested) : null,
    ...recordOf('transponder', of('transponder'), months(24)),
    ...recordOf('eltInspection', of('elt-inspection'), months(12)),
    'eltBattery.through': of('elt-battery')?.fixedExpiry ?? null,
    ...recordOf('vor', of('vor-check'), (on) => addDays(on, 30)),
  };
}

/** What every run is told of the flight. */
export const flightFacts = (use: UseOfAircraft): Record<string, unknown> => ({
  light: use.light,
  rules: use.rules,
  hire: use.hire,
  purpose: use.purpose,
  between: use.betweenSunsetAndSunrise,
  departOn: use.departOn,
  lastDay: lastDayOf(use),
  overWater: valueOf(use.overWaterBeyondGlide),
  transponderAirspace: valueOf(use.transponderAirspace),
  adsbAirspace: valueOf(use.adsbAirspace),
  controlled: valueOf(use.controlledAirspace),
  usesVor: valueOf(use.usesVor),
  highestFt: valueOf(use.highestAltitudeFtMsl),
  within50: valueOf(use.trainingWithin50Nm),
  distanceNm: miles(use.from, use.to),
  crewOnly: valueOf(use.crewOnly),
  grade: valueOf(use.pilotInCommandGrade),
  atcTransponder: use.atcTransponder,
  atcAdsb: use.atcAdsb,
  continuing: use.continuingToRepair,
  repairHere: valueOf(use.from.repairAvailable),
  repairThere: valueOf(use.to.repairAvailable),
});

/** What the run over the whole aircraft is told. */
export function aircraftFacts(
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  counts: Counts,
): Record<string, unknown> {
  const { type } = aircraft;
  const papers = (kind: string) => aircraft.papers.filter((paper) => paper.kind === kind).length;
  return {
    ...flightFacts(use),
    ...needs(aircraft, counts),
    ...lines(aircraft, use),
    ...removals(aircraft, counts),
    ...recurring(aircraft, use),
    category: type.category,
    engines: type.engines,
    turbine: valueOf(type.turbine),
    weightLb: valueOf(type.maxTakeoffWeightLb),
    mmelPublished: valueOf(type.mmelPublished),
    certificatedOn: valueOf(type.certificatedOn),
    part23: valueOf(type.certificatedUnderPart23),
    cooling: valueOf(type.cooling),
    altitudeEngine: valueOf(type.altitudeEngine),
    retractableGear: valueOf(type.retractableGear),
    seats: valueOf(type.seats),
    usesFuses: valueOf(type.usesFuses),
    manufacturedOn: valueOf(aircraft.manufacturedOn),
    standardCategory: valueOf(aircraft.standardCategory),
    part141: valueOf(aircraft.part141),
    directivesKnown: aircraft.directives.known,
    eltMinutes: aircraft.eltUseMinutes,
    'transponder.inUse': counts.of('transponder').inUse,
    'elt.inUse': counts.of('elt').inUse,
    'papers.airworthiness-certificate': papers('airworthiness-certificate'),
    'papers.registration': papers('registration'),
    'papers.flight-manual': papers('flight-manual'),
    'papers.weight-and-balance': papers('weight-and-balance'),
  };
}
