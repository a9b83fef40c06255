import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';

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
export const clientInstant = z.iso.datetime({ offset: true, error: 'This is not a time.' });

/** A walkaround begun. */
export const startWalkaroundInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  startedAt: clientInstant,
});

/** A walkaround ended, with the answer at each station. */
export const finishWalkaroundInput = z.object({
  requestId,
  walkaroundId: z.uuid(),
  stations: z.record(z.string().max(60), z.enum(['good', 'finding', 'not-looked-at'])),
});

/** One finding, as the phone sends it. The request's number is also the finding's. */
export const reportFindingInput = z.object({
  requestId,
  aircraftId: z.uuid('Choose the aircraft.'),
  walkaroundId: z.uuid().nullable(),
  station: writtenWords('The place on the aircraft', 60),
  /** Key of the catalogue, or null for "something else". */
  findingKey: z.string().max(80).nullable(),
  kind: z.enum(FINDING_KINDS, 'Choose what kind of trouble it is.').nullable(),
  /** JASC code where the catalogue's finding covers several (which gauge, which side), else null. */
  jasc: z
    .string()
    .regex(/^\d{4}$/)
    .nullable(),
  equipmentId: z.uuid().nullable(),
  inoperativeCount: z.int().min(1).max(50).nullable(),
  place: z.string().trim().max(200, 'The place can have 200 characters at most.'),
  words: writtenWords('A description', 2000),
  /** Integers in the catalogue's smallest unit. */
  measurements: z.record(z.string().max(60), z.int().min(-1_000_000).max(1_000_000)),
  foundAt: clientInstant,
});
export type ReportFindingInput = z.input<typeof reportFindingInput>;

/** Oil added, tyre inflated, drain sampled clean: done by the pilot, no maintenance entry. */
export const recordServicingInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  words: writtenWords('What was done', 1000),
});
