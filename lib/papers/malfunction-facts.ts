import { z } from 'zod';

/**
 * Facts of a malfunction or defect, for whoever reports it to the authority: a form of our own, not the authority's. A fact
 * nobody has is null, and `notStated` says so by name; nothing is guessed. Hours are text with one decimal ("1234.5").
 */
export const MALFUNCTION_FACTS = 'wheelchock.malfunction-facts.v1';

const hours = z
  .string()
  .regex(/^\d+\.\d$/)
  .nullable();
const words = z.string().min(1);

export const malfunctionFacts = z.strictObject({
  schema: z.literal(MALFUNCTION_FACTS),
  /** When these facts were taken from the records, UTC. */
  madeAt: z.iso.datetime(),
  writeUp: words,
  operator: words,
  aircraft: z.strictObject({
    registration: words,
    type: words,
    serial: words,
    totalTimeHours: hours,
  }),
  engine: z.strictObject({ type: words, serial: words.nullable() }).nullable(),
  propeller: z.strictObject({ type: words, serial: words.nullable() }).nullable(),
  /** JASC code and its title. */
  system: z.strictObject({ code: z.string().regex(/^\d{4}$/), title: words }).nullable(),
  part: z.strictObject({
    name: words.nullable(),
    number: words.nullable(),
    serial: words.nullable(),
    condition: words.nullable(),
    location: words.nullable(),
    totalTimeHours: hours,
    timeSinceOverhaulHours: hours,
  }),
  /** Day at the base. */
  foundOn: z.iso.date(),
  foundDuring: words.nullable(),
  description: words,
  /** What was done about it, oldest first. */
  done: z.array(words),
  submitter: z.strictObject({ name: words, organisation: words }),
  /** Paths of the facts above that nobody has stated. */
  notStated: z.array(words),
});

export type MalfunctionFacts = z.infer<typeof malfunctionFacts>;

/** The facts with their gaps named. Throws when they do not fit the form: that is a bug of ours. */
export function withGaps(facts: Omit<MalfunctionFacts, 'schema' | 'notStated'>): MalfunctionFacts {
  return malfunctionFacts.parse({ schema: MALFUNCTION_FACTS, ...facts, notStated: gapsIn(facts) });
}

/** Paths of every null, in the order of the form. */
function gapsIn(value: unknown, path = ''): string[] {
  if (value === null) return [path];
  if (typeof value !== 'object' || Array.isArray(value)) return [];
  return Object.entries(value as Record<string, unknown>).flatMap(([key, inner]) =>
    gapsIn(inner, path === '' ? key : `${path}.${key}`),
  );
}
