import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { password } from '../determinations/schema';

/** Kinds of work a write-up can lead to. Inspections and tests have their own door. */
export const REPAIR_KINDS = ['preventive', 'minor', 'major'] as const;

/** Work begun on a write-up. */
export const startWorkInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  title: writtenWords('What is to be done', 200),
  workKind: z.enum(REPAIR_KINDS, 'Say whether this is preventive, minor or major.'),
  preventiveItem: z.int('Choose the item.').min(1).max(31).nullable(),
  swapOnly: z.boolean({ error: 'Say whether a unit was only taken out and put in.' }),
});

/** The entry of 43.9(a), written before it is signed. */
export const enterWorkInput = z.object({
  requestId,
  workId: z.uuid(),
  description: writtenWords('A description of the work'),
  references: z.string().trim().max(500),
  partsUsed: z.string().trim().max(1000),
  completedOn: z.iso.date('The day the work was completed is needed.'),
  performedBy: writtenWords('The name of whoever did the work', 200),
  checkFlightNeeded: z.boolean({
    error: 'Say whether this could have changed how the aircraft flies.',
  }),
  checkFlightReason: writtenWords('The reason for the answer on the check flight', 500),
});

export const signWorkInput = z.object({
  requestId,
  workId: z.uuid(),
  /** Hash of the entry the signer saw; what changed since is not signed unseen. */
  entryHash: z.string().length(64),
  placardRemoved: z.boolean().nullable(),
  password,
});

export const abandonWorkInput = z.object({
  requestId,
  workId: z.uuid(),
  words: writtenWords('Why the work was not done', 500),
});

export const logCheckFlightInput = z.object({
  requestId,
  workId: z.uuid(),
  words: writtenWords('What was checked and found', 1000),
  flownOn: z.iso.date('The day of the flight is needed.'),
  password,
});
