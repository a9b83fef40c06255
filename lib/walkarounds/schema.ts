import { z } from 'zod';
import { requestId } from '../access/request-id';
import { writtenWords } from '../access/written-words';
import { clientInstant } from '../findings/schema';
import { findingOf } from '../rules/findings/catalogue';
import { MEASUREMENTS, type MeasurementKey } from '../rules/findings/measurements';
import { SAMPLE_RESULTS } from '../rules/walkaround/answers';
import { AREA_KEYS } from '../rules/walkaround/areas';
import { filled, said } from '../words/said';

const MOST_STATIONS = 40;
const MOST_ITEMS = 40;
/** Answers of one walkaround: as many as the longest list has items, or its walk could never be finished. */
const MOST_ANSWERS = MOST_STATIONS * MOST_ITEMS;
/** Readings or samples at one item. The phone sets no bound, so that this must be one nobody reaches by hand. */
const MOST_TRIES = 200;

const measured = z.int(said('A whole number of the smallest unit.')).min(0).max(1_000_000);

const limit = z
  .object({
    min: measured.nullable(),
    max: measured.nullable(),
    source: writtenWords(said('The source of the limit'), 200),
  })
  .refine(({ min, max }) => min !== null || max !== null, {
    path: ['min'],
    message: said('A limit has a least, a most, or both.'),
  })
  .refine(({ min, max }) => min === null || max === null || min <= max, {
    path: ['max'],
    message: said('The most is less than the least.'),
  });

const base = {
  key: z.string().regex(/^[a-z0-9][a-z0-9-]{0,79}$/, said('This item has no valid key.')),
  title: writtenWords(said('What to look at'), 80),
  lookFor: z.string().trim().max(300, said('This can have 300 characters at most.')),
};

const numberItem = z
  .object({
    ...base,
    kind: z.literal('number'),
    measurement: z.enum(Object.keys(MEASUREMENTS) as MeasurementKey[], said('Choose what is measured.')),
    limit: limit.nullable(),
    findingKey: z.string().max(80).nullable(),
  })
  .refine(({ limit, findingKey }) => limit === null || findingKey !== null, {
    path: ['findingKey'],
    message: said('Say what a value outside the limit is written up as.'),
  })
  .refine(({ findingKey, measurement }) => findingKey === null || judges(findingKey, measurement), {
    path: ['findingKey'],
    message: said('This finding is not about this measurement.'),
  });

/** Whether the catalogue's finding is about this measurement. */
const judges = (findingKey: string, measurement: string): boolean =>
  findingOf(findingKey)?.measurements.some(({ key }) => key === measurement) ?? false;

const item = z.discriminatedUnion('kind', [
  z.object({ ...base, kind: z.literal('look') }),
  numberItem,
  z.object({ ...base, kind: z.literal('sample'), drain: writtenWords(said('The name of the drain'), 10) }),
]);

/** A list as it is stored: each area once, each item key and each drain once, see lib/rules/walkaround/plan.ts. */
export const walkaroundList = z
  .object({
    stations: z
      .array(
        z.object({
          area: z.enum(
            AREA_KEYS as [string, ...string[]] as [(typeof AREA_KEYS)[number]],
            said('Choose the place.'),
          ),
          title: writtenWords(said('The name of the station'), 80),
          items: z
            .array(item)
            .min(1, said('A station has at least one item.'))
            .max(
              MOST_ITEMS,
              filled(said('A station can have {most_items} items at most.'), { most_items: MOST_ITEMS }),
            ),
        }),
      )
      .min(1, said('A list has at least one station.'))
      .max(
        MOST_STATIONS,
        filled(said('A list can have {most_stations} stations at most.'), { most_stations: MOST_STATIONS }),
      ),
  })
  .superRefine(({ stations }, context) => {
    const areas = new Set<string>();
    const keys = new Set<string>();
    const drains = new Set<string>();
    const once = (seen: Set<string>, value: string, path: (string | number)[], message: string) => {
      if (seen.has(value)) context.addIssue({ code: 'custom', path, message });
      seen.add(value);
    };
    stations.forEach(({ area, items }, at) => {
      once(areas, area, ['stations', at, 'area'], 'This place stands in the list already.');
      items.forEach((one, place) => {
        const path = ['stations', at, 'items', place];
        once(keys, one.key, [...path, 'key'], 'This item stands in the list already.');
        if (one.kind === 'sample') {
          once(drains, one.drain.toLowerCase(), [...path, 'drain'], 'This drain stands in the list already.');
        }
      });
    });
  });

/** A new version of a type's list. */
export const writeListInput = z.object({
  requestId,
  typeId: z.uuid(),
  /** The version the writer started from; 0 where there was none yet. */
  fromVersion: z.int().min(0),
  list: walkaroundList,
  why: writtenWords(said('Why this version is made'), 500),
});

/** A walkaround begun. `planId` null: by the starting list; left out: a message of before there were lists. */
export const startWalkaroundInput = z.object({
  requestId,
  aircraftId: z.uuid(),
  startedAt: clientInstant,
  planId: z.uuid().nullable().optional(),
});

const itemAnswer = z.object({
  looked: z.enum(['good', 'finding']).nullable(),
  readings: z.array(z.object({ value: measured, at: clientInstant, struck: z.boolean() })).max(MOST_TRIES),
  samples: z.array(z.object({ result: z.enum(SAMPLE_RESULTS), at: clientInstant })).max(MOST_TRIES),
});

const atMost = (most: number) => (record: Record<string, unknown>) => Object.keys(record).length <= most;

const walkAnswers = z.object({
  items: z
    .record(z.string().max(80), itemAnswer)
    .refine(atMost(MOST_ANSWERS), said('These are too many answers.')),
  placards: z
    .record(z.uuid(), z.enum(['there', 'missing']))
    .refine(atMost(MOST_ANSWERS), said('These are too many answers.')),
});

/**
 * A walkaround ended: what was answered item by item and when, or, from before there were lists, the answer at each
 * station. Optional fields, not defaulted: an older message must keep its hash, or a second try would be a conflict.
 */
export const finishWalkaroundInput = z
  .object({
    requestId,
    walkaroundId: z.uuid(),
    stations: z.record(z.string().max(60), z.enum(['good', 'finding', 'not-looked-at'])).optional(),
    answers: walkAnswers.optional(),
    finishedAt: clientInstant.optional(),
  })
  .refine(({ stations, answers }) => (stations === undefined) !== (answers === undefined), {
    path: ['answers'],
    message: said('What was answered is needed.'),
  })
  .refine(({ answers, finishedAt }) => answers === undefined || finishedAt !== undefined, {
    path: ['finishedAt'],
    message: said('The time is needed.'),
  });
