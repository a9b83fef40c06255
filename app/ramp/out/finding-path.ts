/** What the finding form is told by its address. Everything but the station may be left out. */
export interface FindingAsked {
  readonly station?: string;
  /** Key of the list's item it was met at. */
  readonly item?: string;
  /** Number of the walkaround. */
  readonly walk?: string;
  /** Write-up it is about, such as the deferral whose placard is gone. */
  readonly related?: string;
  readonly phase?: string;
  /** Key of the usual finding, chosen beforehand. */
  readonly finding?: string;
  readonly place?: string;
  readonly words?: string;
  /** A measurement taken on the walk, as the person would type it: key and text. */
  readonly measured?: { readonly key: string; readonly text: string };
}

/**
 * The address of the finding form. Query names: station, item, walk, related, phase, finding, place, words, and
 * `measured` as `key:text`. The words are a start the person may change.
 */
export function findingPath(aircraftId: string, asked: FindingAsked): string {
  const query = new URLSearchParams();
  for (const name of ['station', 'item', 'walk', 'related', 'phase', 'finding', 'place', 'words'] as const) {
    const value = asked[name];
    if (value) query.set(name, value);
  }
  if (asked.measured) query.set('measured', `${asked.measured.key}:${asked.measured.text}`);
  const text = query.toString();
  return `/ramp/${aircraftId}/finding${text ? `?${text}` : ''}`;
}
