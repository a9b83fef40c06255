/**
 * What somebody who applies for a special flight permit states, 21.199(a): (1) purpose, (2) itinerary, (3) crew, (4) the ways
 * in which the aircraft does not comply, (5) restrictions thought necessary. Only (4) is known here; the rest is the applicant's
 * to say, and stands as a question. (5) is from memory in its number; the paragraph may ask for more.
 */
import type { AircraftFacts } from '../rules/aircraft';
import { answerForUse } from '../rules/answer';
import type { CalendarDate, Instant } from '../rules/facts';
import type { CiteId } from '../rules/law';
import { canBeLifted } from '../rules/special-flight-permit';
import { referenceUse, type ReferenceBase } from '../rules/use-of-flight';
import type { Line } from '../rules/verdict';

export interface NonCompliance {
  readonly cite: CiteId;
  readonly because: string;
  /** What it is about, where the sentence does not say. */
  readonly about: string | null;
  /** The write-up, requirement or directive to name in the permit; null where the bar is about nothing that can be named. */
  readonly covers: string | null;
}

export interface ApplicationFacts {
  /** (4): what bars a plain flight by day today and a permit can stand in for. */
  readonly doesNotComply: readonly NonCompliance[];
  /** What bars it too, and no permit lifts: to be settled before the flight. */
  readonly notByPermit: readonly Line[];
}

/** The bars of a private flight by day under VFR from the base, asked on `on`, told apart by whether a permit can lift them. */
export function applicationFacts(
  aircraft: AircraftFacts,
  base: ReferenceBase,
  on: CalendarDate,
  now: Instant,
): ApplicationFacts {
  const use = referenceUse({ light: 'day', rules: 'VFR', hire: false }, base, on, now);
  const bars = answerForUse(aircraft, use).lines.filter(({ effect }) => effect === 'bars');
  return {
    doesNotComply: bars.filter(canBeLifted).map((line) => ({
      cite: line.cite,
      because: line.because,
      about: line.about && !line.because.includes(line.about.label) ? line.about.label : null,
      covers: nameable(line, aircraft),
    })),
    notByPermit: bars.filter((line) => !canBeLifted(line)),
  };
}

/** What a permit would have to name for this line: a deferral's or an equipment's write-up, or the thing itself. */
function nameable({ about }: Line, { discrepancies, requirements }: AircraftFacts): string | null {
  if (about === undefined) return null;
  const writeUp = discrepancies.find(
    (d) => d.id === about.id || d.deferral?.id === about.id || d.equipmentId === about.id,
  );
  return writeUp?.id ?? requirements.find(({ id }) => id === about.id)?.id ?? null;
}
