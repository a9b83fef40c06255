import {
  EMPTY_DRAFT,
  isPhase,
  sameAnswer,
  SOMETHING_ELSE,
  typedMeasurements,
  type FindingDraft,
  type FindingOffered,
} from '@/lib/findings/compose-finding';
import { isArea, usualStationOf } from '@/lib/rules/walkaround/areas';
import { NO_ANSWER, type ItemAnswer } from '@/lib/rules/walkaround/answers';
import { type ListItem } from '@/lib/rules/walkaround/plan';
import { type PackAircraft, type PackList, type PackWriteUp } from '@/lib/walkarounds/pack';

/** Where a finding is being written up. Pure readings of the address, the pack and the walk. */

/** All write-ups the phone knows of an aircraft: open, deferred, and those closed lately. */
export const knownOf = (aircraft: PackAircraft): readonly PackWriteUp[] => [
  ...aircraft.writeUps,
  ...aircraft.closed,
];

/** Open or deferred at an area, also when it was written up under the name of the larger area. */
export const knownAt = (aircraft: PackAircraft, area: string): readonly PackWriteUp[] =>
  aircraft.writeUps.filter(
    ({ station }) =>
      station === area ||
      (isArea(station) && isArea(area) && usualStationOf(station) === usualStationOf(area)),
  );

/** What the list calls an area; null when the list does not have it. */
export const stationIn = (list: PackList | undefined, area: string) =>
  list?.list.stations.find((station) => station.area === area) ?? null;

/** The item of the list a finding was met at. */
export const itemIn = (list: PackList | undefined, area: string, itemKey: string | null): ListItem | null =>
  stationIn(list, area)?.items.find(({ key }) => key === itemKey) ?? null;

/** What the address says beforehand, and what was measured at the item on this walk. Nothing else is filled in. */
export function startingDraft(
  query: URLSearchParams,
  offers: readonly FindingOffered[],
  aircraft: PackAircraft,
  item: ListItem | null,
  answered: ItemAnswer = NO_ANSWER,
): FindingDraft {
  const related = knownOf(aircraft).find(({ id }) => id === query.get('related'));
  const key = query.get('finding') ?? related?.findingKey ?? null;
  const offered = offers.find((one) => one.key === key) ?? null;
  const phase = query.get('phase');
  // A finding that does not fit here is still what somebody means; its name goes into the words.
  const finding = offered?.key ?? (query.has('finding') || related ? SOMETHING_ELSE : '');
  return {
    ...EMPTY_DRAFT,
    finding,
    kind: finding === SOMETHING_ELSE ? (related?.kind ?? '') : '',
    place: query.get('place') ?? related?.place ?? '',
    words: query.get('words') ?? '',
    phase: isPhase(phase) ? phase : '',
    same: related ? sameAnswer(related.state === 'closed' ? 'back' : 'worse', related.id) : '',
    measurements: {
      ...typedMeasurements(measuredAt(item, answered), offered),
      ...measuredIn(query.get('measured'), offered),
    },
  };
}

/** What was measured at an item: the last reading that counts, or how many samples it took. */
function measuredAt(item: ListItem | null, { readings, samples }: ItemAnswer): Record<string, number> {
  if (item?.kind === 'number') {
    const last = readings.findLast(({ struck }) => !struck);
    return last ? { [item.measurement]: last.value } : {};
  }
  return item?.kind === 'sample' && samples.length > 0 ? { 'fuel-sample-repeats': samples.length } : {};
}

/** "key:text" of the address, where the finding asks for that measurement. */
function measuredIn(text: string | null, offered: FindingOffered | null): Record<string, string> {
  const at = text?.indexOf(':') ?? -1;
  if (text === null || at < 1) return {};
  const key = text.slice(0, at);
  return offered?.measurements.some((one) => one.key === key) ? { [key]: text.slice(at + 1) } : {};
}
