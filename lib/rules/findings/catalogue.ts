import { known, type Fact } from '../facts';
import { partOf, type PartOfAircraft } from '../jasc';
import { CONTROLS_AND_STRUCTURE } from './controls-and-structure';
import { ENGINE } from './engine';
import type { CatalogueFinding } from './finding';
import { FUEL } from './fuel';
import { LANDING_GEAR } from './landing-gear';
import { LIGHTS_AND_INSTRUMENTS } from './lights-and-instruments';
import { PROPELLER } from './propeller';
import { RADIOS_AND_CABIN } from './radios-and-cabin';
import type { StationKey } from './stations';

/**
 * The 71 usual findings of a walkaround on a light piston single, as data. A finding proposes; `triage` and people
 * decide. It carries no limit: those belong to one aircraft, with their source.
 */
export const FINDING_CATALOGUE: readonly CatalogueFinding[] = [
  ...PROPELLER,
  ...LANDING_GEAR,
  ...FUEL,
  ...ENGINE,
  ...LIGHTS_AND_INSTRUMENTS,
  ...CONTROLS_AND_STRUCTURE,
  ...RADIOS_AND_CABIN,
];

const BY_KEY: ReadonlyMap<string, CatalogueFinding> = new Map(
  FINDING_CATALOGUE.map((entry) => [entry.key, entry]),
);

/** The finding of a key, or null when the catalogue has none. */
export const findingOf = (key: string): CatalogueFinding | null => BY_KEY.get(key) ?? null;

/** What is likely at a station: first the findings at home there, then those that also fit. "Something else" is the screen's. */
export const findingsAt = (station: StationKey): readonly CatalogueFinding[] => [
  ...FINDING_CATALOGUE.filter((entry) => entry.station === station),
  ...FINDING_CATALOGUE.filter((entry) => entry.alsoAt.includes(station)),
];

/**
 * The part of the aircraft that picks the rating for work on a finding: the first usual work of the catalogue, which
 * knows that a clogged static port is airframe work although its code is an instrument's; else the part of the code.
 */
export function workPartOf(findingKey: string | null, jasc: string): Fact<PartOfAircraft> {
  const usual = findingKey === null ? undefined : findingOf(findingKey)?.work[0];
  return usual ? known(usual.part) : partOf(jasc);
}
