import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { password } from '../determinations/schema';
import { REQUIREMENT_KINDS, type RequirementKind } from '../rules/aircraft';
import { parseTenths } from '../rules/hours';
import { filled, said } from '../words/said';

/** An empty box is no limit, which is different from nought. */
const count = (what: string, most: number) =>
  z.preprocess(
    (typed) => (typeof typed === 'string' ? (typed.trim() === '' ? null : Number(typed.trim())) : typed),
    z
      .int(filled(said('{what} are a whole number.'), { what }))
      .min(1, filled(said('{what} are 1 at least, or left empty.'), { what }))
      .max(most, filled(said('{what} are {most} at most.'), { what, most }))
      .nullable(),
  );

const day = (what: string) =>
  z.preprocess(
    (typed) => (typed === '' ? null : typed),
    z.iso.date(filled(said('{what} is a date.'), { what })).nullable(),
  );

/** Kinds whose interval the regulation sets: no figure of ours takes its place (lib/rules/due.ts). */
export const INTERVAL_BY_LAW: Partial<
  Record<
    RequirementKind,
    { readonly months: number | null; readonly days: number | null; readonly tenths: number | null }
  >
> = {
  annual: { months: 12, days: null, tenths: null },
  'hundred-hour': { months: null, days: null, tenths: 1000 },
  'static-and-altimeter': { months: 24, days: null, tenths: null },
  transponder: { months: 24, days: null, tenths: null },
  'elt-inspection': { months: 12, days: null, tenths: null },
  'elt-battery': { months: null, days: null, tenths: null },
  'vor-check': { months: null, days: 30, tenths: null },
};

/** Something that is to fall due again and again. Intervals are whichever comes first; a date is the last good day. */
export const addRequirementInput = z
  .object({
    requestId,
    aircraftId: z.uuid(said('Choose the aircraft.')),
    kind: z.enum(REQUIREMENT_KINDS, said('Choose what it is.')),
    name: writtenWords('A name', 120),
    reference: writtenWords(said('Where it comes from'), 200),
    /** Asked only of a maker's interval; everything else binds. */
    binding: z.boolean().nullable(),
    intervalMonths: count('Months', 1200),
    intervalDays: count('Days', 36_500),
    /** As typed: "100" or "12.5". */
    intervalHours: z
      .string()
      .trim()
      .refine((typed) => typed === '' || parseTenths(typed) !== null, said('Hours such as 100 or 12.5.'))
      .refine(
        (typed) => typed === '' || parseTenths(typed) !== 0,
        said('Hours are more than nought, or left empty.'),
      ),
    fixedExpiry: day('The last good day'),
  })
  .superRefine((typed, context) => {
    const refuse = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    const { kind, intervalMonths, intervalDays, intervalHours, fixedExpiry, binding } = typed;
    const byLaw = INTERVAL_BY_LAW[kind] !== undefined;
    const typedInterval = intervalMonths !== null || intervalDays !== null || intervalHours !== '';
    if (byLaw && typedInterval) {
      refuse('intervalMonths', 'The regulation sets this interval. Leave months, days and hours empty.');
    }
    if (kind === 'elt-battery' && fixedExpiry === null) {
      refuse('fixedExpiry', 'The date marked on the battery is needed: 91.207(c)(2).');
    }
    if (byLaw && kind !== 'elt-battery' && fixedExpiry !== null) {
      refuse('fixedExpiry', 'The regulation sets when this runs out. Leave the date empty.');
    }
    if (!byLaw && !typedInterval && fixedExpiry === null) {
      refuse('intervalMonths', 'At least one is needed: months, days, hours, or a last good day.');
    }
    if (kind === 'maker-interval' && binding === null) {
      refuse('binding', 'Say whether your operation binds itself to it.');
    }
  });

/** It applies no more: superseded, part replaced, equipment taken out. Signed, with the document that says so. */
export const endRequirementInput = z.object({
  requestId,
  requirementId: z.uuid(),
  why: writtenWords(said('The reason'), 500),
  reference: writtenWords(said('The document that says it applies no more'), 200).min(
    3,
    said('Name the document that says it applies no more.'),
  ),
  password,
});

/** A paper renewed: the new date read from the paper itself. */
export const renewPaperInput = z
  .object({
    requestId,
    paperId: z.uuid(),
    /** Null: the paper has no end. */
    validThrough: day('The last day'),
    expires: z.boolean(said('Say whether it runs out.')),
    reference: writtenWords(said('The number or mark of the paper'), 120),
    /** Day of issue, asked of a registration: 47.40(a) counts from it. */
    issuedOn: day('The day of issue'),
    aboard: z.boolean(said('Say whether the paper is aboard.')),
  })
  .refine(({ expires, validThrough }) => !expires || validThrough !== null, {
    path: ['validThrough'],
    message: said('The last day is needed, as the paper says it.'),
  })
  .refine(({ expires, validThrough }) => expires || validThrough === null, {
    path: ['validThrough'],
    message: said('A paper without an end has no last day. Leave it empty, or say that it runs out.'),
  });
