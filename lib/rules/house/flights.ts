/** Rules of the house about who flies, what was found, and hours kept in reserve. Common practice, no source. */
import type { AircraftFacts, DiscrepancyFacts, RequirementFacts } from '../aircraft';
import { dueOf } from '../due';
import { formatTenths } from '../hours';
import type { Purpose, UseOfAircraft } from '../operations';
import { aboutDiscrepancy } from '../part-91/91-213-item';
import { aboutRequirement } from '../requirement-lines';
import { areaTitle, isArea, type AreaKey } from '../walkaround/areas';
import type { HouseFinding, HouseSetting } from './house-rule';

type SettingOf<K extends HouseSetting['kind']> = Extract<HouseSetting, { kind: K }>;

/** Student solo at night; with `solo-and-dual` all instruction at night. */
export function noStudentsAtNight(
  aircraft: AircraftFacts,
  { flights }: SettingOf<'no-students-at-night'>,
  use: UseOfAircraft,
): HouseFinding[] {
  if (use.light !== 'night') return [];
  const reached: readonly Purpose[] =
    flights === 'solo' ? ['student-solo'] : ['student-solo', 'instruction-for-hire'];
  if (!reached.includes(use.purpose)) return [];
  const because =
    use.purpose === 'student-solo' ? 'No student flies solo at night.' : 'No instruction at night.';
  return [{ effect: 'bars', because, about: aboutFlight(aircraft) }];
}

/** `limits`: what limits the flight already, of the law and of the house. */
export function soloNeverWithLimits(
  aircraft: AircraftFacts,
  use: UseOfAircraft,
  limits: readonly { readonly because: string }[],
): HouseFinding[] {
  const [first, ...others] = limits;
  if (use.purpose !== 'student-solo' || !first) return [];
  const more = others.length > 0 ? ` And ${others.length} more.` : '';
  const because = `Students never fly solo with limits. This flight has one: ${first.because}${more}`;
  return [{ effect: 'bars', because, about: aboutFlight(aircraft) }];
}

export const limitInOwnWords = (
  aircraft: AircraftFacts,
  { purposes, words }: SettingOf<'limit-in-own-words'>,
  use: UseOfAircraft,
): HouseFinding[] =>
  purposes.includes(use.purpose) ? [{ effect: 'limits', because: words, about: aboutFlight(aircraft) }] : [];

/**
 * Every open write-up in a chosen chapter or area that no mechanic has judged. One whose system nobody has named may be in a
 * chosen chapter, and one whose place nobody has named at a chosen place, so they bar as well.
 */
export const mechanicLooksAt = (
  { discrepancies }: AircraftFacts,
  { chapters, areas }: SettingOf<'mechanic-looks-at'>,
): HouseFinding[] =>
  discrepancies.flatMap((d): HouseFinding[] => {
    if (d.mechanicJudged !== null) return [];
    const about = aboutDiscrepancy(d);
    const label = `${d.number} ${d.title}`;
    if (areas.includes(d.station)) {
      const because = `A mechanic looks first at everything found here: ${areaTitle(d.station)}. Nobody has judged ${label} yet.`;
      return [{ effect: 'bars', because, about }];
    }
    const chapter = d.jasc.slice(0, 2);
    if (chapters.length > 0 && chapter === '') {
      const missing = `which system ${d.number} is about`;
      return [
        {
          effect: 'bars',
          because: `A mechanic looks at some systems first. Not known: ${missing}.`,
          missing,
          about,
        },
      ];
    }
    if (chapters.includes(chapter)) {
      const because = `A mechanic looks first at everything in JASC chapter ${chapter}. Nobody has judged ${label} yet.`;
      return [{ effect: 'bars', because, about }];
    }
    return areas.length > 0 && !isArea(d.station) ? placeNotKnown(d, areas) : [];
  });

/** JASC chapters that lie in one area, wherever else the chapter is mute: the propeller is the propeller. */
const AREA_OF_CHAPTER: Readonly<Record<string, AreaKey>> = { '61': 'propeller' };

/** Carried over from a paper, which names no area. Its chapter may; else it may be in a chosen one, and bars (strict). */
function placeNotKnown(d: DiscrepancyFacts, areas: readonly string[]): HouseFinding[] {
  const about = aboutDiscrepancy(d);
  const label = `${d.number} ${d.title}`;
  const area = AREA_OF_CHAPTER[d.jasc.slice(0, 2)];
  if (area === undefined) {
    const missing = `where on the aircraft ${d.number} is`;
    const because = `A mechanic looks first at what is found at some places. Not known: ${missing}. Nobody has judged ${label} yet.`;
    return [{ effect: 'bars', because, missing, about }];
  }
  if (!areas.includes(area)) return [];
  const because = `A mechanic looks first at everything found here: ${areaTitle(area)}, by its JASC chapter. Nobody has judged ${label} yet.`;
  return [{ effect: 'bars', because, about }];
}

/** A flight may end with exactly the reserve left. A flight to the inspection is what the reserve is for. */
export function reserveBeforeInspection(
  aircraft: AircraftFacts,
  { reserveTenths, counts }: SettingOf<'reserve-before-inspection'>,
  use: UseOfAircraft,
): HouseFinding[] {
  if (use.purpose === 'to-inspection') return [];
  return aircraft.requirements
    .filter((row) => isCounted(row, counts))
    .flatMap((row) => reserveOf(aircraft, row, reserveTenths, use));
}

const isCounted = (row: RequirementFacts, counts: 'hundred-hour' | 'all-by-hours'): boolean =>
  row.kind === 'hundred-hour' || (counts === 'all-by-hours' && row.binding && row.intervalTenths !== null);

function reserveOf(
  aircraft: AircraftFacts,
  row: RequirementFacts,
  reserveTenths: number,
  use: UseOfAircraft,
): HouseFinding[] {
  const about = aboutRequirement(row);
  const keeps = `${formatTenths(reserveTenths)} h stay in reserve before ${row.name}.`;
  const { ttisTenths } = aircraft;
  const due = dueOf(row, ttisTenths, aircraft.requirements);
  const missing = ttisTenths.known ? due.missing : ttisTenths.missing;
  // Only a calendar limits it: there are no hours to keep.
  if (missing === null && due.tenths === null) return [];
  if (missing !== null)
    return [{ effect: 'bars', because: `${keeps} Not known: ${missing}.`, missing, about }];
  const left = (due.remainingTenths ?? 0) - use.plannedTenths;
  if (left >= reserveTenths) return [];
  const has = `${formatTenths(due.remainingTenths ?? 0)} h left, this flight takes ${formatTenths(use.plannedTenths)} h`;
  return [{ effect: 'bars', because: `${keeps} It has ${has}.`, about }];
}

const aboutFlight = ({ id, registration }: AircraftFacts) =>
  ({ kind: 'flight', id, label: registration }) as const;
