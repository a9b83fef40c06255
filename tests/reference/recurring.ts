/** What recurs: 91.409, 91.411, 91.413, 91.207(c) and (d), 91.171, part 39, 91.403. */
import type { AircraftFacts, RequirementFacts, RequirementKind } from '@/lib/rules/aircraft';
import type { UseOfAircraft } from '@/lib/rules/operations';
import { installed, trainingNearby } from './equipment';
import {
  addDays,
  and,
  endOfMonthAfter,
  lastDay,
  nothing,
  valueOf,
  type About,
  type Sheet,
  type Tri,
} from './sheet';

const aboutRow = (row: RequirementFacts | undefined): About =>
  row ? { kind: 'requirement', id: row.id } : nothing;

type State = 'good' | 'over' | 'unknown' | 'not-approved';

export function judgeRecurring(aircraft: AircraftFacts, use: UseOfAircraft, sheet: Sheet): void {
  const { requirements } = aircraft;
  const rowOf = (kind: RequirementKind) => requirements.find((row) => row.kind === kind);
  const say = (cite: string, row: RequirementFacts | undefined, state: State) => {
    if (state === 'unknown') sheet.unknown(cite, aboutRow(row));
    if (state === 'over' || state === 'not-approved') sheet.bar(cite, aboutRow(row));
  };
  /** Where the aircraft may fly on with what has lapsed, a limit stands instead. */
  const sayUnless = (cite: string, row: RequirementFacts | undefined, state: State, relieved: Tri) => {
    if ((state === 'over' || state === 'not-approved') && relieved === true) sheet.limit(cite);
    else if ((state === 'over' || state === 'not-approved') && relieved === null)
      sheet.unknown(cite, aboutRow(row));
    else say(cite, row, state);
  };
  const now = valueOf(aircraft.ttisTenths);
  if (now === null) sheet.unknown('91.417(a)(2)(i)');
  const after = now === null ? null : now + use.plannedTenths;
  const at = { day: lastDay(use), now, after };

  say(
    '91.409(a)',
    rowOf('annual'),
    within(rowOf('annual'), at, (on) => endOfMonthAfter(on, 12)),
  );
  hundredHours(aircraft, use, at, sheet);

  // 91.411: IFR in controlled airspace.
  const controlled = and(use.rules === 'IFR', valueOf(use.controlledAirspace));
  if (controlled === null) sheet.unknown('91.411(a)(1)');
  if (controlled === true) {
    const row = rowOf('static-and-altimeter');
    say(
      '91.411(a)(1)',
      row,
      within(row, at, (on) => endOfMonthAfter(on, 24)),
    );
    if (row) {
      const tested = row.testedToFt === null ? null : valueOf(row.testedToFt);
      const highest = valueOf(use.highestAltitudeFtMsl);
      say(
        '91.411(d)',
        row,
        tested === null || highest === null ? 'unknown' : highest > tested ? 'over' : 'good',
      );
    }
  }

  // 91.413: no use of a transponder; outside its airspace it stays off.
  if (installed(aircraft, 'transponder') > 0 && !outOfUse(aircraft, 'transponder')) {
    const row = rowOf('transponder');
    const state = within(row, at, (on) => endOfMonthAfter(on, 24));
    const inside = valueOf(use.transponderAirspace);
    sayUnless('91.413(a)', row, state, inside === null ? null : !inside);
  }

  // 91.207(c), (d).
  const seats = valueOf(aircraft.type.seats);
  const carried = aircraft.type.category === 'airplane' && seats !== 1 && installed(aircraft, 'elt') > 0;
  if (carried && !outOfUse(aircraft, 'elt')) {
    const nearby = trainingNearby(use);
    const inspection = rowOf('elt-inspection');
    sayUnless(
      '91.207(d)',
      inspection,
      within(inspection, at, (on) => endOfMonthAfter(on, 12)),
      nearby,
    );
    const battery = rowOf('elt-battery');
    const marked = battery?.fixedExpiry ?? null;
    sayUnless(
      '91.207(c)(2)',
      battery,
      marked === null ? 'unknown' : lastDay(use) > marked ? 'over' : 'good',
      nearby,
    );
    sayUnless('91.207(c)(1)', battery, aircraft.eltUseMinutes > 60 ? 'over' : 'good', nearby);
  }

  // 91.171: IFR by VOR.
  const byVor = and(use.rules === 'IFR', valueOf(use.usesVor));
  if (byVor === null) sheet.unknown('91.171(a)(2)');
  if (byVor === true)
    say(
      '91.171(a)(2)',
      rowOf('vor-check'),
      within(rowOf('vor-check'), at, (on) => addDays(on, 30)),
    );

  if (!aircraft.directives.known) sheet.unknown('39.7');
  for (const row of requirements) {
    if (row.kind === 'directive') say('39.7', row, byItsOwn(row, at));
    if (row.kind === 'life-limit') say('91.403(c)', row, byItsOwn(row, at));
    if (row.kind === 'maker-interval' && row.binding) say('91.403(a)', row, byItsOwn(row, at));
  }
}

/** The flight's last day, and the time in service before and after it. */
interface When {
  readonly day: string;
  readonly now: number | null;
  readonly after: number | null;
}

/** Recorded, approved by somebody who could, and not of a day or an hour still to come. */
function trusted(row: RequirementFacts | undefined, { day, now }: When): State {
  const done = row && valueOf(row.lastDone);
  if (!done) return 'unknown';
  const approved = valueOf(done.approvedByAuthorised);
  if (approved === null) return 'unknown';
  const fits = done.on <= day && (now === null || done.ttisTenths <= now);
  return approved && fits ? 'good' : 'not-approved';
}

/** Trusted, and not run out on that day. */
function within(row: RequirementFacts | undefined, at: When, lastGood: (on: string) => string): State {
  const state = trusted(row, at);
  const done = row && valueOf(row.lastDone);
  return state === 'good' && done && at.day > lastGood(done.on) ? 'over' : state;
}

/** By the calendar, the hours and the mark of its own row, whichever comes first. No grace. */
function byItsOwn(row: RequirementFacts, at: When): State {
  const { day, after } = at;
  const { intervalMonths, intervalDays, intervalTenths, fixedExpiry } = row;
  const intervals = [intervalMonths, intervalDays, intervalTenths].some((one) => one !== null);
  const done = valueOf(row.lastDone);
  // A date marked on the part decides alone, without a record of when it was fitted.
  if (done === null && (intervals || fixedExpiry === null)) return 'unknown';
  // Run out or not: who approved it is not known, and no permit stands in for that.
  if (done !== null && trusted(row, at) === 'unknown') return 'unknown';
  if (fixedExpiry !== null && day > fixedExpiry) return 'over';
  if (done === null) return 'good';
  if (intervalMonths !== null && day > endOfMonthAfter(done.on, intervalMonths)) return 'over';
  if (intervalDays !== null && day > addDays(done.on, intervalDays)) return 'over';
  // Without a time in service 91.417(a)(2)(i) bars already.
  if (intervalTenths !== null && after !== null && after > done.ttisTenths + intervalTenths) return 'over';
  // Nothing it is measured by: only a directive is met for good by one compliance.
  if (!intervals && fixedExpiry === null && row.kind !== 'directive') return 'unknown';
  return trusted(row, at);
}

/** 91.409(b) and 141.39(a)(3): the next is due 100 h after the last, or after when that was due, if it was late. */
export function hundredHourDue(requirements: readonly RequirementFacts[]): number | null {
  const row = requirements.find(({ kind }) => kind === 'hundred-hour');
  const done = row && valueOf(row.lastDone);
  if (!done) return null;
  const due = Math.min(done.ttisTenths, done.wasDueTenths ?? done.ttisTenths) + 1000;
  const annual = requirements.find(({ kind }) => kind === 'annual');
  const one = annual && valueOf(annual.lastDone);
  // An annual satisfies (b) too; a late one pays back like any other, from the due point it answered.
  if (!one || valueOf(one.approvedByAuthorised) !== true || one.ttisTenths <= done.ttisTenths) return due;
  return Math.min(one.ttisTenths, one.wasDueTenths ?? due) + 1000;
}

type Done = Extract<RequirementFacts['lastDone'], { known: true }>['value'];

/** Whether the last inspection that counts was 100 hours or more late. */
function whole100Late(requirements: readonly RequirementFacts[], done: Done): boolean {
  const annual = requirements.find(({ kind }) => kind === 'annual');
  const one = annual && valueOf(annual.lastDone);
  const byAnnual = one && valueOf(one.approvedByAuthorised) === true && one.ttisTenths > done.ttisTenths;
  if (!byAnnual) return done.wasDueTenths !== null && done.ttisTenths - done.wasDueTenths >= 1000;
  const due = Math.min(done.ttisTenths, done.wasDueTenths ?? done.ttisTenths) + 1000;
  return one.ttisTenths - (one.wasDueTenths ?? due) >= 1000;
}

function hundredHours(aircraft: AircraftFacts, use: UseOfAircraft, at: When, sheet: Sheet): void {
  const row = aircraft.requirements.find(({ kind }) => kind === 'hundred-hour');
  const enRoute = use.purpose === 'to-inspection';
  // Training and solo of a part 141 school are under the same rule.
  const solo = use.purpose === 'student-solo' ? valueOf(aircraft.part141) : false;
  const asked: Tri = use.hire ? true : solo;
  if (asked === false && !(enRoute && row)) return;
  const cite = use.hire || enRoute ? '91.409(b)' : '141.39(a)(3)';
  const about = aboutRow(row);
  const done = row && valueOf(row.lastDone);
  if (asked === null) return sheet.unknown(cite, about);
  const state = trusted(row, at);
  if (state === 'unknown') sheet.unknown(cite, about);
  if (state === 'not-approved') sheet.bar(cite, about);
  const { after } = at;
  if (!row || !done) return;
  // An excess of a whole interval: a person works it out.
  if (whole100Late(aircraft.requirements, done)) sheet.bar(cite, about);
  if (after === null) return;
  const due = hundredHourDue(aircraft.requirements) ?? 0;
  if (after <= due) return;
  if (enRoute && after <= due + 100) sheet.limit(cite);
  else sheet.bar(cite, about);
}

/** Every installed one is out of use under a deferral. */
export function outOfUse(aircraft: AircraftFacts, fn: 'transponder' | 'elt'): boolean {
  return aircraft.equipment
    .filter((row) => row.function === fn && row.installed > 0)
    .every((row) => {
      if (!row.confirmed.known) return false;
      let left = row.installed;
      for (const d of aircraft.discrepancies) {
        if (d.kind !== 'inoperative' || d.equipmentId !== row.id || d.deferral === null) continue;
        left -= valueOf(d.inoperativeCount) ?? 0;
      }
      return left <= 0;
    });
}
