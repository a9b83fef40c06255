import { z } from 'zod';
import { requestId } from '../access/request-id';
import { PURPOSE_NAMES } from '../rules/purpose-in-words';
import { said } from '../words/said';
import type { HouseReach, HouseSetting } from '../rules/house/house-rule';
import type { Purpose } from '../rules/operations';
import { AREA_KEYS } from '../rules/walkaround/areas';

/** The most of each setting that makes sense; past it somebody has mistyped. */
export const MOST = {
  oilTenths: 300,
  hours: 720,
  reserveTenths: 1000,
  deferrals: 99,
  days: 3650,
  words: 300,
  why: 500,
  named: 200,
} as const;

const whole = (least: number, most: number, say: string) => z.int(say).min(least, say).max(most, say);

const hours = whole(1, MOST.hours, said('Enter whole hours from 1 to 720.'));
const chapter = z.string().regex(/^\d{2}$/, said('A chapter is two digits, for example 61.'));
const area = z.enum([...AREA_KEYS] as [string, ...string[]], said('Choose the place.'));
const purpose = z.enum(Object.keys(PURPOSE_NAMES) as [Purpose, ...Purpose[]], said('Choose the purpose.'));

/** Each kind with its settings; what is stored is read by it too, so a setting may be added but never come to mean something else. */
export const houseSetting = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('no-night-with-deferral') }),
  z.object({ kind: z.literal('no-ifr-with-deferral') }),
  z.object({ kind: z.literal('solo-never-with-limits') }),
  z.object({
    kind: z.literal('no-students-at-night'),
    flights: z.enum(['solo', 'solo-and-dual'], said('Choose the flights.')),
  }),
  z.object({
    kind: z.literal('oil-minimum'),
    leastTenthsQuart: whole(1, MOST.oilTenths, said('Enter quarts from 0.1 to 30.0, in tenths.')),
    oldestHours: hours,
  }),
  z.object({ kind: z.literal('walkaround-before-flight'), oldestHours: hours }),
  z
    .object({
      kind: z.literal('mechanic-looks-at'),
      chapters: z.array(chapter).max(MOST.named),
      areas: z.array(area).max(MOST.named),
    })
    .refine(({ chapters, areas }) => chapters.length + areas.length > 0, {
      path: ['chapters'],
      message: said('Choose at least one chapter or place.'),
    }),
  z.object({
    kind: z.literal('reserve-before-inspection'),
    reserveTenths: whole(1, MOST.reserveTenths, said('Enter hours from 0.1 to 100.0, in tenths.')),
    counts: z.enum(['hundred-hour', 'all-by-hours'], said('Choose what counts.')),
  }),
  z.object({
    kind: z.literal('most-deferrals'),
    most: whole(0, MOST.deferrals, said('Enter a whole number from 0 to 99.')),
  }),
  z.object({
    kind: z.literal('deferral-no-older'),
    days: whole(1, MOST.days, said('Enter whole days from 1 to 3650.')),
  }),
  z.object({
    kind: z.literal('limit-in-own-words'),
    purposes: z.array(purpose).min(1, said('Choose at least one purpose.')),
    words: z
      .string()
      .trim()
      .min(1, said('Enter the limit.'))
      .max(MOST.words, said('The limit can have 300 characters at most.')),
  }),
]) satisfies z.ZodType<HouseSetting>;

/** The whole fleet, or what is named. A rule for nothing would be no rule. */
export const houseReach = z
  .object({
    aircraftIds: z.array(z.uuid()).max(MOST.named),
    typeIds: z.array(z.uuid()).max(MOST.named),
  })
  .refine(({ aircraftIds, typeIds }) => aircraftIds.length + typeIds.length > 0, {
    path: ['aircraftIds'],
    message: said('Choose at least one aircraft or type, or the whole fleet.'),
  })
  .nullable() satisfies z.ZodType<HouseReach | null>;

const why = z
  .string()
  .trim()
  .min(1, said('Say why. Whoever meets the rule reads it.'))
  .max(MOST.why, said('The reason can have 500 characters at most.'));

/** A new rule, or the next version of one: then with the version the writer saw. */
export const setHouseRuleInput = z.object({
  requestId,
  of: z.object({ ruleId: z.uuid(), seenVersion: z.int().min(1) }).nullable(),
  setting: houseSetting,
  reach: houseReach,
  why,
});

export const endHouseRuleInput = z.object({
  requestId,
  ruleId: z.uuid(),
  seenVersion: z.int().min(1),
  why,
});

export const previewHouseRuleInput = z.object({
  /** The rule whose newest version it would take the place of. */
  ruleId: z.uuid().nullable(),
  /** Null: what its end would change. */
  setting: houseSetting.nullable(),
  reach: houseReach,
});
