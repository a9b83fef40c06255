import { type Purpose } from '@/lib/rules/operations';
import { type Outcome } from '@/lib/rules/verdict';

/** Outcomes inside a sentence. */
export const OUTCOME_WORDS: Record<Outcome, string> = {
  go: 'go',
  'go-with-limits': 'go with limits',
  'no-go': 'no go',
};

export const PURPOSE_WORDS: Record<Purpose, string> = {
  'instruction-for-hire': 'Instruction for hire',
  'carriage-for-hire': 'Carrying persons for hire',
  'student-solo': 'Student solo',
  private: 'Private, rental',
  'check-flight': 'Check flight after maintenance',
  'to-inspection': 'Ferry to an inspection',
};

export const PAPER_WORDS: Record<string, string> = {
  'airworthiness-certificate': 'Airworthiness certificate',
  registration: 'Registration',
  'flight-manual': 'Flight manual, markings and placards',
  'weight-and-balance': 'Weight and balance',
};
