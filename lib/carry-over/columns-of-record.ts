import { Refusal } from '../problems';

/** The fields of a record from papers under the names of the columns. */
export const COLUMN: Readonly<Record<string, string>> = {
  doneOn: 'done_on',
  ttis: 'hours',
  testedToFt: 'tested_to_ft',
  newExpiry: 'new_expiry',
};

/** A refusal of a field of the paper record, as one of the column it came from. */
export function inColumns(error: unknown): unknown {
  if (!(error instanceof Refusal) || !error.problem.fields) return error;
  const fields = Object.fromEntries(
    Object.entries(error.problem.fields).map(([field, messages]) => [COLUMN[field] ?? field, messages]),
  );
  return new Refusal(error.problem.code, { ...error.problem, fields });
}
