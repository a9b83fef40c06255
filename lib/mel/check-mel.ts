import { query } from '../access/service';
import { readMelFile, type CheckedMel } from './read-mel-file';
import { checkMelInput } from './schema';

/** What taking in this list would do now. Writes nothing. */
export const checkMel = query({
  verb: 'mel.check-import',
  input: checkMelInput,
  run: async ({ tx, operatorId }, input): Promise<CheckedMel> =>
    (await readMelFile(tx, operatorId, input)).checked,
});
