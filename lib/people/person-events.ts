import { randomUUID } from 'node:crypto';
import { dateColumn } from '../db/dates';
import type { Tx } from '../db/client';
import type { CalendarDate } from '../rules/facts';

interface Happened {
  readonly operatorId: string;
  readonly personId: string;
  readonly what: 'joined' | 'left' | 'returned' | 'roles' | 'erased';
  readonly onDate: CalendarDate;
  /** Kept for good: no name in it. */
  readonly words: string;
  readonly byId: string;
  readonly at: Date;
}

/** Writes down what became of somebody here. */
export const writePersonEvent = (tx: Tx, { onDate, ...row }: Happened) =>
  tx.personEvent.create({ data: { ...row, id: randomUUID(), onDate: dateColumn(onDate) } });
