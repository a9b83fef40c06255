import { z } from 'zod';
import { requestId } from '../access/request-id';
import { password } from '../determinations/schema';
import { rowFile } from '../equipment/row-file';
import { said } from '../words/said';

export const HISTORY_KINDS = ['write-ups', 'last-done'] as const;
export type HistoryKind = (typeof HISTORY_KINDS)[number];

const file = {
  what: z.enum(HISTORY_KINDS, said('Say what is in the file.')),
  ...rowFile,
};

export const checkHistoryInput = z.object(file);
export const importHistoryInput = z.object({ requestId, ...file, password });
