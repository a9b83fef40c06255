/**
 * The walkaround of a generic high-wing aircraft with fixed gear: 18 stations in the order a pilot walks them. The
 * areas follow the FAA's training handbook (checked in part); order and units are our design. Which findings fit at
 * a station is said by the findings themselves, see `findingsAt` in `catalogue.ts`. "Not looked at" is another
 * answer than "found good", and a repeated fuel sample keeps the first result.
 */

import { said } from '../said';

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
    said('Walking up'),
    said(
      'Does it lean? Puddles, stains, tie-downs and chocks; papers, open discrepancies, inspections coming due.',
    ),
  ],
  cabin: [
    said('Cabin'),
    said(
      'Control lock out, switches off, belts whole, seats lock, placards there, emergency transmitter, extinguisher, fuel selector, trim.',
    ),
  ],
  'cabin-power-on': [
    said('Cabin, power on'),
    said('Fuel gauges move, every light, pitot heat, stall warning, flaps down, fans; then power off.'),
  ],
  'left-rear-fuselage': [
    said('Rear fuselage, left'),
    said('Skin, antennas, static port if it is here, baggage door.'),
  ],
  tail: [
    said('Tail'),
    said('Tie-down off, elevator, rudder and tab: hinges, bolts, cables, play; tail light.'),
  ],
  'right-rear-fuselage': [said('Rear fuselage, right'), said('Skin, antennas, static port if it is here.')],
  'right-flap-aileron': [
    said('Right flap and aileron'),
    said('Flap tracks and rods, aileron hinges and travel, static wicks.'),
  ],
  'right-tip-leading-edge': [
    said('Right tip and leading edge'),
    said('Position light and its lens, dents, tie-down off.'),
  ],
  'right-wing-fuel': [
    said('Right wing fuel'),
    said('Dip the tank, cap and its seal, then every drain of this wing: clean, water, dirt, colour.'),
  ],
  'right-main-gear': [said('Right main gear'), said('Tyre all round, brake and its line, leg and fairing.')],
  'nose-right': [
    said('Nose, right side'),
    said('Oil quantity and cap, cowl fasteners, strainer and belly drains, exhaust.'),
  ],
  propeller: [
    said('Propeller and inlets'),
    said('Nicks and cracks on both faces, spinner, belt, nests in the inlets, baffles, air filter.'),
  ],
  'nose-gear': [said('Nose gear'), said('Tyre, strut extension and leaks, shimmy damper, torque links.')],
  'nose-left': [said('Nose, left side'), said('Static port if it is here, cowl, windshield.')],
  'left-wing-fuel': [
    said('Left wing fuel'),
    said(
      'Dip the tank, cap and its seal, vent clear, then every drain of this wing: clean, water, dirt, colour.',
    ),
  ],
  'left-leading-edge': [
    said('Left leading edge'),
    said('Pitot open and straight, stall warning free, landing light.'),
  ],
  'left-wing-and-gear': [
    said('Left tip, aileron, flap and gear'),
    said('As on the right: light, dents, hinges, tracks; tyre, brake, leg.'),
  ],
  'last-look': [
    said('Last look'),
    said('Caps on, covers and tow bar off, doors shut, nothing left on the wing.'),
  ],
};

/** All stations in walking order. */
export const WALKAROUND_STATIONS: readonly WalkaroundStation[] = STATION_KEYS.map((key, order) => ({
  key,
  order,
  title: WORDS[key][0],
  lookFor: WORDS[key][1],
}));
