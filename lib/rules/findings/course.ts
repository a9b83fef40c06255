import type { Severity } from '../aircraft';
import { unknown, type Fact } from '../facts';
import type { Line } from '../verdict';
import type { SettledBy } from './finding';

/** How bad a finding is taken to be, who settles it, and why. */
export interface Course {
  readonly severity: Fact<Severity>;
  readonly settledBy: SettledBy;
  readonly reasons: readonly Line[];
}

/** Nobody has judged it: grounds. */
export const undecided = (missing: string, settledBy: SettledBy = 'mechanic'): Course => ({
  severity: unknown(missing),
  settledBy,
  reasons: [
    {
      effect: 'bars',
      cite: '14cfr91.7(a)',
      because: `Undecided, and undecided grounds. Not known: ${missing}.`,
      missing,
    },
  ],
});

/** 91.213(a): equipment that does not work. */
export const asks91_213 = (more: string): Line => ({
  effect: 'limits',
  cite: '14cfr91.213(a)',
  because: `Equipment that does not work: no takeoff until it is repaired or lawfully deferred for the flight. ${more}`,
});
