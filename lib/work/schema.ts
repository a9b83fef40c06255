import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { password } from '../determinations/schema';
import { parseTenths } from '../rules/hours';
import type { MajorRecordKind } from '../rules/part-43/43-5-before-approval';
import type { WorkerStanding } from '../rules/part-43/43-3-who-may-perform';
import { partsInput } from './parts';
import { said } from '../words/said';

// Said here anew, because forms read this file and the rules would bring the text of the law into them.
const MAJOR_RECORDS = ['form-337', 'work-order'] as const satisfies readonly MajorRecordKind[];
const WORKER_STANDINGS = ['supervised', 'certificated'] as const satisfies readonly WorkerStanding[];

/** Kinds of work a write-up can lead to. Inspections and tests have their own door. */
export const REPAIR_KINDS = ['preventive', 'minor', 'major'] as const;

/** Tests that work can leave owed, and the kind of work each is. */
export const TEST_KINDS = ['static-test', 'altimeter-transponder-test'] as const;

export const startTestInput = z.object({
  requestId,
  /** The signed work that leaves the test owed. */
  testForId: z.uuid(),
  title: writtenWords(said('What is to be tested'), 200),
  workKind: z.enum(TEST_KINDS, said('Choose the test.')),
  /** Instrument: static system, altimeter and altitude reporting. Avionics: the transponder. */
  part: z.enum(['instrument', 'avionics'], said('Say what is tested.')),
});

export const startRepairInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  title: writtenWords(said('What is to be done'), 200),
  workKind: z.enum(REPAIR_KINDS, said('Say whether this is preventive, minor or major.')),
  preventiveItem: z.int(said('Choose the item.')).min(1).max(31).nullable(),
  swapOnly: z.boolean({ error: said('Say whether a unit was only taken out and put in.') }),
});

/** Work begun on a write-up, or the test that signed work left owed. */
export const startWorkInput = z.discriminatedUnion('workKind', [startRepairInput, startTestInput], {
  error: said('Say whether this is preventive, minor or major.'),
});

export const OUTCOMES = ['repaired', 'could-not-duplicate'] as const;

const LIMITS = said('Say whether the flight manual’s limits or data changed.');
const TANK = said('Say whether a fuel tank was put into the cabin or baggage compartment.');
const optionalWords = (max: number) => z.string().trim().max(max).optional();
const HOURS = said('Hours of work are written as on a meter: 1.5.');

/** Hours of work as typed, with one decimal; empty when nobody counted. */
const laborHours = z
  .string()
  .trim()
  .refine((typed) => typed === '' || parseTenths(typed) !== null, HOURS)
  .optional();

/**
 * The entry of 43.9(a), written before it is signed. What is asked depends on the work (`asksOf` in entry-asks.ts): a
 * field that was not asked may be left out.
 */
export const enterWorkInput = z.object({
  requestId,
  workId: z.uuid(),
  /** Hash of the entry that was on the screen; what somebody else wrote meanwhile is not written over unseen. */
  entryHash: z.string().length(64).optional(),
  /** To enter it as another kind of repair than it was begun as. */
  workKind: z.enum(['minor', 'major'], said('Say whether this is a minor or a major repair.')).optional(),
  outcome: z.enum(OUTCOMES, said('Say what came of it.')).optional(),
  lookedFor: optionalWords(1000),
  description: writtenWords(said('A description of the work')),
  references: z.string().trim().max(500),
  parts: partsInput.optional(),
  /** Parts in words, of entries begun before they had lines. */
  partsUsed: optionalWords(1000),
  laborHours,
  completedOn: z.iso.date(said('The day the work was completed is needed.')),
  performedBy: writtenWords(said('The name of whoever did the work'), 200),
  /** Answers to the questions of Appendix A(b), by question. */
  majorAnswers: z.record(z.string().max(60), z.boolean()).optional(),
  majorRecord: z.enum(MAJOR_RECORDS, said('Say which paper records the major repair.')).optional(),
  form337: optionalWords(200),
  approvedData: optionalWords(500),
  limitsChanged: z.boolean({ error: LIMITS }).optional(),
  limitsRevised: optionalWords(500),
  cabinTank: z.boolean({ error: TANK }).optional(),
  copyAboard: z.boolean().optional(),
  /** Answers of 91.411(a)(2), (a)(3) and 91.413(b). */
  tests: z
    .object({
      staticOpened: z.boolean().optional(),
      altitudeError: z.boolean().optional(),
      transponderError: z.boolean().optional(),
    })
    .optional(),
  checkFlightNeeded: z.boolean({
    error: said('Say whether this could have changed how the aircraft flies.'),
  }),
  checkFlightReason: writtenWords(said('The reason for the answer on the check flight'), 500),
  /** Of work on something that recurs: what its record says beyond the entry. */
  details: z
    .object({
      testedToFt: z.int().min(0).max(60000).optional(),
      newExpiry: z.iso.date(said('This is not a day.')).optional(),
      method: optionalWords(500),
      revision: optionalWords(100),
    })
    .optional(),
});

export const signWorkInput = z.object({
  requestId,
  workId: z.uuid(),
  /** Hash of the entry the signer saw; what changed since is not signed unseen. */
  entryHash: z.string().length(64),
  placardRemoved: z.boolean().nullable(),
  /** 43.3: how somebody else than the signer could do the work. Left out where the signer did it. */
  worker: z.enum(WORKER_STANDINGS, said('Say how whoever did the work could do it.')).nullish(),
  password,
});

export const correctWorkInput = z.object({
  requestId,
  workId: z.uuid(),
  why: writtenWords(said('Why the entry is corrected'), 500),
});

export const abandonWorkInput = z.object({
  requestId,
  workId: z.uuid(),
  words: writtenWords(said('Why the work was not done'), 500),
});

export const logCheckFlightInput = z.object({
  requestId,
  workId: z.uuid(),
  words: writtenWords(said('What was checked and found'), 1000),
  flownOn: z.iso.date(said('The day of the flight is needed.')),
  password,
});
