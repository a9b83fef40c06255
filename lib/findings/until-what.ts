import type { SettledBy } from '../rules/findings/finding';
import type { Severity } from '../rules/aircraft';
import type { Translate } from '../words/translate';

/** What a fresh write-up means for the aircraft, in one sentence for the person who has just sent it. */
export function untilWhat(
  t: Translate,
  registration: string,
  severity: Severity | null,
  settledBy: SettledBy,
): string {
  if (severity === 'note') return t('Noted. It bars no flight of {registration}.', { registration });
  if (severity === null) {
    return t('{registration} is no go until a mechanic has looked at it: undecided grounds.', {
      registration,
    });
  }
  switch (settledBy) {
    case 'pilot-servicing':
      return t('{registration} is no go until it is serviced and that is recorded.', { registration });
    case 'deferral-or-repair':
      return t('{registration} is no go until it is repaired, or lawfully deferred for the flight.', {
        registration,
      });
    case 'mechanic':
    case 'anyone':
      return t('{registration} is no go until it is put right and signed.', { registration });
  }
}
