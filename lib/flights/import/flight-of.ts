/** A written flight as one of this school: which aircraft, who, from where to where, when. Pure. */
import { parseTenths } from '../../rules/hours';
import type { ImportContext, PlannedByFile, Shown } from './check-rows';
import { PURPOSES, RULES } from '../schema';
import type { Column, RowError, WrittenAircraft, WrittenFlight } from './parsed';
import { instantOf } from './written-time';

export interface KnownAircraft {
  readonly id: string;
  readonly registration: string;
  readonly baseIdent: string;
  readonly zone: string;
}

export interface KnownPilot {
  readonly id: string;
  readonly name: string;
  /** A pilot certificate is on file. */
  readonly isPilot: boolean;
  readonly hasLeft: boolean;
}

export interface Fields {
  readonly flight: PlannedByFile;
  readonly shown: Shown;
}

const MOST_WORDS = 500;
const IDENT = /^[A-Z0-9]{2,7}$/;

/**
 * `fields` null: it could not be made out, and `errors` say why. With fields there can be errors, too (a purpose that is none): they
 * do not count for a flight that is over.
 */
export function flightOf(
  written: WrittenFlight,
  context: ImportContext,
): {
  readonly fields: Fields | null;
  readonly errors: readonly RowError[];
  readonly notes: readonly string[];
} {
  const errors: RowError[] = [...written.errors];
  const notes: string[] = [...written.notes];
  const wrong = (column: Column, say: string): null => {
    // What is missing or unreadable was told already.
    if (!errors.some((error) => error.column === column)) errors.push({ column, say });
    return null;
  };
  const aircraft = aircraftOf(written.aircraft, context, wrong);
  const pilot = pilotOf(written, context, wrong, notes);
  const from = placeOf(written.from, 'from', context, wrong);
  const to = placeOf(written.to, 'to', context, wrong);
  const one = <T extends string>(
    text: string,
    known: readonly T[],
    column: Column,
    fold: string,
  ): T | null =>
    text === ''
      ? null
      : (known.find((value) => value === fold) ??
        wrong(column, `${JSON.stringify(text)} is none of ${known.join(', ')}.`));
  const rules = one(written.rules, RULES, 'rules', written.rules.toUpperCase());
  const purpose = one(written.purpose, PURPOSES, 'purpose', written.purpose.toLowerCase());
  const plannedTenths = tenthsOf(written.hours, wrong);
  if (written.words.length > MOST_WORDS)
    wrong('words', `The words can have ${MOST_WORDS} characters at most.`);
  const home = aircraft && { ident: aircraft.baseIdent, zone: aircraft.zone };
  const departPlace = written.from === '' ? home : from;
  const arrivePlace = written.to === '' ? home : to;
  const departAt = timeAt(written.depart, departPlace, 'depart', wrong, notes);
  const arriveAt =
    written.arrive.kind === 'after'
      ? minutesAfter(departAt, written.arrive.minutes)
      : timeAt(written.arrive, arrivePlace, 'arrive', wrong, notes);
  if (!aircraft || departAt === null || arriveAt === null || errors.some(({ column }) => column === null)) {
    return { fields: null, errors, notes };
  }
  const flight: PlannedByFile = {
    aircraftId: aircraft.id,
    pilotId: pilot?.id ?? null,
    departAt,
    arriveAt,
    plannedTenths,
    words: written.words,
    fromIdent: from?.ident ?? null,
    toIdent: to?.ident ?? null,
    rules,
    purpose,
  };
  const shown = {
    registration: aircraft.registration,
    pilot: pilot?.name ?? null,
    zone: departPlace?.zone ?? aircraft.zone,
  };
  return { fields: { flight, shown }, errors, notes };
}

type Wrong = (column: Column, say: string) => null;

function aircraftOf(
  written: WrittenAircraft,
  { aircraft }: ImportContext,
  wrong: Wrong,
): KnownAircraft | null {
  if (written.kind === 'named') {
    const known = aircraft.get(written.text.toUpperCase());
    return known ?? wrong('aircraft', `${JSON.stringify(written.text)} is no aircraft in service here.`);
  }
  for (const text of written.texts) {
    const words = new Set(text.toUpperCase().split(/[^A-Z0-9-]+/));
    const named = [...aircraft.values()].filter(({ registration }) => words.has(registration.toUpperCase()));
    if (named.length > 1) {
      return wrong(
        'aircraft',
        `It names ${named.map(({ registration }) => registration).join(' and ')}; one flight is of one aircraft.`,
      );
    }
    if (named[0]) return named[0];
  }
  return wrong('aircraft', 'Neither RESOURCES nor LOCATION nor SUMMARY names an aircraft in service here.');
}

/** A CSV names its pilot; of an event's people it is the one who is a pilot here. */
function pilotOf(
  { emails, aircraft }: WrittenFlight,
  { people }: ImportContext,
  wrong: Wrong,
  notes: string[],
): KnownPilot | null {
  const known = emails.map((email) => people.get(email.trim().toLowerCase()));
  if (aircraft.kind === 'named') {
    if (emails.length === 0) return null;
    const [person] = known;
    if (!person) return wrong('pilot_email', `${JSON.stringify(emails[0])} is the address of nobody here.`);
    if (person.hasLeft) return wrong('pilot_email', `${person.name} has left.`);
    if (!person.isPilot) return wrong('pilot_email', `No pilot certificate of ${person.name} is on file.`);
    return person;
  }
  const pilots = new Map(
    known.filter((person) => person?.isPilot && !person.hasLeft).map((person) => [person?.id, person]),
  );
  if (pilots.size > 1) {
    const names = [...pilots.values()].map((person) => person?.name).join(' and ');
    notes.push(`${names} are pilots here. Who flies it is left open.`);
    return null;
  }
  return [...pilots.values()][0] ?? null;
}

function placeOf(text: string, column: 'from' | 'to', { places }: ImportContext, wrong: Wrong) {
  if (text === '') return null;
  const ident = text.toUpperCase();
  const zone = places.get(ident);
  return zone !== undefined && IDENT.test(ident)
    ? { ident, zone }
    : wrong(column, `${JSON.stringify(text)} is neither a base here nor in the airport file.`);
}

function tenthsOf(hours: string, wrong: Wrong): number | null {
  if (hours === '') return null;
  const tenths = parseTenths(hours);
  return tenths !== null && tenths > 0
    ? tenths
    : wrong('hours', `${JSON.stringify(hours)} is no time in tenths of an hour, for example 1.2.`);
}

function timeAt(
  time: WrittenFlight['depart'],
  place: { readonly ident: string; readonly zone: string } | null,
  column: 'depart' | 'arrive',
  wrong: Wrong,
  notes: string[],
): string | null {
  // Without a place a local time means nothing yet, and the place is what has to be put right first.
  if (time.kind === 'told' || (place === null && time.kind === 'local')) return null;
  const found = instantOf(time, place ?? { ident: 'UTC', zone: 'UTC' });
  if (!found.ok) return wrong(column, found.say);
  if (found.note) notes.push(found.note);
  return found.at;
}

const minutesAfter = (at: string | null, minutes: number): string | null =>
  at === null ? null : new Date(Date.parse(at) + minutes * 60_000).toISOString();
