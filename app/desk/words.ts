import { said } from '@/lib/words/said';
import { type Purpose } from '@/lib/rules/operations';
import { type Outcome } from '@/lib/rules/verdict';

/** Outcomes inside a sentence. */
export const OUTCOME_WORDS: Record<Outcome, string> = {
  go: said('go'),
  'go-with-limits': said('go with limits'),
  'no-go': said('no go'),
};

export const PURPOSE_WORDS: Record<Purpose, string> = {
  'instruction-for-hire': said('Instruction for hire'),
  'carriage-for-hire': said('Carrying persons for hire'),
  'student-solo': said('Student solo'),
  private: said('Private, rental'),
  'check-flight': said('Check flight after maintenance'),
  'to-inspection': said('Ferry to an inspection'),
};

export const PAPER_WORDS: Record<string, string> = {
  'airworthiness-certificate': said('Airworthiness certificate'),
  registration: said('Registration'),
  'flight-manual': said('Flight manual, markings and placards'),
  'weight-and-balance': said('Weight and balance'),
};
