import type { EquipmentFunction, FindingKind, Severity } from '../aircraft';
import { known, unknown, type Fact } from '../facts';
import { jascCode } from '../jasc';
import { barsForMissing, type Line } from '../verdict';
import { findingOf } from './catalogue';
import { courseOfCatalogue } from './course-of-catalogue';
import { courseOfSomethingElse } from './course-of-something-else';
import { equipmentByJasc } from './equipment-by-jasc';
import type { CatalogueFinding, SettledBy } from './finding';
import { KIND_TITLES } from './kinds';
import type { Measured, StoredLimit } from './measured-against-limits';

export type { SettledBy } from './finding';
export type { Measured, StoredLimit } from './measured-against-limits';

/**
 * Triage of one finding, a proposal only: what it is, how bad, who settles it. People decide afterwards.
 *
 * Severities: `grounding`; `limiting`, equipment that does not work and bars some kinds of flight (91.213 decides which);
 * `watch`, measured within a limit stored for this aircraft with its source, a mechanic has still to confirm it; `note`.
 * Unknown severity means undecided, and undecided grounds (91.7(a)). Damage, wear, leaks, contamination, loose fasteners and
 * documents are never 91.213. The scheme is our design; the paragraphs behind each line are cited there.
 */
export interface TriageInput {
  /** Key of the catalogue, or null for "something else". */
  readonly findingKey: string | null;
  /** What the reporter calls it; may only make the catalogue's kind stricter. */
  readonly kind: FindingKind | null;
  /** System code chosen, or null: the catalogue's, where it has just one. */
  readonly jasc: string | null;
  readonly measurements: Measured;
  readonly limits: readonly StoredLimit[];
}

export interface TriageProposal {
  readonly jasc: Fact<string>;
  readonly kind: Fact<FindingKind>;
  readonly severity: Fact<Severity>;
  /** What counts until somebody has decided: unknown is grounding. */
  readonly effective: Severity;
  readonly equipmentFunction: EquipmentFunction | null;
  readonly title: string;
  readonly reasons: readonly Line[];
  readonly settledBy: SettledBy;
}

/** Kinds that are never inoperative equipment and always need a mechanic. */
const NEVER_91_213: ReadonlySet<FindingKind> = new Set([
  'damage',
  'wear',
  'leak',
  'contamination',
  'fastener',
  'document',
] as const);

/** Proposes code, kind, severity and who settles it. Never lower than grounding where a deciding fact is missing. */
export function triage(input: TriageInput): TriageProposal {
  const finding = input.findingKey === null ? null : findingOf(input.findingKey);
  const kind = kindOf(finding, input.kind);
  const jasc = jascOf(finding, input.jasc);
  const course =
    finding && kind.known && kind.value === finding.kind
      ? courseOfCatalogue(finding, input)
      : courseOfSomethingElse(kind, jasc);
  const unlisted =
    input.findingKey !== null && !finding
      ? [barsForMissing('14cfr91.7(a)', 'what was found (not in the catalogue)')]
      : [];
  const open = jasc.known ? [] : [missingNote(jasc.missing)];
  return {
    jasc,
    kind,
    severity: unlisted.length > 0 ? unknown('what was found (not in the catalogue)') : course.severity,
    effective: unlisted.length === 0 && course.severity.known ? course.severity.value : 'grounding',
    equipmentFunction: equipmentOf(finding, jasc),
    title: finding?.title ?? titleOfSomethingElse(kind, jasc),
    reasons: [...unlisted, ...course.reasons, ...open],
    settledBy: unlisted.length > 0 ? 'mechanic' : course.settledBy,
  };
}

/**
 * Who may close a write-up of this finding without more ado. Only `pilot-servicing` may be closed by recording servicing: a
 * low strut is servicing too, but the law wants a maintenance entry for it (Appendix A(c)(3)).
 */
export const settledByOf = (findingKey: string | null): SettledBy =>
  (findingKey === null ? null : findingOf(findingKey))?.settledBy ?? 'mechanic';

/** The catalogue's kind, unless the reporter saw damage where the catalogue expects a dead or empty thing. */
function kindOf(finding: CatalogueFinding | null, reported: FindingKind | null): Fact<FindingKind> {
  if (!finding) return reported ? known(reported) : unknown('what kind of trouble it is');
  const stricter = reported && NEVER_91_213.has(reported) && !NEVER_91_213.has(finding.kind);
  return known(stricter ? reported : finding.kind);
}

/** The chosen code, else the catalogue's; unknown where the catalogue offers several and none was chosen. */
function jascOf(finding: CatalogueFinding | null, chosen: string | null): Fact<string> {
  if (chosen !== null) {
    const entry = jascCode(chosen);
    return entry.known ? known(entry.value.code) : entry;
  }
  if (!finding) return unknown('the system it belongs to (JASC code)');
  if (finding.choices.length === 0) return known(finding.jasc);
  return unknown(`which it is: ${finding.choices.map((choice) => choice.label.toLowerCase()).join(', ')}`);
}

function equipmentOf(finding: CatalogueFinding | null, jasc: Fact<string>): EquipmentFunction | null {
  if (finding && finding.choices.length === 0) return finding.equipmentFunction;
  if (!jasc.known) return null;
  const choice = finding?.choices.find((offered) => offered.jasc === jasc.value);
  return choice ? choice.equipmentFunction : equipmentByJasc(jasc.value);
}

function titleOfSomethingElse(kind: Fact<FindingKind>, jasc: Fact<string>): string {
  const what = kind.known ? KIND_TITLES[kind.value] : 'Something else';
  const code = jasc.known ? jascCode(jasc.value) : null;
  return code?.known ? `${what}: ${code.value.title}` : what;
}

const missingNote = (missing: string): Line => ({
  effect: 'bars',
  cite: '14cfr91.405(a)',
  because: `Not known: ${missing}.`,
  missing,
});
