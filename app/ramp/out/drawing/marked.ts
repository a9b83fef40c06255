import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { areaTitle } from '@/lib/rules/walkaround/areas';
import { placeOf } from './places';

/** What the drawing has to know of a write-up; the server's and the phone's both have it. */
export interface MarkedWriteUp {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly station: string;
  readonly place: string;
  readonly state: string;
  readonly severity: string | null;
}

/** How far one is with a station on a walk. `begun`: some of its items were looked at, and nothing found. */
export type Looked = 'good' | 'finding' | 'begun' | 'not-looked-at';

export interface MarkedPlace {
  readonly area: string;
  readonly title: string;
  /** Place in the order of walking, from 1; null where the list has no station. */
  readonly order: number | null;
  readonly writeUps: readonly MarkedWriteUp[];
}

/**
 * The places to show, in walking order: each station of the list, then whatever else has something written up. A write-up
 * is never left out, wherever an older list put it.
 */
export function markedPlaces(
  t: Translate,
  stations: readonly { readonly area: string; readonly title: string }[],
  writeUps: readonly MarkedWriteUp[],
): readonly MarkedPlace[] {
  const live = writeUps.filter(({ state }) => state !== 'closed');
  const at = (area: string) => live.filter(({ station }) => station === area);
  const listed = new Set(stations.map(({ area }) => area));
  const others = [...new Set(live.map(({ station }) => station))].filter((area) => !listed.has(area));
  return [
    ...stations.map(({ area, title }, index) => ({ area, title, order: index + 1, writeUps: at(area) })),
    ...others.map((area) => ({ area, title: t(areaTitle(area)), order: null, writeUps: at(area) })),
  ];
}

/** Whether the place can be drawn; what cannot is in the list beside it. */
export const isDrawn = ({ area }: MarkedPlace): boolean => placeOf(area) !== null;

/** The worst of a place, for its mark. Undecided grounds; a deferral by itself is what somebody has settled. */
export function worstOf(writeUps: readonly MarkedWriteUp[]): 'grounds' | 'open' | 'deferred' | null {
  const open = writeUps.filter(({ state }) => state === 'open');
  if (open.some(({ severity }) => severity === null || severity === 'grounding')) return 'grounds';
  if (open.length > 0) return 'open';
  return writeUps.length > 0 ? 'deferred' : null;
}

const LOOKED_WORDS: Readonly<Record<Looked, string>> = {
  good: said('good'),
  finding: said('finding'),
  begun: said('begun'),
  'not-looked-at': said('not looked at yet'),
};

/** The place in words, as a button is called: "3, Nose, right side: 1 write-up open, not looked at yet". */
export function placeInWords(
  t: Translate,
  { order, title, writeUps }: MarkedPlace,
  looked: Looked | null,
): string {
  const open = writeUps.filter(({ state }) => state === 'open').length;
  const deferred = writeUps.length - open;
  const parts = [
    open > 0 ? t('{count} open', { count: count(open) }) : null,
    deferred > 0 ? t('{count} deferred', { count: count(deferred) }) : null,
    writeUps.length === 0 && looked === null ? t('nothing written up') : null,
    looked === null ? null : LOOKED_WORDS[looked],
  ].filter((part) => part !== null);
  return `${order === null ? '' : `${order}, `}${title}: ${parts.join(', ')}`;
}

const count = (number: number): string => `${number} ${number === 1 ? 'write-up' : 'write-ups'}`;
