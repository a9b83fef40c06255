import { z } from 'zod';
import { requestId } from '../access/request-id';
import { documentNamed, password, reason } from '../aircraft/asked';
import { said } from '../words/said';
import { faultsOfLine, lineInput } from './line';
import { rowFile } from './row-file';
import { SET_NAMES } from './starting-sets';

/** A line that can be kept: each field, and what they say together. */
export const wholeLine = lineInput.superRefine((line, context) => {
  for (const { field, message } of faultsOfLine(line)) {
    context.addIssue({ code: 'custom', path: [field], message });
  }
});

export const beginSetInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  sets: z.array(z.enum(SET_NAMES)).min(1, said('Choose at least one set.')),
});

export const enterLineInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  /** Null: a new line. */
  equipmentId: z.uuid().nullable(),
  line: wholeLine,
  source: documentNamed,
  password,
});

/** The most lines one signature covers. */
export const MOST_AT_ONCE = 200;

const decided = {
  equipmentId: z.uuid(),
  /** The document this line was held against. */
  source: documentNamed,
};

/** What was decided of one line in a sitting. */
export const decision = z.discriminatedUnion('kind', [
  z.object({ ...decided, kind: z.literal('agrees'), line: wholeLine }),
  z.object({ ...decided, kind: z.literal('not-installed') }),
]);
export type Decision = z.output<typeof decision>;

export const confirmLinesInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  decisions: z
    .array(decision)
    .min(1, said('Decide about at least one item first.'))
    .max(MOST_AT_ONCE, said('Sign for 200 items at most at once.')),
  password,
});

export const removeLineInput = z.object({
  requestId,
  equipmentId: z.uuid(),
  why: reason,
  source: documentNamed,
  password,
});

export const checkEquipmentInput = z.object({ aircraftId: z.uuid(), ...rowFile });
export const importEquipmentInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  ...rowFile,
  source: documentNamed,
  password,
});
