import { z } from 'zod';
import { query } from '../access/service';
import { dueList, type DueList } from './due-list';

/** What falls due on the whole fleet: inspections, tests, directives, life limits, papers, deferrals, maker's intervals. */
export const readDue = query({
  verb: 'due.read',
  input: z.object({}),
  run: ({ tx, operatorId, now }): Promise<DueList> => dueList(tx, operatorId, now),
});
