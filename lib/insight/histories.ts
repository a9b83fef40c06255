import { calendarDate, calendarDateOrNull, instant } from '../db/dates';
import { dayAtBase } from '../records/signature';
import { repairDeadline } from '../rules/advisory/mmel-repair-categories';
import type { FindingKind, Severity } from '../rules/aircraft';
import { factOf } from '../rules/facts';
import { triage } from '../rules/findings/triage';
import type {
  AircraftHistory,
  DeferralHistory,
  Judged,
  RequirementHistory,
  WriteUpHistory,
} from '../rules/insight/history';
import type { Stretch } from '../rules/insight/spans';
import { endOfDay, lastDayWithinDays, startOfDay } from '../rules/months';
import type { AircraftRow, HistoryRows, WriteUpRow } from './history-rows';

type RequirementRow = HistoryRows['requirements'][number];
type ComplianceRow = RequirementRow['compliances'][number];
type WorkRow = HistoryRows['work'][number];

/** Rows to history: what of them the figures may know. */
export function historyOf(aircraft: AircraftRow, rows: HistoryRows): AircraftHistory {
  const { zone } = aircraft.base;
  const ofAircraft = (row: { readonly aircraftId: string }) => row.aircraftId === aircraft.id;
  const requirements = rows.requirements.filter(ofAircraft);
  const work = rows.work.filter(ofAircraft);
  const unsigned = (some: readonly WorkRow[]) => some.flatMap((one) => stretchOfWork(one, rows.endings));
  const recorded = requirements.flatMap(({ compliances }) => compliances.map(({ recordedAt }) => recordedAt));
  const firsts = [rows.firstRecords.get(aircraft.id), ...recorded].filter((at) => at !== undefined);
  const writeUps = rows.writeUps.filter(ofAircraft);
  const told = new Set<string | null>(writeUps.map(({ id }) => id));
  return {
    id: aircraft.id,
    registration: aircraft.registration,
    zone,
    knownFrom: firsts.length === 0 ? null : instant(firsts.toSorted((a, b) => +a - +b)[0] ?? new Date(0)),
    retiredFrom: aircraft.retiredOn && startOfDay(calendarDate(aircraft.retiredOn), zone),
    writeUps: writeUps.map((row) => {
      const own = work.filter(({ discrepancyId }) => discrepancyId === row.id);
      return writeUpHistory(row, aircraft, own, unsigned(own), requirements);
    }),
    // A correction begun long after its write-up was closed belongs here too.
    otherWork: unsigned(work.filter(({ discrepancyId }) => !told.has(discrepancyId))),
    requirements: requirements.flatMap((row) => requirementHistory(row, zone)),
  };
}

/** From when work began until it was signed or given up. */
function stretchOfWork(work: WorkRow, endings: HistoryRows['endings']): Stretch[] {
  const from = instant(work.startedAt);
  if (work.state === 'signed') {
    return work.signOff ? [{ from, until: instant(work.signOff.signedAt) }] : [];
  }
  if (work.state !== 'abandoned') return [{ from, until: null }];
  const end = endings.find(({ subjectId }) => subjectId === work.id || subjectId === work.inspectionId);
  return end ? [{ from, until: instant(end.at) }] : [];
}

function writeUpHistory(
  row: WriteUpRow,
  aircraft: AircraftRow,
  own: readonly WorkRow[],
  work: readonly Stretch[],
  requirements: readonly RequirementRow[],
): WriteUpHistory {
  return {
    id: row.id,
    number: row.number,
    title: row.title,
    jasc: row.jasc,
    openedAt: instant(row.openedAt),
    closedAt: row.closedAt && instant(row.closedAt),
    closedHow: row.closedHow,
    judged: judgements(row),
    deferrals: row.deferrals.map((deferral) => deferralHistory(deferral, row, aircraft, own, requirements)),
    work,
  };
}

/** How it was left at its opening, and every judgement since. A finding within limits keeps the kind and makes it a watch. */
function judgements(row: WriteUpRow): Judged[] {
  const signed = row.determinations.filter(({ kind }) => kind !== 'inspected-at-inspection');
  const judgedAnew = signed.some(({ kind }) => kind === 'severity');
  const opening: Judged = {
    at: instant(row.openedAt),
    by: 'opening',
    kind: judgedAnew ? kindAtOpening(row) : (row.kind as FindingKind),
    severity: severityAtOpening(row),
    withinLimits: false,
  };
  return signed.reduce<Judged[]>(
    (so, { kind, severity, signedAt, content }) => {
      const before = so.at(-1) ?? opening;
      const within = kind === 'within-limits';
      const said = (content as { readonly kind?: string } | null)?.kind;
      return [
        ...so,
        {
          at: instant(signedAt),
          by: 'person',
          kind: within ? before.kind : ((said as FindingKind | undefined) ?? before.kind),
          severity: within ? 'watch' : (severity as Severity | null),
          withinLimits: within,
        },
      ];
    },
    [opening],
  );
}

/** What the catalogue makes of the finding as it was reported; a write-up judged since carries the judged kind. */
function kindAtOpening({ finding, kind }: WriteUpRow): FindingKind {
  const reported = triage({
    findingKey: finding.findingKey,
    kind: finding.kind as FindingKind | null,
    jasc: null,
    measurements: finding.measurements as Record<string, number>,
    limits: [],
  }).kind;
  return reported.known ? reported.value : (kind as FindingKind);
}

/**
 * What counted at once: grounding, limiting, and a note of what is only looks. All else the opening leaves undecided, which
 * is what `lib/findings/open-write-up.ts` writes.
 */
function severityAtOpening(row: WriteUpRow): Severity | null {
  const proposed = row.proposedSeverity as Severity | null;
  if (proposed === 'grounding' || proposed === 'limiting') return proposed;
  return proposed === 'note' && kindAtOpening(row) === 'cosmetic' ? 'note' : null;
}

function deferralHistory(
  deferral: WriteUpRow['deferrals'][number],
  row: WriteUpRow,
  aircraft: AircraftRow,
  own: readonly WorkRow[],
  requirements: readonly RequirementRow[],
): DeferralHistory {
  return {
    id: deferral.id,
    begunAt: instant(deferral.begunAt),
    effectiveAt: effectiveAt(deferral, own),
    lapsesAt: lapsesAt(deferral, aircraft),
    endedAt: deferral.end && instant(deferral.end.endedAt),
    unspoken: unspokenSince(deferral, row, requirements, aircraft.base.zone),
  };
}

/** The last of: begun, every placard up, and the part 43 record signed where one is owed. Null while a step is owed. */
function effectiveAt(deferral: WriteUpRow['deferrals'][number], own: readonly WorkRow[]): string | null {
  const { placards } = deferral;
  const owed = deferral.method === 'removed' || deferral.deactivationIsMaintenance;
  const signed = own.flatMap(({ deferralId, signOff }) =>
    deferralId === deferral.id && signOff ? [signOff.signedAt] : [],
  );
  if (placards.length === 0 || placards.some(({ placedAt }) => placedAt === null)) return null;
  if (owed && signed.length === 0) return null;
  const firstSigned = signed.toSorted((a, b) => +a - +b).slice(0, owed ? 1 : 0);
  const steps = [deferral.begunAt, ...placards.flatMap(({ placedAt }) => placedAt ?? []), ...firstSigned];
  return instant(new Date(Math.max(...steps.map(Number))));
}

/** 91.207(f)(10)(ii). */
const ELT_REMOVED_DAYS = 90;

/** Midnight after the last day of the repair interval, extended or not, or of the days of a removed transmitter. */
function lapsesAt(deferral: WriteUpRow['deferrals'][number], aircraft: AircraftRow): string | null {
  const { zone } = aircraft.base;
  const days: string[] = [];
  if (deferral.eltFirstRemovedOn) {
    days.push(lastDayWithinDays(calendarDate(deferral.eltFirstRemovedOn), ELT_REMOVED_DAYS));
  }
  const list = aircraft.mel.find(({ items }) => items.some(({ id }) => id === deferral.melItemId));
  const item = list?.items.find(({ id }) => id === deferral.melItemId);
  if (list?.enforceCategories && item) {
    const category = item.category as 'A' | 'B' | 'C' | 'D';
    const deadline = repairDeadline(
      category,
      calendarDate(deferral.recordedOn),
      factOf(item.categoryADays, 'the interval'),
    );
    const extended = calendarDateOrNull(deferral.extension?.untilOn ?? null);
    if (extended !== null) days.push(extended);
    else if (deadline.known) days.push(deadline.value);
    else return instant(deferral.begunAt);
  }
  const last = days.sort()[0];
  return last === undefined ? null : endOfDay(last, zone);
}

/** 91.405(c): from each required inspection recorded since it began until its disposition was signed; lib/fleet/facts.ts. */
function unspokenSince(
  deferral: WriteUpRow['deferrals'][number],
  row: WriteUpRow,
  requirements: readonly RequirementRow[],
  zone: string,
): Stretch[] {
  const said = row.determinations.filter(
    ({ kind, deferralId }) => kind === 'inspected-at-inspection' && deferralId === deferral.id,
  );
  return requirements
    .filter(({ kind, endedOn }) => ['annual', 'hundred-hour'].includes(kind) && endedOn === null)
    .flatMap(standing)
    .filter(
      ({ recordedAt, doneOn }) =>
        recordedAt > deferral.begunAt && calendarDate(doneOn) >= dayAtBase(deferral.begunAt, zone),
    )
    .flatMap((done) => {
      const word = said.find(
        ({ complianceId, inspectionId }) =>
          complianceId === done.id || (inspectionId !== null && inspectionId === done.inspectionId),
      );
      const until = word ? instant(word.signedAt) : null;
      return word && word.signedAt <= done.recordedAt ? [] : [{ from: instant(done.recordedAt), until }];
    });
}

/** Compliances that no later record corrects. */
function standing({ compliances }: RequirementRow): ComplianceRow[] {
  const corrected = new Set(compliances.map(({ supersedesId }) => supersedesId));
  return compliances.filter(({ id }) => !corrected.has(id));
}

function requirementHistory(row: RequirementRow, zone: string): RequirementHistory[] {
  if (row.kind === 'hundred-hour' || (row.kind === 'maker-interval' && !row.binding)) return [];
  return [
    {
      id: row.id,
      name: row.name,
      kind: row.kind as RequirementHistory['kind'],
      intervalMonths: row.intervalMonths,
      intervalDays: row.intervalDays,
      intervalTenths: row.intervalTenths,
      fixedExpiry: calendarDateOrNull(row.fixedExpiry),
      addedAt: row.addedAt && instant(row.addedAt),
      endedOn: calendarDateOrNull(row.endedOn),
      done: standing(row).map((done) => {
        const on = calendarDate(done.doneOn);
        const sameDay = dayAtBase(done.recordedAt, zone) === on;
        return {
          on,
          countsFrom: sameDay ? instant(done.recordedAt) : endOfDay(on, zone),
          authorised: done.approvedByAuthorised === true,
          newExpiry: calendarDateOrNull(done.newExpiry),
        };
      }),
    },
  ];
}
