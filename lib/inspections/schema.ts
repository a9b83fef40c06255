import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { password, together, togetherWith } from '../determinations/schema';
import { parseTenths } from '../rules/hours';
import type { InspectionKind, InspectionPart } from '../rules/part-43/43-11-inspection-entry';
import { RUN_UP_ANSWERS, RUN_UP_CHECKS, type RunUpKey } from '../rules/part-43/43-15-performance';
import { said } from '../words/said';

// Said here anew, because forms read this file and the rule would bring a calendar library into them.
export const KINDS = ['annual', 'hundred-hour'] as const satisfies readonly InspectionKind[];
export const PARTS = ['airframe', 'powerplant', 'propeller'] as const satisfies readonly InspectionPart[];

/** Hours as a meter or a logbook shows them; whole tenths are made of them by the service, never by a float. */
export const hoursText = z
  .string()
  .trim()
  .refine(
    (text) => parseTenths(text) !== null,
    said('Hours as the record shows them: 4512.3, one decimal at most.'),
  );

export const yesOrNo = (error: string) => z.boolean({ error });

export const beginInspectionInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  kind: z.enum(KINDS, said('Say whether it is an annual or a 100-hour inspection.')),
  requirementIds: z.array(z.uuid()).min(1, said('An inspection answers something that is due.')).max(10),
  visitId: z.uuid().nullable(),
});

const runUpCheck = z
  .object({
    answer: z.enum(RUN_UP_ANSWERS, said('Say what the engine run showed.')),
    reading: z.string().trim().max(200),
  })
  .refine(({ answer, reading }) => answer === 'not-run' || reading !== '', {
    path: ['reading'],
    error: said('Write down what was read, or how it was judged.'),
  });

const runUp = z.object(
  Object.fromEntries(RUN_UP_CHECKS.map(({ key }) => [key, runUpCheck])) as Record<
    RunUpKey,
    typeof runUpCheck
  >,
);

/** What 43.15 asks about how it was made; kept beside the inspection as it was answered. */
export const performance = z.object({
  madeToDetermineAirworthiness: yesOrNo('Say whether it was made to find out if the aircraft is airworthy.'),
  checklistCoversAppendixD: yesOrNo('Say whether the checklist covers Appendix D.'),
  runUp,
});
export type Performance = z.output<typeof performance>;

export const enterInspectionInput = performance.extend({
  requestId,
  inspectionId: z.uuid(),
  extent: writtenWords(said('What was inspected'), 1000),
  checklist: writtenWords(said('The checklist, by name and revision,'), 300),
  ttis: hoursText,
  completedOn: z.iso.date(said('The day the inspection was completed is needed.')),
});

export const listInput = z.object({
  requestId,
  inspectionId: z.uuid(),
  /** Every open write-up that is not deferred, with what the inspector says of it. */
  standings: z
    .array(
      z.object({
        discrepancyId: z.uuid(),
        unairworthy: yesOrNo('Say whether this makes the aircraft unairworthy.'),
      }),
    )
    .max(200),
  /** Hash of the open items and placards that were shown. */
  seen: z.string().length(64),
  password,
});

export const signInspectionInput = z.object({
  requestId,
  inspectionId: z.uuid(),
  part: z.enum(PARTS, said('Choose the part you sign for.')),
  airworthy: yesOrNo('Say what you found: airworthy, or not.'),
  /** 43.3(d): a required inspection is made by whoever signs it, not by a helper. */
  madeByMe: yesOrNo('Say whether you made this inspection yourself.'),
  /** Hash of what the signer saw. */
  entryHash: z.string().length(64),
  password,
});

export const giveUpInspectionInput = z.object({
  requestId,
  inspectionId: z.uuid(),
  words: writtenWords(said('Why the inspection is given up'), 500),
});

export const disposeDeferralInput = z
  .object({
    requestId,
    deferralId: z.uuid(),
    /** The open inspection, or the recorded one that passed without a word; exactly one of them. */
    inspectionId: z.uuid().nullable(),
    complianceId: z.uuid().nullable(),
    disposition: z.enum(['inspected', 'removed'], said('Say what becomes of the item.')),
    statement: writtenWords(said('What was found')),
    /** For `inspected`: 91.213(d)(4) determined afresh. */
    noHazard: z.boolean().nullable(),
    /** For `inspected`: the same for the combination, where anything else is out or limited. */
    together,
    togetherWith,
    /** For `removed`: equipment list and weight and balance were revised. */
    listsRevised: z.boolean().nullable(),
    password,
  })
  .refine((input) => (input.inspectionId === null) !== (input.complianceId === null), {
    path: ['inspectionId'],
    error: said('Name the inspection at which this was found.'),
  })
  .refine((input) => input.disposition !== 'inspected' || input.noHazard === true, {
    path: ['noHazard'],
    error: said('Left inoperative, it needs your determination that this is no hazard.'),
  })
  .refine((input) => input.disposition !== 'removed' || input.listsRevised === true, {
    path: ['listsRevised'],
    error: said('Revise the equipment list and the weight and balance first, then say so.'),
  });
