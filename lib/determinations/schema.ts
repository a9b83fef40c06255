import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { FINDING_KINDS } from '../findings/schema';
import { said } from '../words/said';

/** The password, asked again because the act is a signature. */
export const password = z.string().min(1, said('Your password is needed to sign.')).max(200);

const COUNT = said('How many is a whole number from 1 to 50.');

/** A mechanic says what the finding is: its kind, system, equipment and severity. */
export const judgeSeverityInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  kind: z.enum(FINDING_KINDS, said('Choose what kind of trouble it is.')),
  jasc: z.string().regex(/^\d{4}$/, said('Choose the system: a JASC code has four digits.')),
  equipmentId: z.uuid().nullable(),
  inoperativeCount: z.int(COUNT).min(1, COUNT).max(50, COUNT).nullable(),
  severity: z.enum(['grounding', 'limiting', 'note'], said('Choose a severity.')),
  statement: writtenWords(said('The reason')),
  password,
});

const measuredValue = z
  .int(said('Enter the number that was measured, in the unit beside the box.'))
  .min(0)
  .max(10_000_000);

/**
 * A mechanic finds a measured condition within a sourced limit. Where the aircraft has a stored limit for the finding,
 * `limitId` names it and `measuredValue` is held against it, in its smallest unit; the words may then stay empty and are
 * made from the limit. Where it has none the words are needed.
 */
export const findWithinLimitsInput = z
  .object({
    requestId,
    discrepancyId: z.uuid(),
    measured: z.string().trim().max(300),
    limitText: z.string().trim().max(300),
    limitSource: z.string().trim().max(300),
    limitId: z.uuid().optional(),
    measuredValue: measuredValue.optional(),
    /** Further stored limits of the same finding (depth and width of one nick), each with its own number. */
    alsoMeasured: z
      .array(z.object({ limitId: z.uuid(), measuredValue }))
      .max(20)
      .optional(),
    statement: writtenWords(said('The finding')),
    password,
  })
  .superRefine(({ limitId, measuredValue: value, measured, limitText, limitSource }, context) => {
    const asks = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (limitId !== undefined) {
      if (value === undefined) asks('measuredValue', 'Enter the number that was measured.');
      return;
    }
    if (measured === '') asks('measured', 'What was measured is needed.');
    if (limitText === '') asks('limitText', 'The limit is needed.');
    if (limitSource === '') asks('limitSource', 'Where the limit comes from is needed.');
  });

/** Lengthens a repair interval once, where the letter of authorization gives the authority. */
export const extendIntervalInput = z.object({
  requestId,
  deferralId: z.uuid(),
  until: z.iso.date(said('Choose the day through which it is extended.')),
  reason: writtenWords(said('The reason'), 500),
  password,
});

/** 91.213(d)(4) for the combination; needed where anything else is out or limited. */
export const together = z
  .literal(true, { error: said('Answer for it together with everything else that is out on this aircraft.') })
  .optional();
/** Ids of the other write-ups that were on the screen when it was answered. */
export const togetherWith = z.array(z.uuid()).max(100).optional();

/** A deferral under 91.213(d) or the minimum equipment list. Nothing is pre-answered. */
export const beginDeferralInput = z.object({
  requestId,
  discrepancyId: z.uuid(),
  method: z.enum(['removed', 'deactivated'], said('Say whether it was removed or deactivated.')),
  methodWords: writtenWords(said('How it was removed or deactivated'), 500),
  deactivationIsMaintenance: z.boolean({ error: said('Say whether deactivating it was maintenance.') }),
  placardWording: writtenWords(said('The placard’s wording'), 120),
  placardLocation: writtenWords(said('Where the placard goes'), 120),
  noHazard: z.literal(true, { error: said('A deferral needs your determination that this is no hazard.') }),
  statement: writtenWords(said('The reason for the determination')),
  melProceduresDone: z.boolean().nullable(),
  eltFirstRemovedOn: z.iso.date(said('This is not a day.')).nullable(),
  eltRecordComplete: z.boolean().nullable(),
  /** Whether something is damaged besides; only what is not goes on. */
  nature: z.enum(['equipment', 'damage'], said('Say whether anything is damaged.')),
  /** (d)(4) for the combination; needed where anything else is out or limited. */
  together,
  togetherWith,
  password,
});

export const placePlacardInput = z.object({ requestId, placardId: z.uuid() });
