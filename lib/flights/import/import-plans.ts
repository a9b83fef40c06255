import { createHash, randomUUID } from 'node:crypto';
import { command } from '../../access/service';
import { Refusal } from '../../problems';
import { type CheckedFile, type CheckedRow, type RowDoes } from './check-rows';
import { errorInWords } from './parsed';
import { readImport } from './read-import';
import { importPlansInput } from './schema';
import { said } from '../../words/said';

export interface ImportDone {
  readonly importId: string;
  readonly added: number;
  readonly replaced: number;
  readonly unchanged: number;
  readonly cancelled: number;
  /** Left alone because a release stands on them. */
  readonly released: number;
  readonly skipped: number;
}

/**
 * Takes the flights of a file into the plan: all of them or, with anything wrong in any row, none. A flight that stands
 * already is left as it is; one that changed is replaced (the old plan stays on record as cancelled); one that is called
 * off in the file is cancelled; one that is released is not touched. It releases nothing, as every plan.
 */
export const importPlans = command({
  verb: 'plan.import',
  input: importPlansInput,
  async run({ tx, operatorId, actor, now, requestId }, input) {
    const checked = await readImport(tx, operatorId, now, input);
    refuseWrong(checked);
    const of = (does: RowDoes) => checked.rows.filter((row) => row.does === does);
    const comes = [...of('add'), ...of('replace')];
    const goes = [...of('replace'), ...of('cancel')];
    const sha256 = createHash('sha256').update(input.text, 'utf8').digest('hex');
    const counts = {
      added: of('add').length,
      replaced: of('replace').length,
      cancelled: of('cancel').length,
    };
    await tx.planImport.create({
      data: {
        id: requestId,
        operatorId,
        kind: input.kind,
        fileName: input.fileName,
        sha256,
        added: comes.length,
        unchanged: of('keep').length,
        cancelled: goes.length,
        importedById: actor.personId,
        importedAt: now,
      },
    });
    // First off, then on: one number stands once.
    await tx.plannedFlight.updateMany({
      where: {
        operatorId,
        id: { in: goes.flatMap(({ standingId }) => standingId ?? []) },
        cancelledAt: null,
      },
      data: { cancelledAt: now, cancelledById: actor.personId },
    });
    await tx.plannedFlight.createMany({
      data: comes.flatMap(({ flight, uid }) =>
        flight === null
          ? []
          : {
              ...flight,
              id: randomUUID(),
              operatorId,
              departAt: new Date(flight.departAt),
              arriveAt: new Date(flight.arriveAt),
              plannedById: actor.personId,
              plannedAt: now,
              importId: requestId,
              outsideUid: uid,
            },
      ),
    });
    const value: ImportDone = {
      importId: requestId,
      ...counts,
      unchanged: of('keep').length,
      released: of('released').length,
      skipped: of('skip').length,
    };
    return {
      value,
      audit: {
        subjectKind: 'plan-import',
        subjectId: requestId,
        detail: { fileName: input.fileName, kind: input.kind, sha256, ...counts, unchanged: value.unchanged },
      },
    };
  },
});

/** Every error of every row, under a path that names it. */
function refuseWrong({ errors, rows }: CheckedFile): void {
  const fields: Record<string, string[]> = {};
  if (errors.length > 0) fields['text'] = [...errors];
  rows.forEach((row: CheckedRow, index) => {
    for (const error of row.errors) {
      (fields[`rows.${index}.${error.column ?? 'row'}`] ??= []).push(errorInWords(row.where, error));
    }
  });
  if (Object.keys(fields).length === 0) return;
  throw new Refusal('invalid', { say: said('Nothing was taken in. Put right what is wrong below.'), fields });
}
