import type { AircraftFacts } from './aircraft';
import type { ReleaseStateName } from './release-state';
import type { Answer, Line } from './verdict';

/**
 * What changed facts do to a release that was given before. On the ground a no go voids it: nobody departs on an answer
 * that is not true any more (91.7(a)). In the air nothing on the ground decides: the pilot in command is warned and
 * discontinues the flight when the aircraft is not airworthy (91.7(b)). That a take-off counts only once it is on record
 * is this house's caution, no source.
 */
export interface Recall {
  readonly what: 'void' | 'warned';
  /** What bars or limits now. Of a warning, only what was not known at release or told since. May be none of a void one. */
  readonly lines: readonly Line[];
}

/**
 * Null: the release stands, or has ended.
 * @param known lines of the answer at release, and of every warning since
 * @param now the answer with the facts of now at the flight's own times; null when it could not be judged, which is no go
 */
export function recallOf(state: ReleaseStateName, known: readonly Line[], now: Answer | null): Recall | null {
  if (state !== 'released' && state !== 'accepted' && state !== 'airborne') return null;
  const lines = now?.lines ?? [NOT_JUDGED];
  if (state !== 'airborne' && (now === null || now.outcome === 'no-go')) {
    return { what: 'void', lines: lines.filter(({ effect }) => effect === 'bars') };
  }
  const said = new Set(known.map(keyOf));
  const fresh = lines.filter(
    (line) => (line.effect === 'bars' || line.effect === 'limits') && !said.has(keyOf(line)),
  );
  return fresh.length > 0 ? { what: 'warned', lines: fresh } : null;
}

const NOT_JUDGED: Line = {
  effect: 'bars',
  cite: 'house-caution',
  because: 'The facts changed, and the answer could not be worked out anew. What cannot be judged is no go.',
};

const keyOf = ({ effect, cite, because, about }: Line): string =>
  JSON.stringify([effect, cite, because, about?.kind ?? null, about?.id ?? null]);

/**
 * The write-up behind these lines, by its id: one that was not there at release before one that was. Null when none of
 * them is about a write-up.
 */
export function writeUpBehind(
  lines: readonly Line[],
  now: Pick<AircraftFacts, 'discrepancies'>,
  atRelease: Pick<AircraftFacts, 'discrepancies'>,
): string | null {
  const there = new Set(atRelease.discrepancies.map(({ id }) => id));
  const behind = lines.flatMap(({ about }) => {
    const found = about && now.discrepancies.find((d) => d.id === about.id || d.deferral?.id === about.id);
    return found ? [found.id] : [];
  });
  return behind.find((id) => !there.has(id)) ?? behind[0] ?? null;
}

/** What happened to the release, in words for its pilot and for the desk. */
export function recallInWords({ what, lines }: Recall, isAirborne: boolean): string {
  const [first, ...others] = lines;
  const more = others.length > 0 ? ` And ${others.length} more.` : '';
  const because = first ? `${first.because}${more}` : '';
  if (isAirborne) {
    return (
      `Facts changed while the flight is in the air: ${because} Its pilot in command decides, and discontinues the flight ` +
      'when the aircraft is not airworthy (14 CFR 91.7(b)). Reach the pilot.'
    );
  }
  return what === 'void'
    ? `The answer is no go now${because ? `: ${because}` : '.'} Nobody departs on this release.`
    : `Facts changed after the release: ${because} Read it before you depart.`;
}
