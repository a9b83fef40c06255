/**
 * Where a missing fact is entered. A fact that is not known carries the words that name it, so it is looked for among the
 * facts of the aircraft and its base; a record that was never made (no annual, no registration) is known by its paragraph.
 */
import type { AircraftFacts } from './aircraft';
import type { ReferenceBase } from './use-of-flight';
import type { Line } from './verdict';

export type EnterAt =
  | 'operator'
  | 'base'
  | 'type'
  | 'aircraft'
  | 'equipment'
  | 'papers'
  | 'requirements'
  | 'directives'
  | 'mel'
  | 'write-ups'
  | 'work';

/** Paragraphs whose record may never have been made. */
const BY_PARAGRAPH: readonly (readonly [begins: string, enterAt: EnterAt])[] = [
  ['14cfr91.203', 'papers'],
  ['14cfr91.9', 'papers'],
  ['14cfr47.40', 'papers'],
  ['14cfr91.171', 'requirements'],
  ['14cfr91.207(c)', 'requirements'],
  ['14cfr91.207(d)', 'requirements'],
  ['14cfr91.403', 'requirements'],
  ['14cfr91.409', 'requirements'],
  ['14cfr91.411', 'requirements'],
  ['14cfr91.413', 'requirements'],
  ['14cfr141.39', 'requirements'],
  ['14cfr39', 'directives'],
  ['14cfr91.213', 'write-ups'],
  ['14cfr91.405', 'write-ups'],
  ['14cfr91.407', 'work'],
];

/** Whatever is left is equipment that the list does not name. */
export function whereEntered(aircraft: AircraftFacts, base: ReferenceBase, line: Line): EnterAt {
  const { missing, about, cite } = line;
  const places: readonly (readonly [EnterAt, unknown])[] = [
    ['base', base],
    ['type', aircraft.type],
    ['operator', aircraft.part141],
    ['aircraft', [aircraft.standardCategory, aircraft.manufacturedOn, aircraft.ttisTenths]],
    ['directives', aircraft.directives],
    ['mel', aircraft.mel],
    ['papers', aircraft.papers],
    ['requirements', aircraft.requirements],
    ['write-ups', aircraft.discrepancies],
    ['work', aircraft.work],
    ['equipment', aircraft.equipment],
  ];
  const named = places.find(([, facts]) => holdsUnknown(facts, missing));
  if (named) return named[0];
  if (about?.kind === 'discrepancy' || about?.kind === 'deferral') return 'write-ups';
  if (about?.kind === 'requirement') return 'requirements';
  return BY_PARAGRAPH.find(([begins]) => cite.startsWith(begins))?.[1] ?? 'equipment';
}

/** Whether a fact with these words is anywhere in what is given. */
function holdsUnknown(facts: unknown, missing: string | undefined): boolean {
  if (typeof facts !== 'object' || facts === null) return false;
  if (Array.isArray(facts)) return facts.some((one) => holdsUnknown(one, missing));
  if ('known' in facts && facts.known === false) return 'missing' in facts && facts.missing === missing;
  return Object.values(facts).some((one) => holdsUnknown(one, missing));
}
