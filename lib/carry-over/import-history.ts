import { command, type Context } from '../access/service';
import { faultFields } from '../equipment/read-rows';
import { sha256Of } from '../equipment/file-sum';
import { requireRequirement } from '../inspections/requirement';
import { Refusal } from '../problems';
import { importHistoryInput } from './history-schema';
import { keepLastDone } from './keep-last-done';
import { keepWriteUp } from './keep-write-up';
import { readHistoryFile, type HistoryToKeep } from './read-history-file';
import { said } from '../words/said';

export interface HistoryDone {
  readonly takenInId: string;
  readonly added: number;
  readonly unchanged: number;
  /** Of write-ups: their numbers, in the order of the file. */
  readonly numbers: readonly string[];
}

/**
 * Takes in the history of a file: all of it or, with anything wrong in any row, nothing. Each row becomes the same records as if it
 * were typed, each signed by whoever sends the file. What stands already is left as it is.
 */
export const importHistory = command({
  verb: 'history.import',
  input: importHistoryInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now, requestId } = context;
    const read = await readHistoryFile(tx, operatorId, now, input);
    const { checked } = read;
    if (checked.errors.length > 0) {
      throw new Refusal('invalid', {
        say: said('Nothing was taken in. Put right what is wrong below.'),
        fields: faultFields(checked.errors),
      });
    }
    const sha256 = sha256Of(input.text);
    const added = read.writeUps.length + read.lastDone.length;
    await tx.takenIn.create({
      data: {
        id: requestId,
        operatorId,
        what: input.what,
        format: input.format,
        fileName: input.fileName,
        sha256,
        rows: added,
        takenById: actor.personId,
        takenAt: now,
      },
    });
    const { numbers, hashes } = await keepAll(context, read, requestId);
    const value: HistoryDone = {
      takenInId: requestId,
      added,
      unchanged: checked.rows.length - added,
      numbers,
    };
    return {
      value,
      audit: {
        subjectKind: 'taken-in',
        subjectId: requestId,
        detail: {
          what: input.what,
          fileName: input.fileName,
          sha256,
          added,
          unchanged: value.unchanged,
          hashes,
        },
      },
    };
  },
});

async function keepAll(context: Context, { writeUps, lastDone }: HistoryToKeep, takenInId: string) {
  const numbers: string[] = [];
  const hashes: string[] = [];
  for (const { aircraft, carried } of writeUps) {
    const kept = await keepWriteUp(context, aircraft, carried, takenInId);
    numbers.push(kept.number);
    hashes.push(...kept.hashes);
  }
  for (const { requirementId, written } of lastDone) {
    // Read anew: the row before may have been of the same inspection.
    const requirement = await requireRequirement(context.tx, context.operatorId, requirementId);
    hashes.push(...(await keepLastDone(context, requirement, written, takenInId)).hashes);
  }
  return { numbers, hashes };
}
