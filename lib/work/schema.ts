import { z } from 'zod';
import { requestId } from '../access/request-id';
import { password } from '../determinations/schema';

const words = (what: string, max = 2000) =>
  z.string().trim().min(1, `${what} is needed.`).max(max, `${what} can have ${max} characters at most.`);

/** Kinds of work a write-up can lead to. Inspections and tests have their own door. */
export const REPAIR_KINDS = ['preventive', 'minor', 'major'] as const;

/** Work begun on a write-up. */
export const startWorkInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  title: words('What is to be done', 200),
  workKind: z.enum(REPAIR_KINDS, 'Say whether this is preventive, minor or major.'),
  preventiveItem: z.int('Choose the item.').min(1).max(31).nullable(),
  swapOnly: z.boolean({ error: 'Say whether a unit was only taken out and put in.' }),
});

/** The entry of 43.9(a), written before it is signed. */
export const enterWorkInput = z.object({
  requestId,
  workId: z.uuid(),
  description: words('A description of the work'),
  references: z.string().trim().max(500),
  partsUsed: z.string().trim().max(1000),
  completedOn: z.iso.date('The day the work was completed is needed.'),
  performedBy: words('The name of whoever did the work', 200),
  checkFlightNeeded: z.boolean({
    error: 'Say whether this could have changed how the aircraft flies.',
  }),
  checkFlightReason: words('The reason for the answer on the check flight', 500),
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
  words: words('Why the work was not done', 500),
});

export const logCheckFlightInput = z.object({
  requestId,
  workId: z.uuid(),
  words: words('What was checked and found', 1000),
  flownOn: z.iso.date('The day of the flight is needed.'),
  password,
});
