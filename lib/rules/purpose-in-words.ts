import { said } from './said';
import type { Purpose } from './operations';

/** What a flight is for, in words. Wording only. */
export const PURPOSE_NAMES: Readonly<Record<Purpose, string>> = {
  'instruction-for-hire': said('Instruction for hire'),
  'carriage-for-hire': said('Carrying persons for hire'),
  'student-solo': said('Student solo'),
  private: said('Private, rental'),
  'check-flight': said('Check flight after maintenance'),
  'to-inspection': said('Ferry to an inspection'),
};

export const purposeInWords = (purpose: Purpose): string => PURPOSE_NAMES[purpose];
