import { findingOf } from '../rules/findings/catalogue';
import type { PartOfAircraft } from '../rules/jasc';
import { majorQuestionsAsked, type MajorQuestion } from '../rules/part-43/43-appendix-a-major';
import { testQuestionsFor, type TestQuestion } from '../rules/part-91/91-411-413-after-work';
import type { WorkRow } from './entry';

/** What the entry of one piece of work is asked beyond 43.9(a). */
export interface EntryAsks {
  /** Preventive, minor or major: its kind may be entered as another than it was begun as. */
  readonly repair: boolean;
  /** Whether it was repaired, or could not be found again. */
  readonly outcome: boolean;
  /** What was written up does not vanish by itself: it cannot be "not found again". */
  readonly staysThere: boolean;
  /** Appendix A(b), for minor and major repairs; empty for other work. */
  readonly majorQuestions: readonly MajorQuestion[];
  /** 91.411(a)(2), (a)(3), 91.413(b), where the system makes them possible. */
  readonly testQuestions: readonly TestQuestion[];
}

/** Kinds that stay until somebody puts them right. */
const STAYS: readonly string[] = ['damage', 'wear', 'fastener', 'document'];
const REPAIRS: readonly string[] = ['preventive', 'minor', 'major'];

type AskedWork = Pick<
  WorkRow,
  'workKind' | 'part' | 'jasc' | 'discrepancy' | 'discrepancyId' | 'deferralId' | 'testForId'
>;

/** What this work's entry is asked, were it entered as `kind`. */
export function asksOf(work: AskedWork, kind: string = work.workKind): EntryAsks {
  const repair = REPAIRS.includes(kind);
  const part = work.part as PartOfAircraft;
  const { discrepancy } = work;
  const reported = discrepancy?.finding.findingKey ? findingOf(discrepancy.finding.findingKey) : null;
  return {
    repair,
    outcome: work.discrepancyId !== null && work.deferralId === null && work.testForId === null,
    // Judged to be something else meanwhile, or not: what was reported counts too.
    staysThere: STAYS.includes(discrepancy?.kind ?? '') || STAYS.includes(reported?.kind ?? ''),
    majorQuestions: kind === 'minor' || kind === 'major' ? majorQuestionsAsked(part, work.jasc) : [],
    testQuestions: repair ? testQuestionsFor(part, work.jasc) : [],
  };
}
