import { query } from '../../access/service';
import { type CheckedFile } from './check-rows';
import { readImport } from './read-import';
import { checkImportInput } from './schema';

/** What an import of this file would do now, row by row. Writes nothing. */
export const checkImport = query({
  verb: 'plan.check-import',
  input: checkImportInput,
  run: ({ tx, operatorId, now }, input): Promise<CheckedFile> => readImport(tx, operatorId, now, input),
});
