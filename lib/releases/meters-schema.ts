import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { clientInstant } from '../findings/schema';
import { filled, said } from '../words/said';

/** As far as a meter of six digits and a tenth goes. */
const MOST_TENTHS = 9_999_999;

const meterTenths = (name: string) =>
  z
    .int(filled(said('Enter {name} in hours and tenths, for example 2123.4.'), { name }))
    .min(0, filled(said('Enter {name} in hours and tenths, for example 2123.4.'), { name }))
    .max(MOST_TENTHS, filled(said('{name} has six digits and a tenth at most.'), { name }));

/** The meters as read at departure or return, in whole tenths of an hour. The request's number is also the reading's. */
const readMetersInput = z.object({
  requestId,
  releaseId: z.uuid(),
  hobbsTenths: meterTenths('Hobbs'),
  tachTenths: meterTenths('Tach'),
  /** When they were read, by the clock of whoever read them; `now`: as it comes in. */
  readAt: z.literal('now').or(clientInstant),
});

// The phone's message says the moment too; a reading must not become the other one on the way.
export const readMetersOutInput = readMetersInput.extend({ moment: z.literal('out') });
export const readMetersInInput = readMetersInput.extend({ moment: z.literal('in') });
export type ReadMetersInput = z.output<typeof readMetersOutInput> | z.output<typeof readMetersInInput>;

const correctedReading = z.object({
  /** The reading that stands and is mistyped. */
  readingId: z.uuid(),
  hobbsTenths: meterTenths('Hobbs'),
  tachTenths: meterTenths('Tach'),
});

/** A mistyped reading put right. When it was read stays. The request's number is also the new reading's. */
export const correctMetersInput = correctedReading.extend({
  requestId,
  /** With a departure, the return of its flight when that is mistyped too: neither fits beside the other's wrong figure. */
  back: correctedReading.nullable(),
  why: writtenWords(said('Why it is corrected'), 500),
});
export type CorrectMetersInput = z.output<typeof correctMetersInput>;
