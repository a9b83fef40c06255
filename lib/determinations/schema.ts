import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { FINDING_KINDS } from '../findings/schema';

/** The password, asked again because the act is a signature. */
export const password = z.string().min(1, 'Your password is needed to sign.').max(200);

const COUNT = 'How many is a whole number from 1 to 50.';

/** A mechanic says what the finding is: its kind, system, equipment and severity. */
export const judgeSeverityInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  kind: z.enum(FINDING_KINDS, 'Choose what kind of trouble it is.'),
  jasc: z.string().regex(/^\d{4}$/, 'Choose the system: a JASC code has four digits.'),
  equipmentId: z.uuid().nullable(),
  inoperativeCount: z.int(COUNT).min(1, COUNT).max(50, COUNT).nullable(),
  severity: z.enum(['grounding', 'limiting', 'note'], 'Choose a severity.'),
  statement: writtenWords('The reason'),
  password,
});

/** A mechanic finds a measured condition within a sourced limit. */
export const findWithinLimitsInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  measured: writtenWords('What was measured', 300),
  limitText: writtenWords('The limit', 300),
  limitSource: writtenWords('Where the limit comes from', 300),
  statement: writtenWords('The finding'),
  password,
});

/** A deferral under 91.213(d) or the minimum equipment list. Nothing is pre-answered. */
export const beginDeferralInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  method: z.enum(['removed', 'deactivated'], 'Say whether it was removed or deactivated.'),
  methodWords: writtenWords('How it was removed or deactivated', 500),
  deactivationIsMaintenance: z.boolean({ error: 'Say whether deactivating it was maintenance.' }),
  placardWording: writtenWords('The placard’s wording', 120),
  placardLocation: writtenWords('Where the placard goes', 120),
  noHazard: z.literal(true, { error: 'A deferral needs your determination that this is no hazard.' }),
  statement: writtenWords('The reason for the determination'),
  melProceduresDone: z.boolean().nullable(),
  eltFirstRemovedOn: z.iso.date('This is not a day.').nullable(),
  eltRecordComplete: z.boolean().nullable(),
  password,
});

export const placePlacardInput = z.object({ requestId, placardId: z.uuid() });
