/**
 * How long from a write-up to the first answer by a person, and to its repair. No regulation; the definitions are ours.
 * Write-ups still open have no time yet: they are counted apart, because leaving them out without a word would make a slow
 * shop look quick.
 */
import type { Instant } from '../facts';
import { said } from '../said';
import type { AircraftHistory, WriteUpHistory } from './history';
import { spreadOf, type Spread } from './quantile';
import { minuteOf, type Stretch } from './spans';

export const TIME_TO_ANSWER_DEFINITION = said(
  'Of the write-ups opened in the period: from the moment one was written until a person first answered it by a signed judgement, a finding within limits, a deferral, or closing it. What the catalogue says by itself at once is no answer. Those still waiting are listed apart and are in no figure; cosmetic notes ask for no answer. Median and 90th percentile by nearest rank; with fewer than five neither is given. Counted in whole minutes, nights and weekends included, and followed until now, also past the end of the period.',
);

export const TIME_TO_REPAIR_DEFINITION = said(
  'Of the write-ups opened in the period: from the moment one was written until it was closed as repaired, with a signed entry. Those closed otherwise (serviced, could not duplicate, removed) and those still open, deferred ones among them, are listed apart and are in no figure, so that the true times are longer than these. Median and 90th percentile by nearest rank; with fewer than five neither is given. Counted in whole minutes, nights and weekends included, and followed until now, also past the end of the period.',
);

/** One write-up and how long it took; null minutes: it waits still. */
export interface TimeTaken {
  readonly writeUpId: string;
  readonly number: string;
  readonly title: string;
  readonly registration: string;
  readonly openedAt: Instant;
  /** What it was answered or closed by; `waiting` while nothing has. */
  readonly by: string;
  readonly minutes: number | null;
  /** It waits since, until now; null when it does not. */
  readonly waitingMinutes: number | null;
}

export interface TimesFigure {
  readonly definition: string;
  /** Shortest first, then those that wait, longest waiting first. */
  readonly rows: readonly TimeTaken[];
  readonly spread: Spread;
  readonly counts: {
    readonly opened: number;
    readonly waiting: number;
    /** Closed another way than the figure asks for, or asking for nothing. */
    readonly otherwise: number;
  };
}

/** @param asOf now, until when what waits has waited */
export function timeToAnswerFigure(
  fleet: readonly AircraftHistory[],
  windowOf: (aircraft: AircraftHistory) => Stretch,
  asOf: Instant,
): TimesFigure {
  return figureOf(TIME_TO_ANSWER_DEFINITION, fleet, windowOf, asOf, (writeUp) => {
    const answer = firstAnswer(writeUp);
    if (answer) return answer;
    const opening = writeUp.judged[0];
    return opening?.kind === 'cosmetic' && opening.severity === 'note' ? 'otherwise' : 'waiting';
  });
}

export function timeToRepairFigure(
  fleet: readonly AircraftHistory[],
  windowOf: (aircraft: AircraftHistory) => Stretch,
  asOf: Instant,
): TimesFigure {
  return figureOf(TIME_TO_REPAIR_DEFINITION, fleet, windowOf, asOf, ({ closedAt, closedHow }) => {
    if (closedAt === null) return 'waiting';
    return closedHow === 'repaired' ? { at: closedAt, by: 'repaired' } : 'otherwise';
  });
}

interface Event {
  readonly at: Instant;
  readonly by: string;
}

/** The first thing a person did that answers the write-up. */
export function firstAnswer({ judged, deferrals, closedAt, closedHow }: WriteUpHistory): Event | null {
  const events: Event[] = [
    ...judged
      .filter(({ by }) => by === 'person')
      .map(({ at, withinLimits }) => ({ at, by: withinLimits ? 'within limits' : 'judged' })),
    ...deferrals.map(({ begunAt }) => ({ at: begunAt, by: 'deferred' })),
    ...(closedAt === null ? [] : [{ at: closedAt, by: closedHow ?? 'closed' }]),
  ];
  return events.toSorted((a, b) => minuteOf(a.at) - minuteOf(b.at))[0] ?? null;
}

/** Whether it was opened in the window: at its first minute yes, at its last no. */
export function openedIn({ openedAt }: WriteUpHistory, { from, until }: Stretch): boolean {
  const at = minuteOf(openedAt);
  return at >= minuteOf(from) && (until === null || at < minuteOf(until));
}

function figureOf(
  definition: string,
  fleet: readonly AircraftHistory[],
  windowOf: (aircraft: AircraftHistory) => Stretch,
  asOf: Instant,
  ended: (writeUp: WriteUpHistory) => Event | 'waiting' | 'otherwise',
): TimesFigure {
  const opened = fleet.flatMap((aircraft) =>
    aircraft.writeUps
      .filter((writeUp) => openedIn(writeUp, windowOf(aircraft)))
      .map((writeUp) => ({ aircraft, writeUp, end: ended(writeUp) })),
  );
  const rows = opened.flatMap(({ aircraft, writeUp, end }): TimeTaken[] => {
    if (end === 'otherwise') return [];
    const since = (at: Instant) => Math.max(0, minuteOf(at) - minuteOf(writeUp.openedAt));
    return [
      {
        writeUpId: writeUp.id,
        number: writeUp.number,
        title: writeUp.title,
        registration: aircraft.registration,
        openedAt: writeUp.openedAt,
        by: end === 'waiting' ? 'waiting' : end.by,
        minutes: end === 'waiting' ? null : since(end.at),
        waitingMinutes: end === 'waiting' ? since(asOf) : null,
      },
    ];
  });
  return {
    definition,
    rows: rows.toSorted(
      (a, b) =>
        (a.minutes ?? Infinity) - (b.minutes ?? Infinity) ||
        (b.waitingMinutes ?? 0) - (a.waitingMinutes ?? 0) ||
        (a.number < b.number ? -1 : 1),
    ),
    spread: spreadOf(rows.flatMap(({ minutes }) => (minutes === null ? [] : [minutes]))),
    counts: {
      opened: opened.length,
      waiting: rows.filter(({ minutes }) => minutes === null).length,
      otherwise: opened.length - rows.length,
    },
  };
}
