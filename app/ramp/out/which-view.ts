/** Which screen of the on-the-phone app an address means. Pure, so that it can be tested without a browser. */
export type View =
  | { readonly kind: 'fleet' }
  | { readonly kind: 'sent' }
  | { readonly kind: 'aircraft' | 'walk' | 'finding' | 'meters'; readonly aircraftId: string }
  /** A page that only the server can draw. */
  | { readonly kind: 'elsewhere' };

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
const OF_AIRCRAFT = ['walk', 'finding', 'meters'] as const;

/** Reads a path like `/ramp/{id}/walk`. Anything that is not of the ramp on the phone is `elsewhere`. */
export function whichView(path: string): View {
  const [root, first, second, ...more] = path.split('/').filter((part) => part !== '');
  if (root !== 'ramp' || more.length > 0) return { kind: 'elsewhere' };
  if (first === undefined) return { kind: 'fleet' };
  if (first === 'out' && second === undefined) return { kind: 'sent' };
  if (!ID.test(first)) return { kind: 'elsewhere' };
  if (second === undefined) return { kind: 'aircraft', aircraftId: first };
  const kind = OF_AIRCRAFT.find((one) => one === second);
  return kind ? { kind, aircraftId: first } : { kind: 'elsewhere' };
}

/**
 * Whether the shell draws this path itself. The list of aircraft and one aircraft are the server's while it answers: what
 * it says of today is fresher than what the phone keeps.
 */
export function staysInShell(path: string, isOnline: boolean): boolean {
  const { kind } = whichView(path);
  if (kind === 'elsewhere') return false;
  return (kind !== 'fleet' && kind !== 'aircraft') || !isOnline;
}
