import type { Tx } from '../db/client';
import { calendarDate } from '../db/dates';
import type { CalendarDate } from '../rules/facts';

/** When something that recurs was answered: all years, because what superseded a record may be younger than it. */
export type Answers = readonly {
  readonly id: string;
  readonly requirementId: string;
  readonly kind: string;
  readonly on: CalendarDate;
}[];

export async function readAnswers(tx: Tx, operatorId: string, aircraftId: string): Promise<Answers> {
  const rows = await tx.compliance.findMany({
    where: { operatorId, requirement: { aircraftId } },
    select: { id: true, requirementId: true, doneOn: true, requirement: { select: { kind: true } } },
    orderBy: { doneOn: 'asc' },
  });
  return rows.map(({ id, requirementId, doneOn, requirement }) => ({
    id,
    requirementId,
    kind: requirement.kind,
    on: calendarDate(doneOn),
  }));
}

/** The day of the next such answer after `on`; null when there is none. */
export const nextAnswer = (
  answers: Answers,
  on: CalendarDate,
  such: (answer: Answers[number]) => boolean,
): CalendarDate | null => answers.find((answer) => answer.on > on && such(answer))?.on ?? null;
