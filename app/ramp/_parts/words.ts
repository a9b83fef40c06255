import { areaTitle } from '@/lib/rules/walkaround/areas';
import { type WriteUpSummary } from '@/lib/findings/summary';

/** What a station is called. A station of an older list keeps the words it was stored with. */
export const stationTitle = (key: string): string => areaTitle(key);

/** Where it is: the station, and the place in the reporter's words. */
export const whereInWords = ({ station, place }: Pick<WriteUpSummary, 'station' | 'place'>): string =>
  place ? `${stationTitle(station)}: ${place}` : stationTitle(station);

const CLOSED: Readonly<Record<string, string>> = {
  repaired: 'Repaired and signed',
  serviced: 'Serviced',
  'within-limits': 'Found within limits',
};

/** How a write-up stands, in a word or two. */
export function stateInWords({ state, closedHow }: Pick<WriteUpSummary, 'state' | 'closedHow'>): string {
  if (state === 'closed') return (closedHow && CLOSED[closedHow]) ?? 'Closed';
  return state === 'deferred' ? 'Deferred' : 'Open';
}
