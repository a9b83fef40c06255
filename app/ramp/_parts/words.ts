import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { areaTitle } from '@/lib/rules/walkaround/areas';
import { type WriteUpSummary } from '@/lib/findings/summary';

/** What a station is called. A station of an older list keeps the words it was stored with. */
export const stationTitle = (t: Translate, key: string): string => t(areaTitle(key));

/** Where it is: the station, and the place in the reporter's words. */
export const whereInWords = (
  t: Translate,
  { station, place }: Pick<WriteUpSummary, 'station' | 'place'>,
): string => (place ? `${stationTitle(t, station)}: ${place}` : stationTitle(t, station));

const CLOSED: Readonly<Record<string, string>> = {
  repaired: said('Repaired and signed'),
  serviced: said('Serviced'),
  'within-limits': said('Found within limits'),
};

/** How a write-up stands, in a word or two. */
export function stateInWords(
  t: Translate,
  { state, closedHow }: Pick<WriteUpSummary, 'state' | 'closedHow'>,
): string {
  if (state === 'closed') return t((closedHow && CLOSED[closedHow]) ?? said('Closed'));
  return state === 'deferred' ? t('Deferred') : t('Open');
}
