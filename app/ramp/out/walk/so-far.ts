/**
 * How far a walk is: station by station, what is open, what the walk will raise by itself. Pure. What an answer means is
 * judged by lib/rules/walkaround; here it is only put in order for the screen.
 */
import { type StoredLimit } from '@/lib/rules/findings/measured-against-limits';
import { NO_ANSWER, type ItemAnswer } from '@/lib/rules/walkaround/answers';
import { isArea, usualStationOf } from '@/lib/rules/walkaround/areas';
import {
  judgeItem,
  raisedByMissingPlacard,
  type ItemVerdict,
  type RaisedByWalk,
} from '@/lib/rules/walkaround/judge-walk';
import { type ListItem, type ListStation, type WalkaroundList } from '@/lib/rules/walkaround/plan';
import { type PackWriteUp } from '@/lib/walkarounds/pack';
import { type KeptWalk } from '../../_phone/shapes';
import { type Looked } from '../drawing/marked';

export type Answered = Pick<KeptWalk, 'items' | 'placards' | 'findings'>;

export interface ItemSoFar {
  readonly item: ListItem;
  readonly answer: ItemAnswer;
  readonly verdict: ItemVerdict;
  /** Findings written up for this item on this walk. */
  readonly written: number;
}

export interface StationSoFar {
  readonly station: ListStation;
  /** From 1, the order of walking. */
  readonly order: number;
  readonly items: readonly ItemSoFar[];
  readonly looked: Looked;
  /** Items nobody has looked at. */
  readonly open: readonly ItemSoFar[];
}

/** A placard that must be there, and the station where one checks it. */
export interface PlacardToCheck {
  readonly id: string;
  readonly wording: string;
  readonly location: string;
  readonly area: ListStation['area'];
  readonly of: PackWriteUp;
}

export interface WalkSoFar {
  readonly stations: readonly StationSoFar[];
  /** Stations at which nothing is open any more. */
  readonly done: number;
  readonly placards: readonly PlacardToCheck[];
  /** What the server will write up at the finish, because nobody has written it up on the way. */
  readonly toRaise: readonly RaisedByWalk[];
}

/** The answer given for an item; nothing was answered for a key the walk does not hold. */
export const answerOf = (items: KeptWalk['items'], key: string): ItemAnswer =>
  Object.hasOwn(items, key) ? (items[key] ?? NO_ANSWER) : NO_ANSWER;

/** Puts the answers of a walk in order. */
export function walkSoFar(
  list: WalkaroundList,
  walk: Answered,
  limits: readonly StoredLimit[],
  writeUps: readonly PackWriteUp[],
): WalkSoFar {
  const written = (key: string) => walk.findings.filter(({ itemKey }) => itemKey === key).length;
  const stations = list.stations.map((station, index): StationSoFar => {
    const items = station.items.map((item) => itemSoFar(item, station, walk, limits, written(item.key)));
    const open = items.filter(({ verdict }) => verdict.answer === 'not-looked-at');
    const found =
      items.some(({ verdict }) => verdict.answer === 'finding') ||
      walk.findings.some((finding) => finding.station === station.area);
    const looked: Looked = found
      ? 'finding'
      : open.length === 0 && items.length > 0
        ? 'good'
        : open.length < items.length
          ? 'begun'
          : 'not-looked-at';
    return { station, order: index + 1, items, looked, open };
  });
  const placards = placardsToCheck(list, writeUps);
  const missing = placards
    .filter(({ id }) => walk.placards[id] === 'missing')
    .map((placard) => raisedByMissingPlacard(placard, placard.area));
  const raised = stations.flatMap(({ items }) => items.flatMap(({ verdict }) => verdict.raised ?? []));
  return {
    stations,
    done: stations.filter(({ open, items }) => items.length > 0 && open.length === 0).length,
    placards,
    toRaise: [...raised, ...missing].filter(({ itemKey }) => written(itemKey) === 0),
  };
}

function itemSoFar(
  item: ListItem,
  station: ListStation,
  walk: Answered,
  limits: readonly StoredLimit[],
  written: number,
): ItemSoFar {
  const given = answerOf(walk.items, item.key);
  // A finding that was written up is an answer, also where the press itself was lost.
  const answer = written > 0 && item.kind === 'look' ? { ...given, looked: 'finding' as const } : given;
  return { item, answer, verdict: judgeItem(item, station.area, answer, limits), written };
}

/**
 * Placards of live deferrals that were put up; one that is still owed cannot be missing. They are checked in the cabin, where
 * the controls and instruments are that they stand beside (91.213(d)(3)(ii)); the server files a missing one there too.
 */
export function placardsToCheck(
  list: WalkaroundList,
  writeUps: readonly PackWriteUp[],
): readonly PlacardToCheck[] {
  const area = stationFor(list, 'cabin');
  if (area === null) return [];
  return writeUps
    .filter(({ state }) => state === 'deferred')
    .flatMap((of) =>
      of.placards
        .filter(({ placed }) => placed)
        .map(({ id, wording, location }) => ({ id, wording, location, area, of })),
    );
}

/**
 * The station of a list at which one meets what is stored at an area: itself, or a coarser or finer one for the same part
 * of the aircraft, or the first. Null only for a list without stations.
 */
export function stationFor(list: WalkaroundList, stored: string): ListStation['area'] | null {
  const areas = list.stations.map(({ area }) => area);
  const usual = isArea(stored) ? usualStationOf(stored) : null;
  return (
    areas.find((area) => area === stored) ??
    areas.find((area) => area === usual) ??
    areas.find((area) => usual !== null && usualStationOf(area) === usual) ??
    areas[0] ??
    null
  );
}

/** The next station with something open: after the place one is at, else from the start; null when nothing is open. */
export function nextOpen(stations: readonly StationSoFar[], after: number): StationSoFar | null {
  const around = [...stations.slice(after + 1), ...stations.slice(0, after + 1)];
  return around.find(({ open }) => open.length > 0) ?? null;
}
