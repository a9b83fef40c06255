import type { AreaKey } from '../walkaround/areas';
import { partNamed } from './words-compared';

/**
 * Where two writings say a thing is, for `likelyTheSame`: areas that touch each other, and the words of position ("left",
 * "upper", "nose wheel", "com 2") that make one thing another than its twin. Our own tables.
 */

/** Areas from which the same thing is often seen. Each pair stands once. */
const NEIGHBOURS: readonly (readonly [AreaKey, AreaKey])[] = [
  ['cabin', 'cabin-power-on'],
  ['cabin', 'windshield'],
  ['left-rear-fuselage', 'baggage'],
  ['left-rear-fuselage', 'tail'],
  ['left-rear-fuselage', 'right-rear-fuselage'],
  ['left-rear-fuselage', 'belly'],
  ['right-rear-fuselage', 'tail'],
  ['right-rear-fuselage', 'belly'],
  ['right-flap-aileron', 'right-tip-leading-edge'],
  ['right-flap-aileron', 'right-wing-fuel'],
  ['right-flap-aileron', 'right-main-gear'],
  ['right-tip-leading-edge', 'right-wing-fuel'],
  ['right-wing-fuel', 'right-main-gear'],
  ['right-main-gear', 'belly'],
  ['nose-right', 'propeller'],
  ['nose-right', 'nose-gear'],
  ['nose-right', 'nose-left'],
  ['nose-right', 'windshield'],
  ['nose-right', 'belly'],
  ['propeller', 'nose-gear'],
  ['propeller', 'nose-left'],
  ['nose-gear', 'nose-left'],
  ['nose-gear', 'belly'],
  ['nose-left', 'windshield'],
  ['nose-left', 'belly'],
  ['left-wing-fuel', 'left-leading-edge'],
  ['left-wing-fuel', 'left-wing-and-gear'],
  ['left-wing-fuel', 'left-flap-aileron'],
  ['left-wing-fuel', 'left-main-gear'],
  ['left-leading-edge', 'left-wing-and-gear'],
  ['left-leading-edge', 'left-tip'],
  ['left-wing-and-gear', 'left-flap-aileron'],
  ['left-wing-and-gear', 'left-tip'],
  ['left-wing-and-gear', 'left-main-gear'],
  ['left-flap-aileron', 'left-tip'],
  ['left-flap-aileron', 'left-main-gear'],
  ['left-main-gear', 'belly'],
];

/** What is written down here may sit anywhere: one walks up, switches on in the cabin, or looks back once more. */
const ANYWHERE: ReadonlySet<string> = new Set<AreaKey>(['approach', 'cabin-power-on', 'last-look']);

export type Nearness = 'same' | 'neighbours' | 'open' | 'apart';

/** How near two areas are. `open`: one of them says nothing about where the thing sits. */
export function nearness(one: string, other: string): Nearness {
  if (one === other) return 'same';
  const touch = NEIGHBOURS.some(([a, b]) => (a === one && b === other) || (a === other && b === one));
  if (touch) return 'neighbours';
  return ANYWHERE.has(one) || ANYWHERE.has(other) ? 'open' : 'apart';
}

const AREA_NAMES: Readonly<Record<AreaKey, string>> = {
  approach: 'walking up',
  cabin: 'cabin',
  'cabin-power-on': 'cabin, power on',
  'left-rear-fuselage': 'rear fuselage, left',
  tail: 'tail',
  'right-rear-fuselage': 'rear fuselage, right',
  'right-flap-aileron': 'right flap and aileron',
  'right-tip-leading-edge': 'right tip and leading edge',
  'right-wing-fuel': 'right wing fuel',
  'right-main-gear': 'right main gear',
  'nose-right': 'nose, right side',
  propeller: 'propeller and inlets',
  'nose-gear': 'nose gear',
  'nose-left': 'nose, left side',
  'left-wing-fuel': 'left wing fuel',
  'left-leading-edge': 'left leading edge',
  'left-wing-and-gear': 'left tip, aileron, flap and gear',
  'last-look': 'last look',
  'left-flap-aileron': 'left flap and aileron',
  'left-tip': 'left tip',
  'left-main-gear': 'left main gear',
  baggage: 'baggage',
  belly: 'belly',
  windshield: 'windshield',
};

/** An area in words, in the middle of a sentence. One that is not in the table is printed as it is. */
export const areaInWords = (area: string): string =>
  Object.hasOwn(AREA_NAMES, area) ? AREA_NAMES[area as AreaKey] : area.replaceAll('-', ' ');

/** The ways in which a thing can have a twin. */
const AXES = ['side', 'height', 'length', 'span', 'wheel', 'number'] as const;
type Axis = (typeof AXES)[number];

/** Plain words of position, in lower case. "right" and "left" are read with their neighbours, see `sidesIn`. */
const POSITION_WORDS: Readonly<Record<string, readonly [Axis, string]>> = {
  lh: ['side', 'left'],
  rh: ['side', 'right'],
  l: ['side', 'left'],
  r: ['side', 'right'],
  lt: ['side', 'left'],
  rt: ['side', 'right'],
  lhs: ['side', 'left'],
  rhs: ['side', 'right'],
  starboard: ['side', 'right'],
  copilot: ['side', 'right'],
  copilots: ['side', 'right'],
  upper: ['height', 'upper'],
  top: ['height', 'upper'],
  lower: ['height', 'lower'],
  bottom: ['height', 'lower'],
  underside: ['height', 'lower'],
  underneath: ['height', 'lower'],
  roof: ['height', 'upper'],
  belly: ['height', 'lower'],
  front: ['length', 'front'],
  forward: ['length', 'front'],
  fwd: ['length', 'front'],
  rear: ['length', 'rear'],
  aft: ['length', 'rear'],
  inboard: ['span', 'inboard'],
  inner: ['span', 'inboard'],
  outboard: ['span', 'outboard'],
  outer: ['span', 'outboard'],
  nosewheel: ['wheel', 'nose'],
  main: ['wheel', 'main'],
  mains: ['wheel', 'main'],
  tailwheel: ['wheel', 'tail'],
};

/** "Nose" before one of these is the nose gear, not the nose. */
const WHEEL_PARTS: ReadonlySet<string> = new Set(
  'gear leg strut tire tires tyre tyres wheel fairing pant brake brakes'.split(' '),
);
const NUMBERED: ReadonlySet<string> = new Set(
  'com comm nav radio vor gps display cylinder cyl number no blade'.split(' '),
);
/** "right after", "not right", "was left open", "no tread left": the words are no sides there. */
const AFTER_RIGHT: ReadonlySet<string> = new Set(
  'after before now at where away when next behind'.split(' '),
);
const BEFORE_RIGHT: ReadonlySet<string> = new Set(
  'not all look looks looked feel feels sound sounds quite sit sits close closes fit fits'.split(' '),
);
const AFTER_LEFT: ReadonlySet<string> = new Set('over open unlocked undone'.split(' '));
const BEFORE_LEFT: ReadonlySet<string> = new Set(
  'was were been tread much little nothing none pad bit material got thread'.split(' '),
);

/** Whether "left" or "right" at this place of the text means a side. */
function isSide(words: readonly string[], index: number): boolean {
  const before = words[index - 1] ?? '';
  const after = words[index + 1] ?? '';
  return words[index] === 'left'
    ? !BEFORE_LEFT.has(before) && !AFTER_LEFT.has(after)
    : !BEFORE_RIGHT.has(before) && !AFTER_RIGHT.has(after);
}

/** What a text says of positions. */
export interface Positions {
  readonly axes: Readonly<Record<Axis, ReadonlySet<string>>>;
  /** Sides said of one named part, "left brake": they count even where the text also speaks of the other side. */
  readonly sideOfPart: ReadonlyMap<string, ReadonlySet<string>>;
}

/** How far behind "left" or "right" the part it belongs to may stand. */
const REACH = 2;

/** The positions a text names. `words` are in lower case, without punctuation. */
function positionsIn(words: readonly string[]): Positions {
  const axes: Record<Axis, Set<string>> = {
    side: new Set(),
    height: new Set(),
    length: new Set(),
    span: new Set(),
    wheel: new Set(),
    number: new Set(),
  };
  const sideOfPart = new Map<string, Set<string>>();
  words.forEach((word, index) => {
    const after = words[index + 1] ?? '';
    if (word === 'nose' && WHEEL_PARTS.has(after)) axes.wheel.add('nose');
    if (NUMBERED.has(word) && /^\d$/.test(after)) axes.number.add(after);
    const plain = positionOf(words, index);
    if (!plain) return;
    axes[plain[0]].add(plain[1]);
    if (plain[0] !== 'side') return;
    const part = words
      .slice(index + 1, index + 1 + REACH)
      .map(partNamed)
      .find((named) => named !== null);
    if (part) sideOfPart.set(part, (sideOfPart.get(part) ?? new Set<string>()).add(plain[1]));
  });
  return { axes, sideOfPart };
}

function positionOf(words: readonly string[], index: number): readonly [Axis, string] | null {
  const word = words[index] ?? '';
  if (word === 'left' || word === 'right') return isSide(words, index) ? ['side', word] : null;
  return Object.hasOwn(POSITION_WORDS, word) ? (POSITION_WORDS[word] ?? null) : null;
}

/**
 * Positions as written, and where nothing is written as the area has them. On the nose the side one stands on says little
 * about where a thing is, and so on the middle line of the fuselage.
 */
export function positionsWritten(area: string, words: readonly string[], isAboutGear: boolean): Positions {
  const { axes, sideOfPart } = positionsIn(words);
  const onMiddleLine = area.endsWith('-rear-fuselage') && axes.height.size > 0;
  const side = area.startsWith('left-') ? 'left' : area.startsWith('right-') ? 'right' : null;
  const isMain = area.endsWith('-main-gear') || (area === 'left-wing-and-gear' && isAboutGear);
  const wheel = area === 'nose-gear' ? 'nose' : isMain ? 'main' : null;
  const filled = (written: ReadonlySet<string>, fromArea: string | null): ReadonlySet<string> =>
    written.size > 0 || fromArea === null ? written : new Set([fromArea]);
  return {
    axes: { ...axes, side: filled(axes.side, onMiddleLine ? null : side), wheel: filled(axes.wheel, wheel) },
    sideOfPart,
  };
}

export interface PositionsCompared {
  /** Positions both name: "left", "upper". */
  readonly shared: readonly string[];
  /** Axes on which both say something and nothing in common: [the first's, the second's]. */
  readonly against: readonly (readonly [string, string])[];
}

const said = (positions: ReadonlySet<string>, axis: Axis): string => {
  const list = [...positions].toSorted().join(' and ');
  return axis === 'number' ? `number ${list}` : axis === 'wheel' ? `${list} gear` : list;
};

/** Holds two writings' positions against each other, axis by axis. */
export function comparePositions(one: Positions, other: Positions): PositionsCompared {
  const shared: string[] = [];
  const against: (readonly [string, string])[] = [];
  const common = (a: ReadonlySet<string>, b: ReadonlySet<string>) =>
    new Set([...a].filter((position) => b.has(position)));
  for (const axis of AXES) {
    const [a, b] = axis === 'side' ? sidesToCompare(one, other) : [one.axes[axis], other.axes[axis]];
    if (a.size === 0 || b.size === 0) continue;
    const both = common(a, b);
    if (both.size > 0) shared.push(said(both, axis));
    else against.push([said(a, axis), said(b, axis)]);
  }
  return { shared, against };
}

/** The sides of a part both name a side of, "right brake" and "left brake"; else the sides of the whole text. */
function sidesToCompare(
  one: Positions,
  other: Positions,
): readonly [ReadonlySet<string>, ReadonlySet<string>] {
  for (const part of [...one.sideOfPart.keys()].toSorted()) {
    const [a, b] = [one.sideOfPart.get(part), other.sideOfPart.get(part)];
    if (a && b) return [a, b];
  }
  return [one.axes.side, other.axes.side];
}
