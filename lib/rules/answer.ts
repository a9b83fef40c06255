/**
 * The answer for a flight: everything that has a say in it, asked and joined. Nothing is decided here; each part is
 * judged in the file of its paragraph, and one bar from any of them is no go.
 */
import type { AircraftFacts } from './aircraft';
import { checkRequirements } from './check-requirements';
import { checkRequiredEquipment } from './equipment-check';
import { checkEquipmentConfirmed } from './equipment-confirmed';
import { checkEquipmentInstalled } from './equipment-installed';
import type { CalendarDate, Instant } from './facts';
import { withHouseRules } from './house/house-lines';
import { judgeDiscrepancy } from './judge-discrepancy';
import { OPERATION_KINDS, type OperationKind, type ProposedFlight, type UseOfAircraft } from './operations';
import { checkPapers } from './part-91/91-203-papers';
import { checkWork } from './part-91/91-407-after-maintenance';
import { checkTestsOwed } from './part-91/91-411-413-after-work';
import { withSpecialFlightPermit } from './special-flight-permit';
import { referenceUse, useOfFlight, type ReferenceBase } from './use-of-flight';
import { joinLines, type Answer, type Line } from './verdict';

/** Stored with every release, so that an old answer can be read by the rules that gave it. */
export const RULES_VERSION = '2026.11.27-5';

/**
 * The answer for a proposed flight, and the use it makes of the aircraft. A flight that cannot be judged as composed
 * (it ends before it begins, say) is no go, with no use.
 */
export function answerForFlight(
  aircraft: AircraftFacts,
  flight: ProposedFlight,
): { readonly answer: Answer; readonly use: UseOfAircraft | null } {
  const composed = useOfFlight(flight);
  if (composed.ok) return { answer: answerForUse(aircraft, composed.use), use: composed.use };
  const about = { kind: 'flight', id: aircraft.id, label: aircraft.registration } as const;
  const line: Line = { effect: 'bars', cite: 'house-caution', because: composed.because, about };
  return { answer: joinLines([line]), use: null };
}

/** The answer for one use of the aircraft. The order in which facts are listed does not matter. */
export function answerForUse(given: AircraftFacts, use: UseOfAircraft): Answer {
  const aircraft = inOrder(given);
  const ofDiscrepancies = aircraft.discrepancies.flatMap((d) => judgeDiscrepancy(aircraft, d, use));
  const unconfirmed = checkEquipmentConfirmed(aircraft);
  const lines = [
    ...ofDiscrepancies,
    ...checkWork(aircraft, use),
    ...checkTestsOwed(aircraft, use),
    ...checkRequirements(aircraft, use),
    ...checkPapers(aircraft, use),
    ...unconfirmed,
    ...checkEquipmentInstalled(aircraft, use),
    ...withoutEcho(saidOnce(checkRequiredEquipment(aircraft, use), unconfirmed), ofDiscrepancies, aircraft),
  ];
  // The house comes after everything else, a permit too: it may only take away.
  return withHouseRules(once(withSpecialFlightPermit(lines, use, aircraft)), aircraft, use);
}

/**
 * Today's answer for each of the eight kinds of operation, for one row of the board: what a local flight of an hour
 * from `base` would get on `on`. `now` is the instant at which the board is drawn.
 */
export function answersByOperation(
  aircraft: AircraftFacts,
  base: ReferenceBase,
  on: CalendarDate,
  now: Instant,
): { readonly kind: OperationKind; readonly answer: Answer }[] {
  return OPERATION_KINDS.map((kind) => ({
    kind,
    answer: answerForUse(aircraft, referenceUse(kind, base, on, now)),
  }));
}

/** Longest headline, in characters: what fits a cell of the board in two short lines. */
const HEADLINE_LENGTH = 60;

/**
 * What decides an answer, in a few words: the title of the discrepancy, or the first sentence of the first line that
 * bars or limits. "In order" when none does.
 */
export function headline(answer: Answer): string {
  const deciding = answer.lines.find((line) => line.effect === 'bars' || line.effect === 'limits');
  if (deciding === undefined) return answer.outcome === 'go' ? 'In order' : 'Nothing looked at';
  const { about, house } = deciding;
  if (house !== undefined) return cut(`House rule: ${firstSentence(deciding.because)}`, HEADLINE_LENGTH);
  // A discrepancy is labelled with its number first; on the board its words are wanted.
  const words =
    about?.kind === 'discrepancy' || about?.kind === 'deferral'
      ? about.label.replace(/^\S+ /, '')
      : firstSentence(deciding.because);
  return cut(words, HEADLINE_LENGTH);
}

/** The same facts in an order of our own, so that the order in which they were stored cannot matter. */
function inOrder(aircraft: AircraftFacts): AircraftFacts {
  const byId = <T extends { readonly id: string }>(rows: readonly T[]) => sorted(rows, (row) => row.id);
  const { mel, directives } = aircraft;
  return {
    ...aircraft,
    equipment: byId(aircraft.equipment),
    directives: directives.known ? { ...directives, value: byId(directives.value) } : directives,
    mel:
      mel.known && mel.value !== null
        ? { ...mel, value: { ...mel.value, items: byId(mel.value.items) } }
        : mel,
    papers: byId(aircraft.papers),
    requirements: byId(aircraft.requirements),
    discrepancies: sorted(aircraft.discrepancies, (row) => `${row.number} ${row.id}`),
    work: byId(aircraft.work),
  };
}

function sorted<T>(rows: readonly T[], key: (row: T) => string): T[] {
  return [...rows].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

/** Every demand on an item nobody has confirmed is open for that one reason, which stands there already. */
const saidOnce = (lines: readonly Line[], unconfirmed: readonly Line[]): Line[] =>
  lines.filter(
    ({ missing }) => missing === undefined || !unconfirmed.some((line) => line.missing === missing),
  );

/**
 * The equipment check and the discrepancy on that equipment read the same demands, so each unmet one comes twice. The
 * line of the discrepancy stays, which a screen can open.
 */
function withoutEcho(
  lines: readonly Line[],
  ofDiscrepancies: readonly Line[],
  aircraft: AircraftFacts,
): Line[] {
  const ofWriteUps = new Set(
    ofDiscrepancies.flatMap(({ effect, cite, about }) => (about ? [`${effect} ${cite} ${about.id}`] : [])),
  );
  return lines.filter((line) => {
    const { about } = line;
    if (about?.kind !== 'equipment') return true;
    return !writeUpsOn(aircraft, about.id).some((id) => ofWriteUps.has(`${line.effect} ${line.cite} ${id}`));
  });
}

/** Of whatever kind: damage of an item is written up on it as well. */
const writeUpsOn = (aircraft: AircraftFacts, equipmentId: string): string[] =>
  aircraft.discrepancies.filter((d) => d.equipmentId === equipmentId).map(({ id }) => id);

/** Two checks may come upon the same thing (time in service not known); it is said once. */
function once(lines: readonly Line[]): Line[] {
  const said = new Map<string, string[]>();
  return lines.filter(({ effect, cite, because, about }) => {
    // Words are compared only where the rest is the same: they can be long, and there are many.
    const key = `${effect} ${cite} ${about?.kind} ${about?.id}`;
    const already = said.get(key) ?? [];
    if (already.includes(because)) return false;
    said.set(key, [...already, because]);
    return true;
  });
}

/** Up to the first full stop that ends a sentence, without it. A number such as 1100.0 has none. */
const firstSentence = (text: string): string => text.split(/\.(?:\s|$)/)[0] ?? text;

function cut(text: string, length: number): string {
  if (text.length <= length) return text;
  const short = text.slice(0, length);
  const space = short.lastIndexOf(' ');
  return `${short.slice(0, space > 0 ? space : length)}…`;
}
