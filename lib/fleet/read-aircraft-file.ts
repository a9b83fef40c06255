import { z } from 'zod';
import { query } from '../access/service';
import { calendarDateOrNull } from '../db/dates';
import { SUMMARY, summaryOf, type WriteUpSummary } from '../findings/summary';
import { namesOf } from '../people/names';
import { Refusal } from '../problems';
import { dueOf } from '../rules/due';
import type { Fact } from '../rules/facts';
import { jascLabel } from '../rules/jasc';
import { operationId, operationName, type OperationId } from '../rules/operations';
import type { Answer } from '../rules/verdict';
import { readAircraft } from './facts';
import { boardRow, judgeToday, type BoardRow } from './read-board';
import { said } from '../words/said';

export interface AircraftFile {
  readonly asOf: string;
  readonly row: BoardRow;
  readonly serial: string;
  readonly hobbsTenths: number | null;
  readonly tachTenths: number | null;
  readonly answers: readonly { readonly id: OperationId; readonly name: string; readonly answer: Answer }[];
  readonly writeUps: readonly WriteUpSummary[];
  readonly recentlyClosed: readonly WriteUpSummary[];
  readonly papers: readonly {
    readonly kind: string;
    readonly aboard: boolean | null;
    readonly expires: boolean | null;
    readonly validThrough: string | null;
  }[];
  readonly requirements: readonly {
    readonly id: string;
    readonly name: string;
    readonly kind: string;
    readonly binding: boolean;
    readonly lastOn: string | null;
    readonly lastTtisTenths: number | null;
    readonly on: string | null;
    readonly tenths: number | null;
    readonly remainingDays: number | null;
    readonly remainingTenths: number | null;
    readonly missing: string | null;
  }[];
  readonly equipment: readonly {
    readonly id: string;
    readonly name: string;
    readonly function: string;
    readonly jasc: string;
    readonly installed: number;
  }[];
}

const CLOSED_SHOWN_DAYS = 30;
const A_DAY = 86_400_000;

/** One aircraft whole: every answer with its reasons, what is written up, what was lately closed, papers and dues. */
export const readAircraftFile = query({
  verb: 'aircraft.read',
  input: z.object({ aircraftId: z.uuid() }),
  async run({ tx, operatorId, now }, { aircraftId }): Promise<AircraftFile> {
    const row = await readAircraft(tx, operatorId, aircraftId);
    if (!row || row.retiredOn)
      throw new Refusal('not_found', { say: said('There is no such aircraft here.') });
    const judged = judgeToday(row, now);
    const { facts, today, answers } = judged;
    const writeUps = await tx.discrepancy.findMany({
      where: {
        operatorId,
        aircraftId,
        OR: [
          { state: { not: 'closed' } },
          { closedAt: { gte: new Date(now.getTime() - CLOSED_SHOWN_DAYS * A_DAY) } },
        ],
      },
      include: SUMMARY,
      orderBy: { openedAt: 'desc' },
    });
    const names = await namesOf(
      tx,
      writeUps.map((one) => one.finding.personId),
    );
    const summaries = writeUps.map((one) => summaryOf(one, names));
    return {
      asOf: now.toISOString(),
      row: boardRow(row, judged),
      serial: row.serial,
      hobbsTenths: row.hobbsTenths,
      tachTenths: row.tachTenths,
      answers: answers.map(({ kind, answer }) => ({
        id: operationId(kind),
        name: operationName(kind),
        answer,
      })),
      writeUps: summaries.filter((one) => one.state !== 'closed'),
      recentlyClosed: summaries.filter((one) => one.state === 'closed'),
      papers: row.papers.map(({ kind, aboard, expires, validThrough }) => ({
        kind,
        aboard,
        expires,
        validThrough: calendarDateOrNull(validThrough),
      })),
      requirements: facts.requirements.map((requirement) => {
        const due = dueOf(requirement, facts.ttisTenths, facts.requirements);
        const last = valueOf(requirement.lastDone);
        return {
          id: requirement.id,
          name: requirement.name,
          kind: requirement.kind,
          binding: requirement.binding,
          lastOn: last?.on ?? null,
          lastTtisTenths: last?.ttisTenths ?? null,
          on: due.on,
          tenths: due.tenths,
          remainingDays: due.remainingDays(today),
          remainingTenths: due.remainingTenths,
          missing: due.missing,
        };
      }),
      equipment: row.equipment.map(({ id, name, function: what, jasc, installed }) => ({
        id,
        name,
        function: what,
        jasc: jascLabel(jasc),
        installed,
      })),
    };
  },
});

const valueOf = <T>(fact: Fact<T>): T | null => (fact.known ? fact.value : null);
