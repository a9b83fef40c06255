/**
 * The two hour meters of an aircraft, Hobbs and tachometer, as they are read at departure and return: what a reading may
 * be, given the readings around it, and how much time in service it adds. Runs on the phone too, so it stays light.
 *
 * 14 CFR 1.1: time in service runs from leaving the surface of the earth until touching it. Meters only stand in for it,
 * which is common practice and has no source; a Hobbs that runs on the ground counts more than the definition asks for.
 *
 * What a reading is held against is our own design: no paragraph says how a slip of the pen is to be caught.
 */
import type { HoursTenths, Instant } from './facts';
import { formatTenths } from './hours';
import type { CiteId } from './law';

export type MeterField = 'hobbsTenths' | 'tachTenths';
export type ReadingField = MeterField | 'readAt';
export type ReadingMoment = 'out' | 'in';
/** Which meter counts an aircraft's time in service. Null: nobody has said. */
export type TtisMeter = 'hobbs' | 'tach' | null;

/** Both meters as read at an instant. */
export interface MeterReading {
  readonly hobbsTenths: HoursTenths;
  readonly tachTenths: HoursTenths;
  readonly at: Instant;
}

/** A reading being typed: a meter that is not typed yet (null) is not judged. */
export interface TypedReading {
  readonly hobbsTenths: HoursTenths | null;
  readonly tachTenths: HoursTenths | null;
  readonly at: Instant;
}

/** What is on record before a reading; each may be unknown. Figures without an instant were entered with the aircraft. */
export interface LastOnRecord {
  readonly hobbsTenths: HoursTenths | null;
  readonly tachTenths: HoursTenths | null;
  readonly at: Instant | null;
}

export interface ReadingContext {
  readonly moment: ReadingMoment;
  /** The clock of whoever judges: the phone's, and again the server's. */
  readonly now: Instant;
  /** The departure of the same flight, for a return. Null for a departure, or when nobody read the meters then. */
  readonly departure: MeterReading | null;
  /** The return of the same flight, for a departure that comes in after it. */
  readonly back: MeterReading | null;
  /** The next reading after this one, when a phone was without signal and others have read the meters since. */
  readonly next: MeterReading | null;
}

/** Why a reading is refused, at the field to put right. */
export interface ReadingRefusal {
  readonly field: ReadingField;
  readonly because: string;
}

/** What is told about a reading that is taken. */
export interface ReadingNote {
  /**
   * gap: hours nobody wrote down. first: nothing to hold it against. no-departure: the last on record stands as departure.
   * late: others have read the meters since. strict: nobody said which meter counts. time-not-known: the total is lost.
   */
  readonly kind: 'gap' | 'first' | 'no-departure' | 'late' | 'strict' | 'time-not-known';
  readonly field: MeterField | null;
  readonly because: string;
  readonly cite: CiteId | null;
}

export interface ReadingJudgement {
  readonly refusals: readonly ReadingRefusal[];
  readonly notes: readonly ReadingNote[];
}

export const METERS: readonly { readonly field: MeterField; readonly name: string }[] = [
  { field: 'hobbsTenths', name: 'Hobbs' },
  { field: 'tachTenths', name: 'Tach' },
];

/** How far the clock of a phone may run ahead of ours. Our design. */
export const FUTURE_SLACK_MS = 5 * 60_000;

const MS_IN_A_TENTH = 360_000;

/** Two readings between the same two marks may be read one tenth apart. Our design. */
const BETWEEN_MARKS_TENTHS = 1;

/**
 * The most a meter can have run in so many milliseconds, in tenths: the time itself rounded up, and one tenth for reading
 * between marks. The recorder in a tachometer counts turns of the engine and keeps step with the clock only at its rated
 * speed (common practice, no source), so it gets ten per cent on top. Our design.
 */
export function mostTenths(field: MeterField, elapsedMs: number): HoursTenths {
  const tenths =
    field === 'tachTenths'
      ? Math.ceil((elapsedMs * 11) / (MS_IN_A_TENTH * 10))
      : Math.ceil(elapsedMs / MS_IN_A_TENTH);
  return tenths + BETWEEN_MARKS_TENTHS;
}

/**
 * Holds a reading against the one before it, the one after it, the other end of its flight, and the clock. A reading with
 * any refusal is not taken; with notes it is taken, and they are told.
 * @param before the newest reading on record up to this instant; null when there is none
 */
export function judgeReading(
  reading: TypedReading,
  before: LastOnRecord | null,
  context: ReadingContext,
): ReadingJudgement {
  if (Number.isNaN(Date.parse(reading.at))) {
    return { refusals: [{ field: 'readAt', because: 'Enter when the meters were read.' }], notes: [] };
  }
  const wrongTime = judgeTime(reading.at, before, context);
  const judged = METERS.map(({ field, name }) => judgeMeter(field, name, reading, before, context));
  return {
    refusals: [...wrongTime, ...judged.flatMap(({ refusal }) => (refusal ? [refusal] : []))],
    notes: [
      ...judged.flatMap(({ note }) => (note ? [note] : [])),
      ...noDeparture(before, context),
      ...(context.next ? [late(context.next)] : []),
    ],
  };
}

/** At most one refusal: what is wrong with the instant. */
function judgeTime(at: Instant, before: LastOnRecord | null, context: ReadingContext): ReadingRefusal[] {
  const { moment, now, departure, back, next } = context;
  const refuse = (because: string): ReadingRefusal[] => [{ field: 'readAt', because }];
  if (msBetween(now, at) > FUTURE_SLACK_MS) return refuse('This time is still to come.');
  if (moment === 'in' && departure && msBetween(departure.at, at) < 0) {
    return refuse('The return cannot be earlier than the departure.');
  }
  if (moment === 'out' && back && msBetween(at, back.at) < 0) {
    return refuse('The departure cannot be later than the return.');
  }
  if (before?.at && msBetween(before.at, at) < 0) return refuse('The reading before it was taken later.');
  if (next && msBetween(at, next.at) < 0) return refuse('The reading after it was taken earlier.');
  return [];
}

interface MeterJudgement {
  readonly refusal?: ReadingRefusal;
  readonly note?: ReadingNote;
}

function judgeMeter(
  field: MeterField,
  name: string,
  reading: TypedReading,
  before: LastOnRecord | null,
  context: ReadingContext,
): MeterJudgement {
  const shown = reading[field];
  if (shown === null) return {};
  const refuse = (because: string): MeterJudgement => ({
    refusal: { field, because: `${because} ${CALL_THE_DESK}` },
  });
  const { departure, next, moment } = context;
  if (moment === 'in' && departure && shown < departure[field]) {
    return refuse(`${name} cannot run back: at departure it was ${formatTenths(departure[field])} h.`);
  }
  const last = before?.[field] ?? null;
  if (last !== null && shown < last) {
    return refuse(`${name} cannot run back: the reading before it is ${formatTenths(last)} h.`);
  }
  if (next && shown > next[field]) {
    return refuse(`${name} cannot run back: a later reading is ${formatTenths(next[field])} h.`);
  }
  if (last !== null && before?.at) {
    const most = clockAllows(field, before.at, reading.at);
    if (most !== null && shown - last > most) {
      return refuse(
        `${name} would have run ${formatTenths(shown - last)} h since the reading before it, ${formatTenths(last)} h. ` +
          `The clock allows ${formatTenths(most)} h.`,
      );
    }
  }
  if (next) {
    const most = clockAllows(field, reading.at, next.at);
    if (most !== null && next[field] - shown > most) {
      return refuse(
        `${name} would have run ${formatTenths(next[field] - shown)} h up to the later reading, ` +
          `${formatTenths(next[field])} h. The clock allows ${formatTenths(most)} h.`,
      );
    }
  }
  if (last === null) return { note: firstOne(field, name) };
  return moment === 'out' && shown > last ? { note: gap(field, name, shown - last) } : {};
}

/** Records are never changed, so a mistyped reading would stand in the way of every true one after it. */
const CALL_THE_DESK = 'If that is mistyped, the desk can correct it.';

/** Null when the two instants are in the wrong order: that is refused at the time, not at the meter. */
function clockAllows(field: MeterField, from: Instant, to: Instant): HoursTenths | null {
  const elapsed = msBetween(from, to);
  return elapsed < 0 ? null : mostTenths(field, elapsed);
}

const firstOne = (field: MeterField, name: string): ReadingNote => ({
  kind: 'first',
  field,
  because: `No earlier reading of ${name} is on record. This one is taken as it is.`,
  cite: null,
});

const gap = (field: MeterField, name: string, tenths: HoursTenths): ReadingNote => ({
  kind: 'gap',
  field,
  because: `${name} stands ${formatTenths(tenths)} h above the last reading: hours that nobody wrote down. They count.`,
  cite: null,
});

function noDeparture(before: LastOnRecord | null, { moment, departure }: ReadingContext): ReadingNote[] {
  if (moment === 'out' || departure) return [];
  const known = METERS.flatMap(({ field, name }) => {
    const last = before?.[field] ?? null;
    return last === null ? [] : [`${name} ${formatTenths(last)} h`];
  });
  if (known.length === 0) return [];
  const because = `Nobody read the meters at departure. The last reading stands for it: ${known.join(', ')}.`;
  return [{ kind: 'no-departure', field: null, because, cite: null }];
}

const late = ({ hobbsTenths, tachTenths }: MeterReading): ReadingNote => ({
  kind: 'late',
  field: null,
  because:
    `The meters were read again since: Hobbs ${formatTenths(hobbsTenths)} h, Tach ${formatTenths(tachTenths)} h. ` +
    'The hours of the aircraft go by the newest reading.',
  cite: null,
});

/** The readings right before and right after an instant; one of the same instant is before it. */
export function neighbours<Reading extends { readonly at: Instant }>(
  readings: readonly Reading[],
  at: Instant,
): { readonly before: Reading | null; readonly next: Reading | null } {
  let before: Reading | null = null;
  let next: Reading | null = null;
  for (const one of readings) {
    if (msBetween(one.at, at) >= 0) {
      if (before === null || msBetween(before.at, one.at) >= 0) before = one;
    } else if (next === null || msBetween(one.at, next.at) > 0) {
      next = one;
    }
  }
  return { before, next };
}

/** How far each meter ran on a flight, in tenths; null where the figure at departure is not known. */
export interface HoursFlown {
  readonly hobbsTenths: HoursTenths | null;
  readonly tachTenths: HoursTenths | null;
}

/** The hours between two readings, each meter for itself. */
export const hoursBetween = (from: Omit<LastOnRecord, 'at'>, to: Omit<MeterReading, 'at'>): HoursFlown => ({
  hobbsTenths: from.hobbsTenths === null ? null : to.hobbsTenths - from.hobbsTenths,
  tachTenths: from.tachTenths === null ? null : to.tachTenths - from.tachTenths,
});

/** Total time in service after a reading; null when it is not known. `note` says what was assumed, or what is missing. */
export interface TimeInService {
  readonly ttisTenths: HoursTenths | null;
  readonly note: ReadingNote | null;
}

/**
 * Total time in service at a reading, from the total at the reading before it. The aircraft's own meter counts; where
 * nobody has said which, the larger of the two gains does, the strict reading: an inspection may come early, never late.
 * An unknown total stays unknown. Where the gain cannot be told because an earlier figure is missing, a departure begins
 * the count anew, and after a flight the total becomes unknown.
 */
export function timeInService(
  ttisBefore: HoursTenths | null,
  before: LastOnRecord | null,
  reading: MeterReading,
  meter: TtisMeter,
  moment: ReadingMoment,
): TimeInService {
  if (ttisBefore === null) return { ttisTenths: null, note: null };
  const { hobbsTenths, tachTenths } = hoursBetween(before ?? NOTHING, reading);
  const counting =
    meter === null ? [hobbsTenths, tachTenths] : [meter === 'hobbs' ? hobbsTenths : tachTenths];
  const told = counting.filter((gain) => gain !== null);
  const gained = Math.max(0, ...told);
  if (told.length < counting.length && moment === 'in') {
    const because = 'How long it flew is not known, so its total time in service is not known any more.';
    return {
      ttisTenths: null,
      note: { kind: 'time-not-known', field: null, because, cite: TIME_IN_SERVICE },
    };
  }
  const differ = told.length === 2 && told[0] !== told[1];
  return { ttisTenths: ttisBefore + gained, note: differ ? strict(gained) : null };
}

const NOTHING: LastOnRecord = { hobbsTenths: null, tachTenths: null, at: null };

const TIME_IN_SERVICE: CiteId = '14cfr1.1(time-in-service)';

const strict = (gained: HoursTenths): ReadingNote => ({
  kind: 'strict',
  field: null,
  because: `Which meter counts time in service is not known. Strict reading: the larger gain counts, ${formatTenths(gained)} h.`,
  cite: TIME_IN_SERVICE,
});

const msBetween = (from: Instant, to: Instant): number => Date.parse(to) - Date.parse(from);
