import type { MeasurementKey } from '../lib/rules/findings/measurements';
import type { SampleResult } from '../lib/rules/walkaround/answers';
import { areaTitle, type AreaKey } from '../lib/rules/walkaround/areas';
import type { ItemLimit, ListItem, ListStation, WalkaroundList } from '../lib/rules/walkaround/plan';
import { drainItem, STARTING_LIST } from '../lib/rules/walkaround/starting-list';

/**
 * The walkaround lists of the demo's types, made from the starting list, and a few walkarounds of past days. Limits and the
 * manuals they are taken from are invented: no figure here is any maker's.
 */

/** One version of a type's list. */
export interface ListPlan {
  /** Key of the type. */
  readonly type: string;
  readonly daysAgo: number;
  readonly why: string;
  readonly list: WalkaroundList;
}

/** A walkaround of all items: good, but for what is named. Numbers not named are the type's usual ones. */
export interface WalkPlan {
  readonly aircraft: string;
  readonly daysAgo: number;
  /** Local time at which it was begun. */
  readonly at: string;
  readonly by: string;
  readonly minutes: number;
  readonly numbers: Readonly<Partial<Record<MeasurementKey, readonly number[]>>>;
  /** By drain, where it was not clean at once. */
  readonly samples: Readonly<Record<string, readonly SampleResult[]>>;
}

type Limits = Readonly<Partial<Record<MeasurementKey, Omit<ItemLimit, 'source'>>>>;

/** The list with a type's limits at its numbers, all out of one manual. */
function withLimits(list: WalkaroundList, limits: Limits, manual: string): WalkaroundList {
  const fitted = (item: ListItem): ListItem => {
    const limit = item.kind === 'number' ? limits[item.measurement] : undefined;
    return item.kind === 'number' && limit
      ? { ...item, limit: { ...limit, source: `${manual}, invented for the demo` } }
      : item;
  };
  return {
    stations: list.stations.map((station) => ({ ...station, items: station.items.map(fitted) })),
  };
}

/** The list with items added at the end of a station. */
const withItems = (list: WalkaroundList, area: AreaKey, ...added: readonly ListItem[]): WalkaroundList => ({
  stations: list.stations.map((station) =>
    station.area === area ? { ...station, items: [...station.items, ...added] } : station,
  ),
});

const look = (key: string, title: string, lookFor: string): ListItem => ({
  kind: 'look',
  key,
  title,
  lookFor,
});

const TYRES: Limits = {
  'main-tyre-pressure': { min: 210, max: 300 },
  'nose-tyre-pressure': { min: 260, max: 350 },
  'battery-voltage': { min: 122, max: null },
};

const SEDGE_1 = withLimits(
  STARTING_LIST,
  {
    ...TYRES,
    'oil-quantity': { min: 50, max: null },
    'nose-strut-extension': { min: 20, max: 35 },
  },
  'Sedge 112 flight manual, section 8',
);
const SEDGE_2 = withItems(
  SEDGE_1,
  'cabin',
  look(
    'seat-rail-pins',
    'Seat rail pins',
    'Both pins through the rail; the seat does not slide when pushed.',
  ),
);

const FOXGLOVE_1 = withLimits(
  STARTING_LIST,
  {
    ...TYRES,
    'oil-quantity': { min: 70, max: null },
    'nose-strut-extension': { min: 30, max: 45 },
  },
  'Foxglove 200 flight manual, section 8',
);

const BRACKEN_1 = withLimits(
  { stations: brackenStations() },
  {
    ...TYRES,
    'oil-quantity': { min: 60, max: null },
    'nose-strut-extension': { min: 25, max: 40 },
  },
  'Bracken 40 owner’s handbook, section 4',
);

/**
 * An old tourer with two drains a wing and one at the strainer, walked in smaller steps: baggage and windshield on their
 * own, the left wing in three, the belly before the last look.
 */
function brackenStations(): readonly ListStation[] {
  const station = (area: AreaKey, ...items: readonly ListItem[]): ListStation => ({
    area,
    title: areaTitle(area),
    items,
  });
  const all = STARTING_LIST.stations.flatMap(({ items }) => items);
  const items = (...keys: readonly string[]) => all.filter(({ key }) => keys.includes(key));
  const at = (area: AreaKey) => STARTING_LIST.stations.filter((one) => one.area === area);
  const withDrains = (area: AreaKey, ...drains: readonly string[]) =>
    at(area).map((one) => ({
      ...one,
      items: [...one.items.filter(({ kind }) => kind !== 'sample'), ...drains.map(drainItem)],
    }));
  return [
    ...at('approach'),
    ...at('cabin'),
    ...at('cabin-power-on'),
    station(
      'baggage',
      ...items('baggage-door'),
      look('baggage-net', 'Net and hooks', 'Hooks firm, net whole.'),
    ),
    station('left-rear-fuselage', ...items('left-rear-skin', 'left-antennas', 'left-rear-static')),
    ...at('tail'),
    ...at('right-rear-fuselage'),
    ...at('right-flap-aileron'),
    ...at('right-tip-leading-edge'),
    ...withDrains('right-wing-fuel', 'R1', 'R2'),
    ...at('right-main-gear'),
    ...withDrains('nose-right', 'F1'),
    ...at('propeller'),
    ...at('nose-gear'),
    station('nose-left', ...items('nose-static', 'cowl-left')),
    station('windshield', ...items('windshield')),
    ...withDrains('left-wing-fuel', 'L1', 'L2'),
    ...at('left-leading-edge'),
    station('left-tip', ...items('left-tip')),
    station('left-flap-aileron', ...items('left-aileron', 'left-flap')),
    station('left-main-gear', ...items('left-tyre', 'left-main-tyre-pressure', 'left-brake')),
    station('belly', look('belly-skin', 'Belly', 'No fresh oil or fuel; antennas and drain masts whole.')),
    ...at('last-look'),
  ];
}

/** Versions of the first operator's lists, oldest first. */
export const LISTS: readonly ListPlan[] = [
  {
    type: 'sedge',
    daysAgo: 240,
    why: 'Limits of the flight manual entered; thirteen drains counted on N041QB.',
    list: SEDGE_1,
  },
  {
    type: 'sedge',
    daysAgo: 96,
    why: 'Seat rail pins added: the directive names them and two pilots did not know where to look.',
    list: SEDGE_2,
  },
  {
    type: 'bracken',
    daysAgo: 232,
    why: 'Fitted to the Bracken: five drains, left wing in three steps, a look under the belly.',
    list: BRACKEN_1,
  },
  {
    type: 'foxglove',
    daysAgo: 231,
    why: 'Limits of the flight manual entered.',
    list: FOXGLOVE_1,
  },
];

/** The second operator's. */
export const OTHER_LISTS: readonly ListPlan[] = [
  {
    type: 'teasel',
    daysAgo: 200,
    why: 'Limits of the flight manual entered.',
    list: withLimits(
      STARTING_LIST,
      { ...TYRES, 'oil-quantity': { min: 50, max: null }, 'nose-strut-extension': { min: 20, max: 35 } },
      'Teasel 90 flight manual, section 8',
    ),
  },
];

/** What a type's tyres, battery and flaps usually read. */
export const USUAL = {
  'main-tyre-pressure': [245],
  'nose-tyre-pressure': [300],
  'battery-voltage': [126],
  'flap-angle': [40],
} as const;

/** Walkarounds of past days. Nothing is raised by them: what is open today is told in `stories.ts` and `today.ts`. */
export const WALKS: readonly WalkPlan[] = [
  {
    aircraft: 'N042QB',
    daysAgo: 1,
    at: '08:05',
    by: 'pia',
    minutes: 17,
    numbers: {
      ...USUAL,
      'oil-quantity': [55],
      'nose-strut-extension': [28],
      'fuel-in-left-tank': [115],
      'fuel-in-right-tank': [110],
    },
    samples: { L2: ['water', 'clean'] },
  },
  {
    aircraft: 'N041QB',
    daysAgo: 2,
    at: '09:30',
    by: 'sam',
    minutes: 24,
    // Oil was low, a quart was added, and it was dipped again.
    numbers: {
      ...USUAL,
      'oil-quantity': [48, 58],
      'nose-strut-extension': [27],
      'fuel-in-left-tank': [90],
      'fuel-in-right-tank': [95],
    },
    samples: {},
  },
  {
    aircraft: 'N051QB',
    daysAgo: 1,
    at: '13:20',
    by: 'ines',
    minutes: 15,
    numbers: {
      ...USUAL,
      'oil-quantity': [70],
      'nose-strut-extension': [33],
      'fuel-in-left-tank': [180],
      'fuel-in-right-tank': [175],
    },
    samples: {},
  },
  {
    aircraft: 'N042QB',
    daysAgo: 4,
    at: '15:10',
    by: 'ines',
    minutes: 14,
    numbers: {
      ...USUAL,
      'oil-quantity': [60],
      'nose-strut-extension': [28],
      'fuel-in-left-tank': [120],
      'fuel-in-right-tank': [120],
    },
    samples: {},
  },
];
