import { judgeAgainstLimit, isUsableLimit, type StoredLimit } from '../findings/measured-against-limits';
import { measurementOf, sayMeasured, type Measurement } from '../findings/measurements';
import type { Line } from '../verdict';
import { NO_ANSWER, type ItemAnswer, type StationAnswer, type WalkAnswers } from './answers';
import type { AreaKey } from './areas';
import { judgeSamples } from './fuel-samples';
import type { ListItem, NumberItem, SampleItem, WalkaroundList } from './plan';

/**
 * What the answers of a walkaround mean: item by item, station by station. It runs on the phone too, so it knows neither
 * the catalogue nor the registry of the law, only their keys.
 */

/** A finding that the walk raises by itself; nobody has to type it. */
export interface RaisedByWalk {
  /** Item of the list, or `placardItemKey` of a placard. */
  readonly itemKey: string;
  readonly station: AreaKey;
  /** Null: outside a limit that no usual finding names; a mechanic has to say what it is. */
  readonly findingKey: string | null;
  readonly measurements: Readonly<Record<string, number>>;
  readonly words: string;
  readonly line: Line;
  /** For a drain: how often it may still be sampled before it is maintenance's. */
  readonly repeatsLeft?: number;
  /** The list's limit it is outside of, where the aircraft has none of its own. */
  readonly listLimit?: StoredLimit;
}

export interface ItemVerdict {
  readonly answer: StationAnswer;
  readonly raised: RaisedByWalk | null;
  /** What a number or a sample says; null where there is nothing to say beyond the answer. */
  readonly line: Line | null;
}

export interface WalkVerdict {
  /** In the order of the list. */
  readonly raised: readonly RaisedByWalk[];
  /** By area. */
  readonly stations: Readonly<Record<string, StationAnswer>>;
  /** Stations by their answer. */
  readonly counts: { readonly good: number; readonly withFinding: number; readonly notLookedAt: number };
}

/**
 * Findings that servicing by the pilot ends (oil added, air let in): there the last reading counts, since it was taken
 * after the servicing. Everything else is put right by maintenance, so there the worst reading counts. A test holds this
 * list against `settledBy` of the catalogue.
 */
export const ENDED_BY_SERVICING: ReadonlySet<string> = new Set(['oil-low', 'tyre-low']);

/** What one item's answer means. No answer, or only readings taken back, is "not looked at": never silently good. */
export function judgeItem(
  item: ListItem,
  station: AreaKey,
  answer: ItemAnswer,
  limits: readonly StoredLimit[],
): ItemVerdict {
  const verdict = ((): ItemVerdict => {
    switch (item.kind) {
      case 'look':
        return { answer: answer.looked ?? 'not-looked-at', raised: null, line: null };
      case 'number':
        return judgeNumber(item, station, answer, limits);
      case 'sample':
        return judgeDrain(item, station, answer);
    }
  })();
  return answer.looked === 'finding' ? { ...verdict, answer: 'finding' } : verdict;
}

/** The finding that an item's answer raises by itself, or null. */
export const raisedByItem = (
  item: ListItem,
  station: AreaKey,
  answer: ItemAnswer,
  limits: readonly StoredLimit[],
): RaisedByWalk | null => judgeItem(item, station, answer, limits).raised;

/** The whole walk. A station is good only when every one of its items was looked at and found good. */
export function judgeWalk(
  list: WalkaroundList,
  answers: WalkAnswers,
  limits: readonly StoredLimit[],
): WalkVerdict {
  const raised: RaisedByWalk[] = [];
  const stations: Record<string, StationAnswer> = {};
  for (const { area, items } of list.stations) {
    const verdicts = items.map((item) => judgeItem(item, area, answerOf(answers, item.key), limits));
    raised.push(...verdicts.flatMap((verdict) => verdict.raised ?? []));
    stations[area] = stationAnswer(verdicts.map((verdict) => verdict.answer));
  }
  const count = (answer: StationAnswer) => Object.values(stations).filter((one) => one === answer).length;
  return {
    raised,
    stations,
    counts: {
      good: count('good'),
      withFinding: count('finding'),
      notLookedAt: count('not-looked-at'),
    },
  };
}

/** The item key under which a placard's finding is written. */
export const placardItemKey = (placardId: string): string => `placard-${placardId}`;

/** A placard that should be there and is not: a finding at its place. */
export function raisedByMissingPlacard(
  placard: { readonly id: string; readonly wording: string; readonly location: string },
  station: AreaKey,
): RaisedByWalk {
  const words = `The placard "${placard.wording}" is missing. Its place: ${placard.location}.`;
  return {
    itemKey: placardItemKey(placard.id),
    station,
    findingKey: 'placard-missing',
    measurements: {},
    words,
    line: { effect: 'bars', cite: '14cfr91.213(d)(3)(ii)', because: words },
  };
}

/** The answer given at an item, also where its key is an inherited name. */
export const answerOf = (answers: WalkAnswers, key: string): ItemAnswer =>
  Object.hasOwn(answers.items, key) ? (answers.items[key] ?? NO_ANSWER) : NO_ANSWER;

function stationAnswer(answers: readonly StationAnswer[]): StationAnswer {
  if (answers.includes('finding')) return 'finding';
  return answers.length === 0 || answers.includes('not-looked-at') ? 'not-looked-at' : 'good';
}

function judgeDrain(item: SampleItem, station: AreaKey, { samples }: ItemAnswer): ItemVerdict {
  const { answer, findingKey, repeatsLeft, line } = judgeSamples(item.drain, samples);
  const raised: RaisedByWalk | null =
    findingKey && line
      ? {
          itemKey: item.key,
          station,
          findingKey,
          measurements: { 'fuel-sample-repeats': samples.length },
          words: line.because,
          line,
          repeatsLeft,
        }
      : null;
  return { answer, raised, line };
}

function judgeNumber(
  item: NumberItem,
  station: AreaKey,
  { readings }: ItemAnswer,
  limits: readonly StoredLimit[],
): ItemVerdict {
  const measurement = measurementOf(item.measurement);
  const values = readings
    .filter(({ struck, value }) => !struck && Number.isInteger(value) && value >= 0)
    .map(({ value }) => value);
  const last = values.at(-1);
  if (!measurement || last === undefined) return { answer: 'not-looked-at', raised: null, line: null };
  const { judging, isOfList } = limitsFor(item, measurement, limits);
  const [first] = judging;
  if (!first) {
    const because = `${item.title}: ${sayMeasured(last, measurement.unit)}. Recorded, no limit known.`;
    const line: Line = { effect: 'notes', cite: '14cfr91.405(a)', because };
    return { answer: 'good', raised: null, line };
  }
  const named = { ...measurement, label: item.title };
  const counting = (limit: StoredLimit) =>
    ENDED_BY_SERVICING.has(findingBehind(item, limit) ?? '') ? [last] : values;
  const [worst] = judging
    .flatMap((limit) => counting(limit).map((value) => ({ limit, value, by: distanceOutside(value, limit) })))
    .filter(({ by }) => by > 0)
    .toSorted((a, b) => b.by - a.by);
  if (!worst) return { answer: 'good', raised: null, line: judgeAgainstLimit(last, first, named) };
  const line = judgeAgainstLimit(worst.value, worst.limit, named);
  const raised: RaisedByWalk = {
    itemKey: item.key,
    station,
    findingKey: findingBehind(item, worst.limit),
    measurements: { [item.measurement]: worst.value },
    words: line.because,
    line,
    ...(isOfList ? { listLimit: worst.limit } : {}),
  };
  return { answer: 'finding', raised, line };
}

/** What a value outside the limit is: as the list says, else the finding the limit was stored beside. */
const findingBehind = (item: NumberItem, limit: StoredLimit): string | null =>
  item.findingKey ?? limit.findingKey ?? null;

/** The limits that count: those stored for the very aircraft; only without any that can be used, the list's. */
export function limitsFor(
  item: NumberItem,
  measurement: Measurement,
  limits: readonly StoredLimit[],
): { readonly judging: readonly StoredLimit[]; readonly isOfList: boolean } {
  const own = limits.filter(
    (limit) => limit.measurement === item.measurement && isUsableLimit(limit, measurement),
  );
  if (own.length > 0 || !item.limit) return { judging: own, isOfList: false };
  const ofList: StoredLimit = {
    findingKey: item.findingKey,
    measurement: item.measurement,
    unit: measurement.unit,
    ...item.limit,
    sourceDate: null,
  };
  return { judging: isUsableLimit(ofList, measurement) ? [ofList] : [], isOfList: true };
}

/** How far a value lies outside a limit, in the smallest unit; 0 on the border and within. */
const distanceOutside = (value: number, { min, max }: StoredLimit): number =>
  Math.max(0, min === null ? 0 : min - value, max === null ? 0 : value - max);
