import type { Severity } from '../rules/aircraft';
import type { SettledBy } from '../rules/findings/finding';

/** What a fresh write-up means for the aircraft, in one sentence for the person who has just sent it. */
export function untilWhat(registration: string, severity: Severity | null, settledBy: SettledBy): string {
  if (severity === 'note') return `Noted. It bars no flight of ${registration}.`;
  const until = ((): string => {
    if (severity === null) return 'a mechanic has looked at it: undecided grounds';
    switch (settledBy) {
      case 'pilot-servicing':
        return 'it is serviced and that is recorded';
      case 'deferral-or-repair':
        return 'it is repaired, or lawfully deferred for the flight';
      case 'mechanic':
      case 'anyone':
        return 'it is put right and signed';
    }
  })();
  return `${registration} is no go until ${until}.`;
}
