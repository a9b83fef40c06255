/**
 * The walkaround of a generic high-wing aircraft with fixed gear: 18 stations in the order a pilot walks them. The
 * areas follow the FAA's training handbook (checked in part); order and units are our design. Which findings fit at
 * a station is said by the findings themselves, see `findingsAt` in `catalogue.ts`. "Not looked at" is another
 * answer than "found good", and a repeated fuel sample keeps the first result.
 */

export const STATION_KEYS = [
  'approach',
  'cabin',
  'cabin-power-on',
  'left-rear-fuselage',
  'tail',
  'right-rear-fuselage',
  'right-flap-aileron',
  'right-tip-leading-edge',
  'right-wing-fuel',
  'right-main-gear',
  'nose-right',
  'propeller',
  'nose-gear',
  'nose-left',
  'left-wing-fuel',
  'left-leading-edge',
  'left-wing-and-gear',
  'last-look',
] as const;
export type StationKey = (typeof STATION_KEYS)[number];

export interface WalkaroundStation {
  readonly key: StationKey;
  /** 0 to 17, the order of the walk. */
  readonly order: number;
  readonly title: string;
  /** What to look for, short enough for a phone. */
  readonly lookFor: string;
}

const WORDS: Readonly<Record<StationKey, readonly [title: string, lookFor: string]>> = {
  approach: [
    'Walking up',
    'Does it lean? Puddles, stains, tie-downs and chocks; papers, open discrepancies, inspections coming due.',
  ],
  cabin: [
    'Cabin',
    'Control lock out, switches off, belts whole, seats lock, placards there, emergency transmitter, extinguisher, fuel selector, trim.',
  ],
  'cabin-power-on': [
    'Cabin, power on',
    'Fuel gauges move, every light, pitot heat, stall warning, flaps down, fans; then power off.',
  ],
  'left-rear-fuselage': ['Rear fuselage, left', 'Skin, antennas, static port if it is here, baggage door.'],
  tail: ['Tail', 'Tie-down off, elevator, rudder and tab: hinges, bolts, cables, play; tail light.'],
  'right-rear-fuselage': ['Rear fuselage, right', 'Skin, antennas, static port if it is here.'],
  'right-flap-aileron': [
    'Right flap and aileron',
    'Flap tracks and rods, aileron hinges and travel, static wicks.',
  ],
  'right-tip-leading-edge': [
    'Right tip and leading edge',
    'Position light and its lens, dents, tie-down off.',
  ],
  'right-wing-fuel': [
    'Right wing fuel',
    'Dip the tank, cap and its seal, then every drain of this wing: clean, water, dirt, colour.',
  ],
  'right-main-gear': ['Right main gear', 'Tyre all round, brake and its line, leg and fairing.'],
  'nose-right': [
    'Nose, right side',
    'Oil quantity and cap, cowl fasteners, strainer and belly drains, exhaust.',
  ],
  propeller: [
    'Propeller and inlets',
    'Nicks and cracks on both faces, spinner, belt, nests in the inlets, baffles, air filter.',
  ],
  'nose-gear': ['Nose gear', 'Tyre, strut extension and leaks, shimmy damper, torque links.'],
  'nose-left': ['Nose, left side', 'Static port if it is here, cowl, windshield.'],
  'left-wing-fuel': [
    'Left wing fuel',
    'Dip the tank, cap and its seal, vent clear, then every drain of this wing: clean, water, dirt, colour.',
  ],
  'left-leading-edge': ['Left leading edge', 'Pitot open and straight, stall warning free, landing light.'],
  'left-wing-and-gear': [
    'Left tip, aileron, flap and gear',
    'As on the right: light, dents, hinges, tracks; tyre, brake, leg.',
  ],
  'last-look': ['Last look', 'Caps on, covers and tow bar off, doors shut, nothing left on the wing.'],
};

/** All stations in walking order. */
export const WALKAROUND_STATIONS: readonly WalkaroundStation[] = STATION_KEYS.map((key, order) => ({
  key,
  order,
  title: WORDS[key][0],
  lookFor: WORDS[key][1],
}));
