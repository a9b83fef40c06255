/** What a tab hears of the server, from its own stream or from the tab that holds the stream. */
export type HeardWord =
  /** Something was written. */
  | { readonly kind: 'change'; readonly seq: number }
  /** Words may be lost; a beat follows. */
  | { readonly kind: 'again' }
  /** How far the records have come, and whether a change would be told. */
  | { readonly kind: 'beat'; readonly seq: number | null; readonly listening: boolean }
  /** The stream broke. */
  | { readonly kind: 'down' };

/** A message of `/api/live` or of another tab, or null where it is none that this version knows. */
export function readWord(kind: unknown, data: unknown): HeardWord | null {
  const { seq, listening } = (typeof data === 'object' && data !== null ? data : {}) as Record<
    string,
    unknown
  >;
  if (kind === 'change' && typeof seq === 'number') return { kind, seq };
  if (kind === 'beat') {
    return { kind, seq: typeof seq === 'number' ? seq : null, listening: listening === true };
  }
  if (kind === 'again' || kind === 'down') return { kind };
  return null;
}

/** Longest silence in which a stream still counts: beats come every ten seconds, and one may be late. */
export const SILENT_AFTER_MS = 25_000;

/**
 * What a screen has heard. `shownSeq` is how far the records were when it was drawn. A screen that is not numbered does not
 * know; it looks once at the start, and from then on counts from the number at which it last looked.
 */
export interface Heard {
  readonly numbered: boolean;
  readonly shownSeq: number | null;
  readonly beatAt: number | null;
  readonly listening: boolean;
}

export const HEARD_NOTHING: Heard = { numbered: false, shownSeq: null, beatAt: null, listening: false };

/** What the screen knows after a word, and whether it shows something old and has to look. `now` in milliseconds. */
export function hear(
  heard: Heard,
  word: HeardWord,
  now: number,
): { readonly heard: Heard; readonly look: boolean } {
  if (word.kind === 'down') return { heard: { ...heard, beatAt: null, listening: false }, look: true };
  // The beat that follows says by its number whether anything was missed; who has no number cannot tell.
  if (word.kind === 'again') return { heard, look: !heard.numbered };
  const { seq } = word;
  const look = seq !== null && (heard.shownSeq === null || seq > heard.shownSeq);
  const after: Heard = {
    ...heard,
    ...(word.kind === 'beat' ? { beatAt: now, listening: word.listening } : {}),
    ...(look && !heard.numbered ? { shownSeq: seq } : {}),
  };
  return { heard: after, look };
}

/** Whether a change would be told to this screen at once. A clock put back proves nothing. */
export function isLive({ beatAt, listening }: Heard, now: number): boolean {
  const age = beatAt === null ? -1 : now - beatAt;
  return listening && age >= 0 && age <= SILENT_AFTER_MS;
}
