import { z } from 'zod';
import { AfterReading, query } from '../access/service';
import { headline, type answersByOperation } from '../rules/answer';
import { newestSeq } from '../live/newest-change';
import { dayAtBase } from '../records/signature';
import type { AircraftFacts } from '../rules/aircraft';
import type { CalendarDate } from '../rules/facts';
import { dueOf } from '../rules/due';
import { operationId, operationName, type OperationId, type Place } from '../rules/operations';
import { lightDuring, nextSunEvent } from '../rules/sun';
import type { BookedFlight } from '../rules/spent-hours';
import type { Outcome } from '../rules/verdict';
import { rowAhead, windowAtBase, type RowAhead, type WindowAtBase } from './board-ahead';
import { bookedFlights } from './booked-flights';
import { keptToday } from './kept-over-time';
import { aircraftFacts, basePlace, readFleet, type AircraftRow } from './facts';

/** One cell of the board: today's answer for one kind of operation. */
export interface BoardCell {
  readonly id: OperationId;
  readonly name: string;
  readonly outcome: Outcome;
  /** The one thing that decides, in a few words; null when all is in order. */
  readonly headline: string | null;
}

/** What comes due next of all that binds, by hours or by date, whichever is nearer. */
export interface NextDue {
  readonly name: string;
  readonly on: string | null;
  readonly remainingDays: number | null;
  readonly remainingTenths: number | null;
}

export interface BoardRow {
  readonly aircraftId: string;
  readonly registration: string;
  readonly typeName: string;
  readonly baseId: string;
  readonly baseIdent: string;
  readonly baseName: string;
  readonly zone: string;
  readonly forHire: boolean;
  readonly ttisTenths: number | null;
  readonly cells: readonly BoardCell[];
  readonly openWriteUps: number;
  readonly undecided: number;
  readonly deferred: number;
  readonly nextDue: NextDue | null;
  /** What comes until the end of tomorrow; null where it was not asked for. */
  readonly ahead: RowAhead | null;
  readonly factsVersion: number;
}

/** The light at a base for a local flight of an hour that leaves now: night when any part of the hour is night. */
export interface LightNow {
  readonly light: 'day' | 'night';
  /** Next sunset (lights of 91.209), next end of evening and beginning of morning civil twilight (night of 1.1). */
  readonly sunsetAt: string | null;
  readonly nightFrom: string | null;
  readonly nightUntil: string | null;
}

export interface Board {
  readonly asOf: string;
  /** How far the records had come: a change after it is not on this board. */
  readonly seq: number;
  readonly operatorName: string;
  readonly bases: readonly {
    readonly id: string;
    readonly ident: string;
    readonly name: string;
    readonly zone: string;
    readonly now: LightNow;
  }[];
  readonly rows: readonly BoardRow[];
}

/**
 * The whole fleet in one consistent view: one row an aircraft, one cell a kind of operation, as of now. `ahead` asks for
 * what comes as well, which costs as much again.
 */
export const readBoard = query({
  verb: 'fleet.read',
  input: z.object({ ahead: z.boolean().default(false) }),
  async run({ tx, operatorId, now }, { ahead }): Promise<AfterReading<Board>> {
    const operator = await tx.operator.findUniqueOrThrow({
      where: { id: operatorId },
      include: { bases: { orderBy: { ident: 'asc' } } },
    });
    const fleet = await readFleet(tx);
    const booked = ahead ? await bookedFlights(tx, operatorId, now) : null;
    const seq = await newestSeq(tx, operatorId);
    return new AfterReading(() => {
      const coming = booked ? lookAhead(booked, now) : () => null;
      return {
        asOf: now.toISOString(),
        seq,
        operatorName: operator.name,
        bases: operator.bases.map((base) => ({
          id: base.id,
          ident: base.ident,
          name: base.name,
          zone: base.zone,
          now: lightNow(basePlace(base), now),
        })),
        rows: fleet.map((row) => {
          const judged = judgeToday(row, now);
          return boardRow(row, judged, coming(row, judged));
        }),
      };
    });
  },
});

const AN_HOUR = 3_600_000;
const SUN_SEARCH_DAYS = 2;

function lightNow(place: Place, now: Date): LightNow {
  const from = now.toISOString();
  const next = (event: 'sunset' | 'civilDusk' | 'civilDawn') =>
    nextSunEvent(event, place, from, SUN_SEARCH_DAYS);
  const { night } = lightDuring({ from, to: new Date(now.getTime() + AN_HOUR).toISOString() }, place);
  return {
    light: night ? 'night' : 'day',
    sunsetAt: next('sunset'),
    nightFrom: next('civilDusk'),
    nightUntil: next('civilDawn'),
  };
}

/** An aircraft's facts and today's answers at its base; both the board and the aircraft's own page are drawn from it. */
export interface JudgedToday {
  readonly facts: AircraftFacts;
  readonly today: CalendarDate;
  readonly answers: ReturnType<typeof answersByOperation>;
}

export function judgeToday(row: AircraftRow, now: Date): JudgedToday {
  const facts = aircraftFacts(row);
  const base = basePlace(row.base);
  const today = dayAtBase(now, base.zone);
  return { facts, today, answers: keptToday(facts, base, today, now) };
}

/** Looks ahead aircraft by aircraft; the light is worked out once a base. */
function lookAhead(booked: ReadonlyMap<string, readonly BookedFlight[]>, now: Date) {
  const windows = new Map<string, WindowAtBase>();
  return (row: AircraftRow, { facts, today }: JudgedToday): RowAhead => {
    const base = basePlace(row.base);
    const window = windows.get(row.baseId) ?? windowAtBase(base, today);
    windows.set(row.baseId, window);
    return rowAhead(facts, base, window, booked.get(row.id) ?? [], row.forHire, now.toISOString());
  };
}

/** One aircraft's row of the board. */
export function boardRow(
  row: AircraftRow,
  { facts, today, answers }: JudgedToday,
  ahead: RowAhead | null = null,
): BoardRow {
  return {
    aircraftId: row.id,
    registration: row.registration,
    typeName: row.type.name,
    baseId: row.baseId,
    baseIdent: row.base.ident,
    baseName: row.base.name,
    zone: row.base.zone,
    forHire: row.forHire,
    ttisTenths: row.ttisTenths,
    cells: answers.map(({ kind, answer }) => ({
      id: operationId(kind),
      name: operationName(kind),
      outcome: answer.outcome,
      headline: answer.outcome === 'go' ? null : headline(answer),
    })),
    openWriteUps: row.discrepancies.length,
    undecided: row.discrepancies.filter((one) => one.severity === null).length,
    deferred: row.discrepancies.filter((one) => one.state === 'deferred').length,
    nextDue: nextDue(facts, today),
    ahead,
    factsVersion: row.factsVersion,
  };
}

/** Hours a light trainer flies on a day, only to put hours and days on one scale when sorting what comes next. */
const TENTHS_A_DAY = 30;

function nextDue(facts: AircraftFacts, today: string): NextDue | null {
  // A maker's recommendation grounds nobody; shown here it would hide the inspection that does.
  const binding = facts.requirements.filter((requirement) => requirement.binding);
  const coming = binding.map((requirement) => {
    const due = dueOf(requirement, facts.ttisTenths, facts.requirements);
    const remainingDays = due.remainingDays(today);
    const nearness = Math.min(
      remainingDays ?? Number.POSITIVE_INFINITY,
      due.remainingTenths === null ? Number.POSITIVE_INFINITY : due.remainingTenths / TENTHS_A_DAY,
    );
    return {
      name: requirement.name,
      on: due.on,
      remainingDays,
      remainingTenths: due.remainingTenths,
      nearness,
    };
  });
  const [first] = coming
    .filter((due) => Number.isFinite(due.nearness))
    .sort((a, b) => a.nearness - b.nearness);
  if (!first) return null;
  const { name, on, remainingDays, remainingTenths } = first;
  return { name, on, remainingDays, remainingTenths };
}
