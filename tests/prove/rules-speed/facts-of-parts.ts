/** What the runs for one write-up, row, paper or piece of work are told, and what the house is told. No decision here either. */
import type {
  AircraftFacts,
  DiscrepancyFacts,
  PaperFacts,
  RequirementFacts,
  WorkFacts,
} from '@/lib/rules/aircraft';
import type { UseOfAircraft } from '@/lib/rules/operations';
import { isArea } from '@/lib/rules/walkaround/areas';
import { addDays, daysBetween, endOfMonthAfter } from './calendar';
import type { Given } from './conditions';
import { valueOf, type Counts } from './counts';
import { asked, hundredHours, lastDayOf } from './facts-of-flight';

/** What the run over the aircraft found out for the write-ups. */
export interface ForFindings {
  readonly kindOpen: boolean;
  /** Paragraphs that demands on a function bar or limit by. */
  readonly bars: ReadonlyMap<string, readonly string[]>;
  readonly limits: ReadonlyMap<string, readonly string[]>;
  /** Functions with a demand while nobody knows how many work. */
  readonly unknown: ReadonlySet<string>;
}

const CONTINUE = ['14cfr91.205(b)(11)', '14cfr91.205(c)(3)'];

/** What all write-ups of one aircraft have in common. */
export function commonFacts(aircraft: AircraftFacts, flight: Given, counts: Counts): Record<string, unknown> {
  const directives = valueOf(aircraft.directives) ?? [];
  return {
    ...flight,
    mel: aircraft.mel.known ? 'none' : 'unknown',
    powered: aircraft.type.engines >= 1 || !['glider', 'lighter-than-air'].includes(aircraft.type.category),
    directivesKnown: aircraft.directives.known,
    'directives.open': directives.filter((one) => one.requiresOperable && one.equipmentId === null).length,
    deferrals: aircraft.discrepancies.filter(({ deferral }) => deferral !== null).length,
    'need.flotation': wholeSeats(aircraft),
    'working.gps-navigator': counts.of('gps-navigator').working,
  };
}

function wholeSeats({ type }: AircraftFacts): number | null {
  const seats = valueOf(type.seats);
  return seats === null || !Number.isSafeInteger(seats) ? null : Math.max(1, seats);
}

export function findingFacts(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  use: UseOfAircraft,
  common: Record<string, unknown>,
  counts: Counts,
  found: ForFindings,
): Record<string, unknown> {
  const row = counts.row(d.equipmentId);
  const out = valueOf(d.inoperativeCount);
  const limits = d.withinLimits;
  const sourced =
    limits !== null && [limits.by, limits.limit, limits.source].every((text) => text.trim() !== '');
  const fn = row?.function ?? 'none';
  const bars = found.bars.get(fn) ?? [];
  const limited = found.limits.get(fn) ?? [];
  const directives = valueOf(aircraft.directives) ?? [];
  const others = counts.outOfRow(d.equipmentId ?? '').map((other) => valueOf(other.inoperativeCount));
  const counted = counts.of(row?.function ?? 'other');
  const { deferral } = d;
  return {
    ...common,
    kind: d.kind,
    severity: valueOf(d.severity),
    withinLimits: limits === null ? 'no' : sourced ? 'with a source' : 'without a source',
    listed: row !== undefined,
    confirmed: row?.confirmed.known ?? false,
    out,
    outWhole: Number.isSafeInteger(out),
    installed: row?.installed ?? 0,
    fn,
    working: counted.working,
    whole: Math.max(1, counted.installed),
    design: row ? valueOf(row.vfrDayTypeDesign) : null,
    asked: row ? asked(row, use) : null,
    remaining: others.includes(null)
      ? null
      : Math.max(
          0,
          others.reduce<number>((left, count) => left - (count ?? 0), row?.installed ?? 0),
        ),
    kindOpen: found.kindOpen,
    'part91.unknown': found.unknown.has(fn),
    'part91.bars': bars.length,
    'part91.limits': limited.length,
    'part91.continues': limited.some((cite) => CONTINUE.includes(cite)),
    'directives.naming': directives.filter((one) => one.requiresOperable && one.equipmentId === row?.id)
      .length,
    deferred: deferral !== null,
    ...(deferral === null ? {} : deferralFacts(deferral)),
    otherDeferrals: (common.deferrals as number) - (deferral === null ? 0 : 1),
  };
}

function deferralFacts(deferral: NonNullable<DiscrepancyFacts['deferral']>): Record<string, unknown> {
  const made = valueOf(deferral.determination);
  return {
    basis: deferral.basis,
    method: deferral.method,
    isMaintenance: deferral.deactivationIsMaintenance,
    recordSigned: deferral.maintenanceRecordSigned,
    placard: deferral.placardPlaced,
    eltRecord: deferral.eltRemoval?.recordComplete ?? null,
    determined: made !== null,
    grade: made?.by.pilotGrade ?? null,
    rated: made?.by.pilotRatedForAircraft ?? false,
    ratings: made?.by.mechanicRatings.length ?? 0,
    repairStation: made?.by.repairStation ?? false,
    determinedOn: made?.on ?? null,
    recordedOn: deferral.recordedOn,
    inspections: deferral.inspectionsSince.map(({ disposition }) => disposition),
  };
}

/** A row with an interval of its own: directive, life limit, maker's interval. */
export function rowFacts(aircraft: AircraftFacts, row: RequirementFacts, use: UseOfAircraft): Given {
  const { intervalMonths, intervalDays, intervalTenths, fixedExpiry } = row;
  const done = valueOf(row.lastDone);
  const now = valueOf(aircraft.ttisTenths);
  const ends = [
    fixedExpiry,
    done && intervalMonths !== null ? endOfMonthAfter(done.on, intervalMonths) : null,
    done && intervalDays !== null ? addDays(done.on, intervalDays) : null,
  ].filter((date) => date !== null);
  return {
    kind: row.kind,
    binding: row.binding,
    lastDay: lastDayOf(use),
    ttis: now,
    after: now === null ? null : now + use.plannedTenths,
    done: done !== null,
    on: done?.on ?? null,
    at: done?.ttisTenths ?? null,
    approved: done ? valueOf(done.approvedByAuthorised) : null,
    fixedExpiry,
    interval: intervalMonths !== null || intervalDays !== null || intervalTenths !== null,
    through: ends.sort()[0] ?? null,
    due: done && intervalTenths !== null ? done.ttisTenths + intervalTenths : null,
  };
}

export const paperFacts = (paper: PaperFacts, use: UseOfAircraft): Given => ({
  kind: paper.kind,
  lastDay: lastDayOf(use),
  aboard: valueOf(paper.aboard),
  endKnown: paper.validThrough.known,
  ends: valueOf(paper.validThrough),
});

export const workFacts = (work: WorkFacts, flight: Given, counts: Counts): Given => ({
  ...flight,
  state: work.state,
  checkFlight: valueOf(work.checkFlight),
  testsOwed: work.testsOwed,
  'transponder.items': counts.of('transponder').items,
  'transponder.inUse': counts.of('transponder').inUse,
});

const ageOf = (at: string | undefined, use: UseOfAircraft): number | null =>
  at === undefined ? null : Date.parse(use.departAt) - Date.parse(at);

/** What rules of the house read. */
export function houseFacts(aircraft: AircraftFacts, use: UseOfAircraft, limited: boolean): Given {
  const { discrepancies } = aircraft;
  const deferrals = discrepancies.flatMap(({ deferral }) => (deferral ? [deferral] : []));
  const unjudged = discrepancies.filter(({ mechanicJudged }) => mechanicJudged === null);
  const oil = valueOf(aircraft.lastOil);
  return {
    light: use.light,
    rules: use.rules,
    purpose: use.purpose,
    limited,
    deferrals: deferrals.length,
    'deferral.days': deferrals.map(({ recordedOn }) => daysBetween(recordedOn, lastDayOf(use))),
    'oil.age': ageOf(oil?.at, use),
    'oil.tenths': oil?.tenthsQuart ?? null,
    'walk.age': ageOf(valueOf(aircraft.lastWalkaround)?.at, use),
    'unjudged.stations': unjudged.map(({ station }) => station),
    'unjudged.chapters': unjudged.map(({ jasc }) => jasc.slice(0, 2)),
    'unjudged.unplaced': unjudged
      .filter(({ station }) => !isArea(station))
      .map(({ jasc }) => jasc.slice(0, 2)),
    'left.hundred': hoursLeft(aircraft, use, (row) => row.kind === 'hundred-hour'),
    'left.all': hoursLeft(
      aircraft,
      use,
      (row) => row.kind === 'hundred-hour' || (row.binding && row.intervalTenths !== null),
    ),
  };
}

/** Hours left after the flight, row by row; null where they are not known. */
function hoursLeft(
  { requirements, ttisTenths }: AircraftFacts,
  use: UseOfAircraft,
  counts: (row: RequirementFacts) => boolean,
): (number | null)[] {
  const now = valueOf(ttisTenths);
  return requirements.filter(counts).map((row) => {
    const done = valueOf(row.lastDone);
    const due =
      row.kind === 'hundred-hour'
        ? hundredHours(requirements).due
        : done && row.intervalTenths !== null
          ? done.ttisTenths + row.intervalTenths
          : null;
    return now === null || due === null ? null : due - now - use.plannedTenths;
  });
}
