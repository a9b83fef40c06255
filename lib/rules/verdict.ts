import type { HouseMark } from './house/house-rule';
import type { CiteId } from './law';

/**
 * What one line of a verdict does to the outcome.
 * - `supports`: a reason in favour, says what was looked at and found in order.
 * - `notes`: worth knowing, changes nothing.
 * - `limits`: flight may go, but only inside the limit said in `because`.
 * - `bars`: no go until what `because` says is settled.
 */
export type Effect = 'supports' | 'notes' | 'limits' | 'bars';

/** What a line is about, so that a screen can link to it. */
export interface Subject {
  readonly kind:
    | 'discrepancy'
    | 'deferral'
    | 'placard'
    | 'work'
    | 'paper'
    | 'requirement'
    | 'equipment'
    | 'aircraft'
    | 'flight'
    | 'person';
  readonly id: string;
  readonly label: string;
}

/** One line of a verdict: what it does, the paragraph it stands on, and why in plain words. */
export interface Line {
  readonly effect: Effect;
  readonly cite: CiteId;
  readonly because: string;
  /** Set when the line bars because a fact is not known: names that fact. */
  readonly missing?: string;
  readonly about?: Subject;
  /** Set where the text is unsettled and we took the strict reading: says so in one sentence. */
  readonly strictReading?: string;
  /** Set on a line of a rule of the house: whose it is. Never on a line of the law. */
  readonly house?: HouseMark;
}

export type Outcome = 'go' | 'go-with-limits' | 'no-go';

/** The answer for one flight or one kind of operation. Lines are sorted: bars, limits, notes, supports. */
export interface Answer {
  readonly outcome: Outcome;
  readonly lines: readonly Line[];
}

const ORDER: Record<Effect, number> = { bars: 0, limits: 1, notes: 2, supports: 3 };

/**
 * Joins lines into an answer: any `bars` is no go, else any `limits` is go with limits, else go.
 * No lines at all means nothing was looked at, which is never go; the caller must not let that happen, and
 * this function answers no go if it does.
 */
export function joinLines(lines: readonly Line[]): Answer {
  const sorted = [...lines].sort((a, b) => ORDER[a.effect] - ORDER[b.effect]);
  const has = (effect: Effect) => sorted.some((line) => line.effect === effect);
  const outcome: Outcome =
    sorted.length === 0 || has('bars') ? 'no-go' : has('limits') ? 'go-with-limits' : 'go';
  return { outcome, lines: sorted };
}

/** A line that bars because a fact is missing. Reads "Not known: <missing>. ...". */
export function barsForMissing(cite: CiteId, missing: string, about?: Subject): Line {
  return { effect: 'bars', cite, because: `Not known: ${missing}.`, missing, about };
}
