import { z } from 'zod';

/** Name of the PostgreSQL channel on which every commit of an audit row is told (migration 0004, tell_of_change). */
export const CHANGE_CHANNEL = 'wheelchock_change';

/** Something of this operator's was written; `seq` is the row of the audit chain that says what. */
export interface Change {
  readonly operatorId: string;
  readonly seq: number;
}

const change = z.object({ operatorId: z.uuid(), seq: z.int().positive() });

/** What a notification says, or null for one that is none of ours: whoever may connect may notify. */
export function readChange(payload: string | undefined): Change | null {
  try {
    return change.parse(JSON.parse(payload ?? ''));
  } catch {
    return null;
  }
}
