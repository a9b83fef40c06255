import type { Actor } from '../access/actor';
import type { Prisma, Tx } from '../db/client';
import { instant } from '../db/dates';
import { nameIn } from '../people/names';
import { Refusal } from '../problems';
import { contentHash } from '../records/canonical';
import type { Instant } from '../rules/facts';
import {
  isOvertaken,
  LOGGED,
  releaseState,
  whyNotAccepted,
  whyNotLogged,
  whyNotWithdrawn,
  type Happening,
  type Logged,
  type ReleaseHistory,
  type ReleaseState,
  type ReleaseStateName,
} from '../rules/release-state';
import type { Answer, Line, Outcome } from '../rules/verdict';
import { STANDING } from './readings';
import { said } from '../words/said';

/** What a release needs beside its columns to tell its state. */
export const WITH_HISTORY = {
  acceptances: {
    orderBy: [{ signedAt: 'desc' }, { id: 'desc' }],
    select: { personName: true, signedAt: true, hash: true },
  },
  events: {
    orderBy: [{ recordedAt: 'asc' }, { id: 'asc' }],
    include: { discrepancy: { select: { id: true, number: true, title: true } } },
  },
  readings: {
    where: { moment: { in: ['out', 'in'] }, ...STANDING },
    select: { moment: true, at: true, hobbsTenths: true, tachTenths: true, ttisTenths: true },
  },
} as const satisfies Prisma.ReleaseInclude;
export type HistoryRow = Prisma.ReleaseGetPayload<{ include: typeof WITH_HISTORY }>;

/** One happening, as screens tell it. */
export interface FlightEventView {
  readonly id: string;
  readonly what: Happening;
  readonly at: Instant;
  readonly words: string;
  /** Of void and warned: the lines that bar or limit now. */
  readonly lines: readonly Line[];
  /** The write-up behind it, where it was one. */
  readonly writeUp: { readonly id: string; readonly number: string; readonly title: string } | null;
  /** Who recorded it; of void and warned, by whose act the facts changed. */
  readonly by: string;
  readonly recordedAt: Instant;
}

export interface AcceptanceView {
  readonly by: string;
  readonly at: Instant;
  readonly hash: string;
}

/** What a release has become, and what the asking person can do about it. */
export interface ReleaseStanding {
  readonly state: ReleaseState;
  /** To send with the acceptance: what was looked at, the warnings given since the release with it. */
  readonly answerHash: string;
  /** The newest acceptance, while it holds. */
  readonly acceptance: AcceptanceView | null;
  /** The newest acceptance, when a warning came after it: it has to be given again. */
  readonly acceptedBeforeWarning: AcceptanceView | null;
  readonly events: readonly FlightEventView[];
  /** The asker is its pilot in command and may sign for it now. */
  readonly canAccept: boolean;
  /** The asker is at the desk or its pilot in command, and it has not departed or ended. */
  readonly canWithdraw: boolean;
  /** What the asker may log of it now; empty for nothing. */
  readonly canLog: readonly Logged[];
}

/** A row as the rules about its state take it. */
export function historyOf(row: HistoryRow): ReleaseHistory {
  const back = row.readings.find(({ moment }) => moment === 'in');
  return {
    releasedAt: instant(row.releasedAt),
    accepted: row.acceptances[0] ? instant(row.acceptances[0].signedAt) : null,
    isOut: row.readings.some(({ moment }) => moment === 'out'),
    back: back ? instant(back.at) : null,
    events: row.events.map(({ what, at, recordedAt }) => ({
      what: what as Happening,
      at: instant(at),
      recordedAt: instant(recordedAt),
    })),
  };
}

/** The state of a row. */
export const stateOf = (row: HistoryRow): ReleaseState => releaseState(historyOf(row));

/** Hash of what a pilot looks at before accepting: the release, and every warning given since. */
export function answerHashOf(row: HistoryRow): string {
  const warnings = row.events.filter(({ what }) => what === 'warned').map(({ id }) => id);
  return warnings.length === 0 ? row.hash : contentHash({ release: row.hash, warnings });
}

/** What barred or limited then; none for a happening that is not about lines. */
export const linesOfEvent = ({ lines }: HistoryRow['events'][number]): readonly Line[] =>
  (lines ?? []) as unknown as readonly Line[];

/** Lines of the warnings given since the release. */
export const warnedLines = (row: HistoryRow): readonly Line[] =>
  row.events.filter(({ what }) => what === 'warned').flatMap(linesOfEvent);

const VOID_LINE: Line = {
  effect: 'bars',
  cite: 'house-caution',
  because: 'This release is void: the facts changed after it was given. Do not depart on it.',
};

const WITHDRAWN_LINE: Line = {
  effect: 'bars',
  cite: 'house-caution',
  because: 'This release was withdrawn. Do not depart on it.',
};

/** Limits at release, and what was told since. */
export const limitsNow = (row: HistoryRow): readonly Line[] => [
  ...(row.answer as unknown as Answer).lines.filter(({ effect }) => effect === 'limits'),
  ...warnedLines(row),
];

/**
 * How a release stands, for whoever takes it along: its outcome as released with the limits then and the warnings since; no
 * go with what bars once it is void or withdrawn.
 */
export function standsNow(row: HistoryRow): {
  readonly state: ReleaseStateName;
  readonly outcome: Outcome;
  readonly limits: readonly Line[];
} {
  const state = stateOf(row).name;
  if (state === 'withdrawn') return { state, outcome: 'no-go', limits: [WITHDRAWN_LINE, ...limitsNow(row)] };
  if (state !== 'void') return { state, outcome: row.outcome as Outcome, limits: limitsNow(row) };
  const barring = row.events.filter(({ what }) => what === 'void').flatMap(linesOfEvent);
  return { state, outcome: 'no-go', limits: [VOID_LINE, ...barring, ...limitsNow(row)] };
}

/** Whether somebody speaks for the desk. */
export const isOfDesk = ({ roles }: Pick<Actor, 'roles'>): boolean =>
  roles.some((role) => role === 'dispatcher' || role === 'manager');

/** What a release has become, for whoever asks. `names` knows everybody who recorded an event. */
export function standingOf(
  row: HistoryRow,
  asker: Pick<Actor, 'personId' | 'roles'>,
  now: Date,
  names: ReadonlyMap<string, string>,
): ReleaseStanding {
  const history = historyOf(row);
  const state = releaseState(history);
  const isPilot = row.pilotId === asker.personId;
  const mayHandle = isPilot || isOfDesk(asker);
  const [accepted] = row.acceptances;
  const newest = accepted
    ? { by: accepted.personName, at: instant(accepted.signedAt), hash: accepted.hash }
    : null;
  return {
    state,
    answerHash: answerHashOf(row),
    acceptance: isOvertaken(history) ? null : newest,
    acceptedBeforeWarning: isOvertaken(history) ? newest : null,
    events: row.events.map((event) => ({
      id: event.id,
      what: event.what as Happening,
      at: instant(event.at),
      words: event.words,
      lines: linesOfEvent(event),
      writeUp: event.discrepancy,
      by: nameIn(names, event.recordedById),
      recordedAt: instant(event.recordedAt),
    })),
    canAccept: isPilot && whyNotAccepted(history, instant(row.arriveAt), instant(now)) === null,
    canWithdraw: mayHandle && whyNotWithdrawn(history) === null,
    canLog: mayHandle ? loggable(history, instant(now), instant(row.departAt)) : [],
  };
}

/** What can be logged now, at one time or another: what only its time would forbid can be put right. */
const loggable = (history: ReleaseHistory, now: Instant, departAt: Instant): ReleaseStanding['canLog'] =>
  LOGGED.filter((what) => whyNotLogged(history, what, now, now, departAt)?.field !== 'what');

/** Everybody who is named in the histories of these rows. */
export const peopleInHistory = (rows: readonly HistoryRow[]): string[] =>
  rows.flatMap(({ events }) => events.map(({ recordedById }) => recordedById));

/** Refuses whoever is neither at the desk nor the pilot in command of this release. */
export function requireOwnOrDesk(actor: Actor, row: Pick<HistoryRow, 'pilotId'>): void {
  if (isOfDesk(actor) || row.pilotId === actor.personId) return;
  throw new Refusal('not_allowed', {
    say: said('That is for the pilot in command of the flight, or for the desk.'),
  });
}

/** Reads a release with its history, aircraft and zone. Refuses `not_found`. */
export async function requireReleaseRow(tx: Tx, operatorId: string, releaseId: string) {
  const row = await tx.release.findUnique({
    where: { operatorId_id: { operatorId, id: releaseId } },
    include: { ...WITH_HISTORY, aircraft: { include: { base: true } } },
  });
  if (!row) throw new Refusal('not_found', { say: said('There is no such release here.') });
  return row;
}
