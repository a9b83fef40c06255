import { query } from '../access/service';
import { checkHistoryInput } from './history-schema';
import { readHistoryFile, type CheckedHistory } from './read-history-file';

/** What an import of this file would do now, row by row. Writes nothing. */
export const checkHistory = query({
  verb: 'history.check-import',
  input: checkHistoryInput,
  run: async ({ tx, operatorId, now }, input): Promise<CheckedHistory> =>
    (await readHistoryFile(tx, operatorId, now, input)).checked,
});
