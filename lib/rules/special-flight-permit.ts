/**
 * 14 CFR 21.197, 21.199: what a special flight permit does to the bars of an answer. Side by side with the text:
 *
 * - 21.197(a): a permit may be issued for an aircraft that may not meet airworthiness requirements but is capable of
 *   safe flight: (1) to fly to a base for repair, alteration or maintenance, or to storage, (2) to deliver or export,
 *   (4) to evacuate from danger. (3), (5), (b) and (c) are outside this tool.
 * - 21.199(a): the applicant states purpose, itinerary, crew, the ways in which the aircraft does not comply, and the
 *   restrictions thought necessary. So a permit is for one flight from one place to another (`from`, `to`, `used`), and
 *   stands in only for what it names (`covers`): matched by what a bar is about. What it named and has become another
 *   matter since (judged, deferred or observed again) is left out of `covers` by whoever reads the facts: strict reading.
 * - 21.199(b): the FAA may make, or have made, the inspections and tests needed for safety. Asked for and not signed: bars.
 * - 91.409(c): the annual and the 100-hour do not apply under a permit. 39.23: nor a directive, unless it forbids that.
 * - 91.213(e): nor the limits of 91.213 on inoperative equipment.
 *
 * From memory, no copy read (FAA Form 8130-7 and its guidance): good days, both ends included, and that the permit is
 * spent with its flight.
 *
 * Readings, all strict: a permit stands in for airworthiness and inspection only. It does not stand in for registration
 * or other papers (91.203, 91.9), for return to service after work (91.407), for what the operation itself asks for
 * (night, IFR, lights, airspace, transmitter), for what it does not name, or for a fact nobody knows. It carries no
 * students and nobody for hire. A flight said to be made under a permit is held to it, whether or not anything bars.
 */
import type { AircraftFacts } from './aircraft';
import { dayInWords } from './in-words';
import type { CiteId } from './law';
import type { SpecialFlightPermit, UseOfAircraft } from './operations';
import { lastDayOf } from './requirement-lines';
import { barsForMissing, type Line, type Subject } from './verdict';

/** Which bars a permit can lift, by the paragraph they stand on, and the paragraph that says it does. */
const LIFTED: readonly { readonly bars: RegExp; readonly by: CiteId }[] = [
  { bars: /^14cfr91\.409\(/, by: '14cfr91.409(c)' },
  { bars: /^14cfr141\.39\(a\)\(3\)$/, by: '14cfr91.409(c)' },
  { bars: /^14cfr39\./, by: '14cfr39.23' },
  { bars: /^14cfr91\.403\(/, by: '14cfr21.197(a)' },
  { bars: /^14cfr91\.(7|405)\(/, by: '14cfr21.197(a)' },
  { bars: /^14cfr91\.(205\(b\)|213)/, by: '14cfr91.213(e)' },
  // The clock of a list is a limit of 91.213(a)(5).
  { bars: /^mmel-category-/, by: '14cfr91.213(e)' },
];

const aboutFlight: Subject = { kind: 'flight', id: 'special-flight-permit', label: 'Special flight permit' };

/**
 * The lines of a use flown under its special flight permit; unchanged when it has none. What the permit names and can
 * lift becomes a limit; its own conditions are added. Bars when they are not met or not recorded.
 */
export function withSpecialFlightPermit(
  lines: readonly Line[],
  use: UseOfAircraft,
  aircraft: AircraftFacts,
): Line[] {
  const permit = use.specialFlightPermit;
  if (permit === null) return [...lines];
  return [
    ...lines.map((line) => asLimit(line, permit, aircraft)),
    ...permitLimits(permit),
    ...daysOf(permit, use),
    ...itineraryOf(permit, use),
    ...stateOf(permit),
    ...occupants(use),
  ];
}

/** Whether a permit that names it can stand in for this bar; what nobody knows it never can. */
export const canBeLifted = (line: Line): boolean => liftedBy(line) !== null;

function liftedBy(line: Line): CiteId | null {
  if (line.effect !== 'bars' || line.missing !== undefined) return null;
  return LIFTED.find(({ bars }) => bars.test(line.cite))?.by ?? null;
}

/**
 * The permit names what this line is about: the thing itself; for a deferral its write-up; for equipment every open
 * write-up that says it does not work.
 */
function isNamed(line: Line, { covers }: SpecialFlightPermit, { discrepancies }: AircraftFacts): boolean {
  const { about } = line;
  if (about === undefined) return false;
  if (about.kind === 'deferral') {
    return discrepancies.some((d) => d.deferral?.id === about.id && covers.includes(d.id));
  }
  if (about.kind === 'equipment') {
    const out = discrepancies.filter((d) => d.kind === 'inoperative' && d.equipmentId === about.id);
    return out.length > 0 && out.every((d) => covers.includes(d.id));
  }
  return covers.includes(about.id);
}

function asLimit(line: Line, permit: SpecialFlightPermit, aircraft: AircraftFacts): Line {
  const cite = liftedBy(line);
  if (cite === null || !isNamed(line, permit, aircraft)) return line;
  const unless = cite === '14cfr39.23' ? ', and if the directive does not forbid it' : '';
  return {
    ...line,
    effect: 'limits',
    cite,
    because: `${line.because} Only under permit ${permit.reference}, which names it${unless}.`,
  };
}

/** 21.199: the limits in the permit's own words. */
function permitLimits(permit: SpecialFlightPermit): Line[] {
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

const bars = (cite: CiteId, because: string): Line => ({ effect: 'bars', cite, because, about: aboutFlight });

/** First and last good day, both included: the whole flight lies between them. */
function daysOf({ reference, goodFrom, goodThrough }: SpecialFlightPermit, use: UseOfAircraft): Line[] {
  const firstDay = use.departOn < use.arriveOn ? use.departOn : use.arriveOn;
  if (firstDay < goodFrom) {
    return [bars('14cfr21.199', `Permit ${reference} is good from ${dayInWords(goodFrom)}, not before.`)];
  }
  return lastDayOf(use) > goodThrough
    ? [bars('14cfr21.199', `Permit ${reference} was good through ${dayInWords(goodThrough)}.`)]
    : [];
}

/** 21.199(a): the itinerary it was issued for. */
function itineraryOf(
  { reference, fromIdent, toIdent }: SpecialFlightPermit,
  { from, to }: UseOfAircraft,
): Line[] {
  if (from.ident === fromIdent && to.ident === toIdent) return [];
  const because = `Permit ${reference} is for ${fromIdent} to ${toIdent}; this flight goes from ${from.ident} to ${to.ident}.`;
  return [bars('14cfr21.199(a)', because)];
}

/** 21.199(b), and one flight a permit. */
function stateOf({ reference, inspection, used }: SpecialFlightPermit): Line[] {
  const lines: Line[] = [];
  if (used)
    lines.push(
      bars('14cfr21.199(a)', `Permit ${reference} was for one flight, and that is released already.`),
    );
  if (inspection === 'owed') {
    lines.push(
      bars('14cfr21.199(b)', `Permit ${reference} asks for an inspection first; nobody has signed it yet.`),
    );
  }
  return lines;
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
