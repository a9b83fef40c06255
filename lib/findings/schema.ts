import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { said } from '../words/said';

export const FINDING_KINDS = [
  'inoperative',
  'damage',
  'wear',
  'leak',
  'contamination',
  'fastener',
  'servicing',
  'document',
  'cosmetic',
] as const;

/** An instant the client says; the server keeps its own beside it. */
export const clientInstant = z.iso.datetime({ offset: true, error: said('This is not a time.') });

/** One finding, as the phone sends it. The request's number is also the finding's. */
export const reportFindingInput = z.object({
  requestId,
  aircraftId: z.uuid(said('Choose the aircraft.')),
  walkaroundId: z.uuid().nullable(),
  station: writtenWords(said('The place on the aircraft'), 60),
  /** Key of the catalogue, or null for "something else". */
  findingKey: z.string().max(80).nullable(),
  kind: z.enum(FINDING_KINDS, said('Choose what kind of trouble it is.')).nullable(),
  /** JASC code where the catalogue's finding covers several (which gauge, which side), else null. */
  jasc: z
    .string()
    .regex(/^\d{4}$/)
    .nullable(),
  equipmentId: z.uuid().nullable(),
  inoperativeCount: z.int().min(1).max(50).nullable(),
  place: z.string().trim().max(200, said('The place can have 200 characters at most.')),
  words: writtenWords('A description', 2000),
  /** Integers in the catalogue's smallest unit. */
  measurements: z.record(z.string().max(60), z.int().min(-1_000_000).max(1_000_000)),
  foundAt: clientInstant,
  // Optional, not defaulted: a message of before these fields must keep its hash, or a second try would be a conflict.
  /** Item of the walkaround list it was found at. */
  itemKey: z.string().max(80).nullable().optional(),
  phase: z.enum(['before-flight', 'in-flight', 'after-flight']).nullable().optional(),
  /** An earlier write-up it is the same as, only worse or back again. */
  relatedId: z.uuid().nullable().optional(),
});
export type ReportFindingInput = z.input<typeof reportFindingInput>;

/** A write-up seen again, as the phone sends it. The request's number is also the observation's. */
export const addObservationInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  walkaroundId: z.uuid().nullable(),
  station: writtenWords(said('The place on the aircraft'), 60),
  itemKey: z.string().max(80).nullable(),
  words: writtenWords('A description', 2000),
  /** Integers in the catalogue's smallest unit. */
  measurements: z.record(z.string().max(60), z.int().min(-1_000_000).max(1_000_000)),
  foundAt: clientInstant,
  phase: z.enum(['before-flight', 'in-flight', 'after-flight']).nullable(),
});
export type AddObservationInput = z.input<typeof addObservationInput>;

/** Oil added, tyre inflated, drain sampled clean: done by the pilot, no maintenance entry. */
export const recordServicingInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  words: writtenWords(said('What was done'), 1000),
  /** Oil poured in, tenths of a quart. Optional, not defaulted: nobody who did not say it added none. */
  oilAddedTenths: z
    .int(said('Quarts such as 1 or 0.5.'))
    .min(1, said('Leave it empty when no oil was added.'))
    .max(200, said('That is more oil than an engine takes.'))
    .optional(),
});
