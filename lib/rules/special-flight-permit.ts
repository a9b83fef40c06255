/**
 * 14 CFR 21.197, 21.199: what a special flight permit does to the bars of an answer.
 *
 * - 21.197(a): a permit may be issued for an aircraft that may not meet airworthiness requirements but is capable of
 *   safe flight: (1) to fly to a base for repair or to storage, (2) to deliver, (4) to evacuate from danger.
 * - 21.199: it is issued for a purpose, itinerary, crew, named non-compliances and restrictions.
 * - 91.409(c): the annual and the 100-hour do not apply under a permit. 39.23: nor a directive, unless it forbids that.
 * - 91.213(e): nor the limits of 91.213 on inoperative equipment.
 *
 * Readings, all strict: a permit stands in for airworthiness and inspection only. It does not stand in for registration
 * or other papers (91.203, 91.9), for return to service after work (91.407), for what the operation itself asks for
 * (night, IFR, lights, airspace, transmitter), or for a fact nobody knows. It carries no students and nobody for hire.
 */
import type { CiteId } from './law';
import type { UseOfAircraft } from './operations';
import { barsForMissing, type Line, type Subject } from './verdict';

/** Which bars a permit lifts, by the paragraph they stand on, and the paragraph that says it does. */
const LIFTED: readonly { readonly bars: RegExp; readonly by: CiteId }[] = [
  { bars: /^14cfr91\.409\(/, by: '14cfr91.409(c)' },
  { bars: /^14cfr141\.39\(a\)\(3\)$/, by: '14cfr91.409(c)' },
  { bars: /^14cfr39\./, by: '14cfr39.23' },
  { bars: /^14cfr91\.403\(/, by: '14cfr21.197(a)' },
  { bars: /^14cfr91\.(7|405)\(/, by: '14cfr21.197(a)' },
  { bars: /^14cfr91\.(205\(b\)|213)/, by: '14cfr91.213(e)' },
];

const aboutFlight: Subject = { kind: 'flight', id: 'special-flight-permit', label: 'Special flight permit' };

/**
 * The lines of a use flown under its special flight permit; unchanged when it has none, or when nothing bars that a
 * permit lifts. Bars when the permit's limits are not recorded, and when somebody is aboard whom it does not carry.
 */
export function withSpecialFlightPermit(lines: readonly Line[], use: UseOfAircraft): Line[] {
  const permit = use.specialFlightPermit;
  if (permit === null || !lines.some((line) => liftedBy(line) !== null)) return [...lines];
  return [
    ...lines.map((line) => asLimit(line, permit.reference)),
    ...permitLimits(permit),
    ...occupants(use),
  ];
}

function liftedBy(line: Line): CiteId | null {
  if (line.effect !== 'bars' || line.missing !== undefined) return null;
  return LIFTED.find(({ bars }) => bars.test(line.cite))?.by ?? null;
}

function asLimit(line: Line, reference: string): Line {
  const cite = liftedBy(line);
  if (cite === null) return line;
  const unless = cite === '14cfr39.23' ? ' and the directive does not forbid it' : '';
  return {
    ...line,
    effect: 'limits',
    cite,
    because: `${line.because} Only under permit ${reference}, if it names this${unless}.`,
  };
}

/** 21.199: the limits in the permit's own words. */
function permitLimits(permit: NonNullable<UseOfAircraft['specialFlightPermit']>): Line[] {
  if (permit.limits.length === 0) {
    return [
      barsForMissing('14cfr21.199', `the limits of special flight permit ${permit.reference}`, aboutFlight),
    ];
  }
  return permit.limits.map((limit) => ({
    effect: 'limits',
    cite: '14cfr21.199',
    because: `Special flight permit ${permit.reference}: ${limit}`,
    about: aboutFlight,
  }));
}

/** Required crew only, unless it is known that nobody else is aboard: from memory, read strictly. */
function occupants(use: UseOfAircraft): Line[] {
  const cite = '14cfr21.197(a)';
  if (!use.crewOnly.known) return [barsForMissing(cite, use.crewOnly.missing, aboutFlight)];
  const carriesOthers = use.hire || use.purpose === 'student-solo' || !use.crewOnly.value;
  if (!carriesOthers) return [];
  return [
    {
      effect: 'bars',
      cite,
      because: 'A special flight permit carries no students, passengers or hire. Required crew only.',
      about: aboutFlight,
      strictReading: 'A permit may allow more; that is for a person who reads it, not for this answer.',
    },
  ];
}
