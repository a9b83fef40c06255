/**
 * What the answer engine still lacks before it can say go for an aircraft. No rule of its own: it asks
 * `answersByOperation` for the eight kinds of operation and gathers the lines that bar only because a fact is not known.
 * So setting up is done when this list is empty, and not before.
 *
 * A kind of operation which the equipment list itself rules out (it names an item and says that none is installed) is not
 * asked about: an aircraft without gyroscopic instruments needs no VOR check.
 */
import type { AircraftFacts, EquipmentFunction } from './aircraft';
import { answersByOperation } from './answer';
import { installedCount, rowsOf } from './equipment-count';
import type { CalendarDate, Instant } from './facts';
import { ruleInWords } from './lacking-in-words';
import type { CiteId } from './law';
import { operationId, type OperationId } from './operations';
import type { ReferenceBase } from './use-of-flight';
import type { Answer, Line, Subject } from './verdict';
import { whereEntered, type EnterAt } from './where-entered';

export type { EnterAt } from './where-entered';

/** One fact that is missing, and what waits for it. */
export interface Lacking {
  /** Completes "not known: ...". */
  readonly missing: string;
  /** The first paragraph that asks for it, in the order of an answer. */
  readonly cite: CiteId;
  /** Every paragraph that asks for it. */
  readonly cites: readonly CiteId[];
  /** "No certification date of type X: the anticollision light rule of 91.205(b)(11) cannot be judged." */
  readonly because: string;
  /** What it is about, where the fact belongs to one row: an inspection, a paper, an item of equipment, a write-up. */
  readonly about?: Subject;
  /** Kinds of operation that it holds up, in the order of tables. */
  readonly kinds: readonly OperationId[];
  readonly enterAt: EnterAt;
}

/**
 * Everything missing for `aircraft` at its base on `on`, in the order in which it is entered when setting up. Empty when no
 * kind of operation is held up by a fact that is not known; an answer may still be no go for what is known.
 * Refuses (RangeError) what `answersByOperation` refuses.
 */
export function lackingFor(
  aircraft: AircraftFacts,
  base: ReferenceBase,
  on: CalendarDate,
  now: Instant,
): Lacking[] {
  const found = new Map<string, { lines: Line[]; kinds: OperationId[]; enterAt: EnterAt }>();
  for (const { kind, answer } of answersByOperation(aircraft, base, on, now)) {
    if (ruledOutByEquipment(aircraft, answer)) continue;
    for (const line of answer.lines) {
      // What a rule of the house waits for (an oil reading, a walkaround) is no part of setting up: it comes with every flight.
      if (line.effect !== 'bars' || line.missing === undefined || line.house !== undefined) continue;
      const enterAt = whereEntered(aircraft, base, line);
      const key = JSON.stringify([enterAt, line.missing, ofOneRow(enterAt) ? line.about?.id : null]);
      const entry = found.get(key) ?? { lines: [], kinds: [], enterAt };
      entry.lines.push(line);
      if (!entry.kinds.includes(operationId(kind))) entry.kinds.push(operationId(kind));
      found.set(key, entry);
    }
  }
  return [...found.values()]
    .map(({ lines, kinds, enterAt }) => lackingOf(lines, kinds, enterAt))
    .sort((a, b) => ORDER.indexOf(a.enterAt) - ORDER.indexOf(b.enterAt));
}

/** The order of setting up; what the daily work leaves open comes last. */
export const ORDER: readonly EnterAt[] = [
  'operator',
  'base',
  'type',
  'aircraft',
  'equipment',
  'papers',
  'requirements',
  'directives',
  'mel',
  'write-ups',
  'work',
];

function lackingOf(lines: readonly Line[], kinds: readonly OperationId[], enterAt: EnterAt): Lacking {
  const [first] = lines;
  if (first?.missing === undefined) throw new Error('A missing fact has a line that names it.');
  const cites = [...new Set(lines.map(({ cite }) => cite))];
  const about = ofOneRow(enterAt) && first.about ? { about: first.about } : {};
  // What no paragraph asks for (an item nobody confirmed) has said it in its own words.
  const byLaw = cites.filter((cite) => cite.startsWith('14cfr'));
  const because =
    byLaw.length === 0
      ? first.because
      : `${notEntered(first.missing)}: ${joined(byLaw.map(ruleInWords))} cannot be judged.`;
  return { missing: first.missing, cite: first.cite, cites, because, ...about, kinds, enterAt };
}

/** "the certification date" -> "No certification date"; "when it was done" -> "Not known when it was done". */
const notEntered = (missing: string): string =>
  missing.startsWith('the ') ? `No ${missing.slice('the '.length)}` : `Not known ${missing}`;

const joined = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** Facts of a row are one by one; a fact of the type or the base is one, whichever items ask for it. */
const ofOneRow = (enterAt: EnterAt): boolean =>
  ['equipment', 'papers', 'requirements', 'write-ups', 'work'].includes(enterAt);

/** The list names an item of the function and says that none is there, and somebody confirmed it: not to be entered. */
const isKnownAbsent = (aircraft: AircraftFacts, fn: EquipmentFunction): boolean => {
  const rows = rowsOf(aircraft, fn);
  return (
    rows.length > 0 && installedCount(aircraft, fn) === 0 && rows.every(({ confirmed }) => confirmed.known)
  );
};

function ruledOutByEquipment(aircraft: AircraftFacts, answer: Answer): boolean {
  const absent = new Set(
    aircraft.equipment.filter((row) => isKnownAbsent(aircraft, row.function)).map(({ id }) => id),
  );
  return answer.lines.some(
    ({ effect, missing, about }) =>
      effect === 'bars' && missing === undefined && about?.kind === 'equipment' && absent.has(about.id),
  );
}
