/**
 * Says a set of kinds of operation in the fewest plain words: the four night kinds become "at night", the two night
 * kinds for hire "at night for hire". No regulation of its own; the kinds are those of `OPERATION_KINDS`.
 */
import { OPERATION_KINDS, operationId, type OperationKind } from './operations';

const LIGHT_WORDS = { day: 'by day', night: 'at night' } as const;
const RULES_WORDS = { VFR: 'under VFR', IFR: 'under IFR' } as const;
const HIRE_WORDS = { true: 'for hire', false: 'privately' } as const;

/** A part of the eight kinds: each side fixed or free. */
interface Part {
  readonly light: OperationKind['light'] | null;
  readonly rules: OperationKind['rules'] | null;
  readonly hire: boolean | null;
}

/** Widest parts first, so that "at night" is said before "at night for hire" is tried. */
const PARTS: readonly Part[] = ([null, 'night', 'day'] as const)
  .flatMap((light) =>
    ([null, 'IFR', 'VFR'] as const).flatMap((rules) =>
      ([null, true, false] as const).map((hire) => ({ light, rules, hire })),
    ),
  )
  .filter((part) => fixedSides(part) > 0)
  .sort((a, b) => fixedSides(a) - fixedSides(b));

/**
 * The phrases that together name exactly `kinds`: `['at night', 'under IFR']`. All eight give `['for any flight']`,
 * none gives an empty list.
 */
export function kindsInWords(kinds: readonly OperationKind[]): readonly string[] {
  const wanted = new Set(kinds.map(operationId));
  if (OPERATION_KINDS.every((kind) => wanted.has(operationId(kind)))) return ['for any flight'];
  const said = new Set<string>();
  const phrases: string[] = [];
  for (const part of PARTS) {
    const members = OPERATION_KINDS.filter((kind) => isIn(kind, part)).map(operationId);
    const news = members.some((id) => !said.has(id));
    if (!news || !members.every((id) => wanted.has(id))) continue;
    members.forEach((id) => said.add(id));
    phrases.push(partInWords(part));
  }
  return phrases;
}

function fixedSides(part: Part): number {
  return [part.light, part.rules, part.hire].filter((side) => side !== null).length;
}

function isIn(kind: OperationKind, part: Part): boolean {
  return (
    (part.light === null || part.light === kind.light) &&
    (part.rules === null || part.rules === kind.rules) &&
    (part.hire === null || part.hire === kind.hire)
  );
}

function partInWords(part: Part): string {
  const words = [
    part.light === null ? null : LIGHT_WORDS[part.light],
    part.rules === null ? null : RULES_WORDS[part.rules],
    part.hire === null ? null : HIRE_WORDS[`${part.hire}`],
  ];
  return words.filter((word) => word !== null).join(' ');
}
