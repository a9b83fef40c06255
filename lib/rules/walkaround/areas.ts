import { STATION_KEYS, WALKAROUND_STATIONS, type StationKey } from '../findings/stations';
import { said } from '../said';

/**
 * Where on an aircraft something can be: the closed vocabulary of stations. The 18 of the starting list, and a few for
 * lists that walk in smaller steps. Each says which of the starting stations its usual findings belong to (the catalogue
 * knows those), and where it sits on the drawing. Areas and their places are our own design.
 */
const FINER = {
  'left-flap-aileron': 'left-wing-and-gear',
  'left-tip': 'left-wing-and-gear',
  'left-main-gear': 'left-wing-and-gear',
  baggage: 'left-rear-fuselage',
  belly: 'last-look',
  windshield: 'nose-left',
} as const satisfies Record<string, StationKey>;

export type AreaKey = StationKey | keyof typeof FINER;

export const AREA_KEYS: readonly AreaKey[] = [
  ...STATION_KEYS,
  ...(Object.keys(FINER) as (keyof typeof FINER)[]),
];

/** Whether a text is the key of an area. */
export const isArea = (key: string): key is AreaKey => (AREA_KEYS as readonly string[]).includes(key);

/** The starting station whose usual findings fit at an area. */
export const usualStationOf = (area: AreaKey): StationKey =>
  Object.hasOwn(FINER, area) ? FINER[area as keyof typeof FINER] : (area as StationKey);

const TITLES: Readonly<Record<AreaKey, string>> = {
  ...(Object.fromEntries(WALKAROUND_STATIONS.map(({ key, title }) => [key, title])) as Record<
    StationKey,
    string
  >),
  'left-flap-aileron': said('Left flap and aileron'),
  'left-tip': said('Left tip'),
  'left-main-gear': said('Left main gear'),
  baggage: said('Baggage compartment'),
  belly: said('Belly'),
  windshield: said('Windshield'),
};

/** What an area is called; a key that is no area is printed as it stands (older or foreign records). */
export const areaTitle = (key: string): string => (isArea(key) ? TITLES[key] : key);
