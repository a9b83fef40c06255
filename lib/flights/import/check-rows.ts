/**
 * What an import would do, row by row, with everything that is wrong told at once. Pure: what is known of the school comes in as
 * `ImportContext`. Nothing is guessed: an aircraft, a person, a place or a time that is not certain is an error of its row.
 */
import type { HoursTenths, Instant } from '../../rules/facts';
import { clockInWords, dayInWords } from '../../rules/in-words';
import { localDate } from '../../rules/months';
import { isOver, planProblem } from '../plan-limits';
import { flightOf, type KnownAircraft, type KnownPilot } from './flight-of';
import { CSV_ID, type Column, type RowError, type WrittenFile, type WrittenFlight } from './parsed';
import { said } from '../../words/said';

/** A flight as it would be planned. */
export interface PlannedByFile {
  readonly aircraftId: string;
  readonly pilotId: string | null;
  readonly departAt: Instant;
  readonly arriveAt: Instant;
  readonly plannedTenths: HoursTenths | null;
  readonly words: string;
  readonly fromIdent: string | null;
  readonly toIdent: string | null;
  readonly rules: string | null;
  readonly purpose: string | null;
}

/** A plan that stands here and came out of a file. */
export interface StandingPlan extends PlannedByFile {
  readonly id: string;
  readonly uid: string;
  /** A release that stands was made for it: it is not touched any more. */
  readonly released: boolean;
}

export interface ImportContext {
  readonly now: Instant;
  /** Aircraft in service, by registration in capitals. */
  readonly aircraft: ReadonlyMap<string, KnownAircraft>;
  /** People by address in small letters. */
  readonly people: ReadonlyMap<string, KnownPilot>;
  /** Zone of every place the file names that is known. */
  readonly places: ReadonlyMap<string, string>;
  /** By uid. */
  readonly standing: ReadonlyMap<string, StandingPlan>;
  /** Numbers of flights that came out of a file and were cancelled since. */
  readonly cancelledHere: ReadonlySet<string>;
}

/** add, keep as it is, replace, cancel, leave alone (released), skip (over, or nothing to cancel), or wrong. */
export type RowDoes = 'add' | 'keep' | 'replace' | 'cancel' | 'released' | 'skip' | 'wrong';

export interface CheckedRow {
  readonly where: string;
  readonly uid: string;
  readonly does: RowDoes;
  /** Null where it could not be made out, and for a plan that is called off. */
  readonly flight: PlannedByFile | null;
  /** Registration, pilot and zone for the table, as far as known. */
  readonly shown: Shown | null;
  readonly standingId: string | null;
  readonly errors: readonly RowError[];
  readonly notes: readonly string[];
}

export interface Shown {
  readonly registration: string;
  readonly pilot: string | null;
  readonly zone: string;
}

export interface CheckedFile {
  /** Of the file as a whole; then there are no rows. */
  readonly errors: readonly string[];
  readonly notes: readonly string[];
  readonly rows: readonly CheckedRow[];
}

/** Flights one file may bring. Our own limit. */
export const MOST_FLIGHTS = 500;
const A_YEAR = 366 * 86_400_000;

export function checkRows(file: WrittenFile, context: ImportContext): CheckedFile {
  if (file.errors.length > 0) return { errors: file.errors, notes: file.notes, rows: [] };
  const rows = [...file.flights.map((flight) => checkRow(flight, context)), ...goneFromSeries(file, context)];
  const taken = rows.filter(({ does }) => does !== 'skip').length;
  const errors =
    taken > MOST_FLIGHTS ? [`The file has ${taken} flights; ${MOST_FLIGHTS} at most. Split it.`] : [];
  return { errors, notes: file.notes, rows: errors.length > 0 ? [] : rows };
}

function checkRow(written: WrittenFlight, context: ImportContext): CheckedRow {
  const standing = context.standing.get(written.uid) ?? null;
  const row = {
    where: written.where,
    uid: written.uid,
    flight: null,
    shown: null,
    standingId: standing?.id ?? null,
  };
  if (written.cancelled && !written.errors.some(({ column }) => column === 'id')) {
    return { ...row, errors: [], ...callOff(standing, context) };
  }
  const { fields, errors, notes } = flightOf(written, context);
  if (fields === null) return { ...row, does: 'wrong', errors, notes };
  const { flight, shown } = fields;
  const full = { ...row, flight, shown };
  if (isOver(flight.arriveAt, context.now)) {
    // Past rows are in every schedule that is sent again, right or wrong ones.
    return { ...full, does: 'skip', errors: [], notes: ['It is over already.'] };
  }
  const wrong = [...errors, ...limitErrors(flight, context.now)];
  if (wrong.length > 0) return { ...full, does: 'wrong', errors: wrong, notes };
  if (standing === null) {
    const again = context.cancelledHere.has(written.uid)
      ? ['It was planned and cancelled before. It will be planned again.']
      : [];
    return { ...full, does: 'add', errors: [], notes: [...notes, ...again] };
  }
  if (isSame(flight, standing)) return { ...full, does: 'keep', errors: [], notes };
  const usedAgain = idUsedAgain(written.uid, flight, shown, standing, context);
  if (usedAgain) return { ...full, does: 'wrong', errors: [usedAgain], notes };
  if (standing.released) {
    return { ...full, does: 'released', errors: [], notes: [...notes, RELEASED] };
  }
  return { ...full, does: 'replace', errors: [], notes };
}

const RELEASED = said(
  'It is released here already and differs from the file. It is left as it is: look at the release.',
);

function callOff(standing: StandingPlan | null, { now }: ImportContext): Pick<CheckedRow, 'does' | 'notes'> {
  if (standing === null) return { does: 'skip', notes: ['Called off, and nothing of it is planned here.'] };
  if (isOver(standing.arriveAt, now)) return { does: 'skip', notes: ['Called off, and over already.'] };
  if (standing.released) {
    return {
      does: 'released',
      notes: ['Called off there, but released here. Withdraw the release by hand.'],
    };
  }
  return { does: 'cancel', notes: ['Called off in the file.'] };
}

function limitErrors(flight: PlannedByFile, now: Instant): RowError[] {
  const problem = planProblem(flight);
  if (problem) return [{ column: problem.of satisfies Column, say: problem.say }];
  return Date.parse(flight.departAt) - Date.parse(now) > A_YEAR
    ? [{ column: 'depart', say: said('It is more than a year ahead.') }]
    : [];
}

/**
 * A row of a CSV whose id has a flight with another aircraft on another day: more likely an id used again than a flight that
 * moved, and taking it in would wipe the other one out. Not of iCalendar, whose UID is used once (RFC 5545, 3.8.4.7).
 */
function idUsedAgain(
  uid: string,
  flight: PlannedByFile,
  { zone }: Shown,
  standing: StandingPlan,
  { now, aircraft }: ImportContext,
): RowError | null {
  const dayOf = (plan: PlannedByFile, at = zone) => localDate(plan.departAt, at);
  const isOther = flight.aircraftId !== standing.aircraftId && dayOf(flight) !== dayOf(standing);
  if (!uid.startsWith(CSV_ID) || !isOther) return null;
  const one = [...aircraft.values()].find(({ id }) => id === standing.aircraftId);
  const home = one?.zone ?? zone;
  const when = `${dayInWords(dayOf(standing, home))} ${clockInWords(standing.departAt, home)}`;
  const which = `${one?.registration ?? 'an aircraft out of service'}, ${when}`;
  const isOff = standing.released || isOver(standing.arriveAt, now);
  const way = `Give this one an id of its own${isOff ? '' : ', or cancel that one first'}.`;
  const say = `id ${uid.slice(CSV_ID.length)} is another flight already planned: ${which}. ${way}`;
  return { column: 'id', say };
}

/** Plans of a series that the series has no more: a moved, shortened or called-off series leaves none behind. */
function goneFromSeries({ series, flights }: WrittenFile, context: ImportContext): CheckedRow[] {
  const inFile = new Set(flights.map(({ uid }) => uid));
  return series
    .flatMap(({ uid, where, uids }) =>
      [...context.standing.values()]
        .filter((plan) => plan.uid === uid || plan.uid.startsWith(`${uid} @ `))
        .filter((plan) => !uids.has(plan.uid) && !inFile.has(plan.uid))
        .map((plan): CheckedRow => ({
          where,
          uid: plan.uid,
          flight: null,
          shown: null,
          standingId: plan.id,
          errors: [],
          ...callOff(plan, context),
        })),
    )
    .filter(({ does }) => does !== 'skip');
}

const COMPARED = [
  'aircraftId',
  'pilotId',
  'plannedTenths',
  'words',
  'fromIdent',
  'toIdent',
  'rules',
  'purpose',
] as const satisfies readonly (keyof PlannedByFile)[];

const isSame = (a: PlannedByFile, b: PlannedByFile): boolean =>
  COMPARED.every((field) => a[field] === b[field]) &&
  Date.parse(a.departAt) === Date.parse(b.departAt) &&
  Date.parse(a.arriveAt) === Date.parse(b.arriveAt);
