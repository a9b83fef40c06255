import { missingDetail } from '../inspections/comply-by-work';
import { newExpiryRefused } from '../inspections/new-expiry';
import { Refusal, type ProblemLine } from '../problems';
import type { RequirementKind } from '../rules/aircraft';
import type { PartOfAircraft } from '../rules/jasc';
import { classifyAsked } from '../rules/part-43/43-appendix-a-major';
import { testQuestionsOpen } from '../rules/part-91/91-411-413-after-work';
import type { z } from 'zod';
import type { WorkRow } from './entry';
import type { EntryAsks } from './entry-asks';
import type { enterWorkInput } from './schema';

export type EntryInput = z.output<typeof enterWorkInput>;

/** What is wrong with an entry: messages by field, and the paragraphs behind them. */
class Gaps {
  readonly fields: Record<string, string[]> = {};
  readonly lines: ProblemLine[] = [];
  at(field: string, message: string): void {
    (this.fields[field] ??= []).push(message);
  }
}

/**
 * Holds an entry against what its work is asked. Everything missing is said at once, each under its field, with the
 * paragraphs where law stands behind it.
 */
export function refuseGaps(work: WorkRow, input: EntryInput, kind: string, asks: EntryAsks): void {
  const gaps = new Gaps();
  outcomeGaps(work, input, asks, gaps);
  majorGaps(work, input, kind, asks, gaps);
  if (kind === 'major') recordGaps(input, gaps);
  if (work.requirement) {
    detailGaps(work.requirement.kind as RequirementKind, input, gaps);
    const wrongExpiry = newExpiryRefused(work.requirement, input.completedOn, input.details?.newExpiry);
    if (wrongExpiry) gaps.at('details.newExpiry', wrongExpiry);
  }
  for (const { key } of testQuestionsOpen(asks.testQuestions, input.tests ?? {})) {
    gaps.at(`tests.${key}`, 'Answer yes or no: a test can be owed.');
  }
  if (Object.keys(gaps.fields).length > 0) {
    throw new Refusal('invalid', { fields: gaps.fields, lines: gaps.lines });
  }
}

/** Work on something that recurs: what its record needs beyond the entry. */
function detailGaps(kind: RequirementKind, input: EntryInput, gaps: Gaps): void {
  const missing = missingDetail(kind, input.details ?? {});
  if (!missing) return;
  gaps.at(`details.${missing.field}`, missing.because);
  gaps.lines.push({ cite: missing.cite, because: missing.because });
}

function outcomeGaps(work: WorkRow, input: EntryInput, asks: EntryAsks, gaps: Gaps): void {
  if (!asks.outcome) return;
  if (!input.outcome) return gaps.at('outcome', 'Say what came of it.');
  const before = work.supersedes && (work.supersedes.outcome ?? 'repaired');
  if (before && before !== input.outcome) {
    gaps.at(
      'outcome',
      'A correction does not change what came of it: the write-up is closed. The same trouble again is a new write-up.',
    );
  }
  if (input.outcome !== 'could-not-duplicate') return;
  if (asks.staysThere) {
    gaps.at(
      'outcome',
      'Damage, wear, loose fasteners and missing papers do not vanish: repair it, or find it within limits.',
    );
  }
  if (!input.lookedFor) gaps.at('lookedFor', 'Say how it was looked for.');
}

/** Appendix A(b): every question answered, and a repair that is major entered as one. */
function majorGaps(work: WorkRow, input: EntryInput, kind: string, asks: EntryAsks, gaps: Gaps): void {
  if (asks.majorQuestions.length === 0) return;
  const found = classifyAsked(work.part as PartOfAircraft, work.jasc, input.majorAnswers ?? {});
  if (!found.kind.known) {
    gaps.at('majorAnswers', 'Say whether one of these was done, and which.');
  } else if (found.kind.value === 'major' && kind === 'minor') {
    gaps.at(
      'majorAnswers',
      'That makes it a major repair (part 43 Appendix A(b)): enter it as major, or correct the answer.',
    );
    gaps.lines.push(...found.lines.map(({ cite, because }) => ({ cite, because })));
  }
}

/** 43.5(b), (c), 43.9(d), Appendix B: what the record of a major repair needs. */
function recordGaps(input: EntryInput, gaps: Gaps): void {
  if (!input.majorRecord) gaps.at('majorRecord', 'Say which paper records the major repair.');
  if (!input.form337) gaps.at('form337', 'The number or date of that paper is needed.');
  if (!input.approvedData) gaps.at('approvedData', 'Name the approved data it was done by.');
  if (input.limitsChanged === undefined) {
    gaps.at('limitsChanged', 'Say whether the flight manual’s limits or data changed.');
  }
  if (input.limitsChanged && !input.limitsRevised) {
    gaps.at('limitsRevised', 'Say how the flight manual was revised.');
  }
  if (input.cabinTank === undefined) {
    gaps.at('cabinTank', 'Say whether a fuel tank was put into the cabin or baggage compartment.');
  }
  if (input.cabinTank && input.copyAboard === undefined) {
    gaps.at('copyAboard', 'Say whether the copy of Form 337 is aboard.');
  }
}
