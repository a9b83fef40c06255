import { findingOf } from '../rules/findings/catalogue';
import { settledByOf } from '../rules/findings/triage';

/**
 * Whether a write-up may be closed by somebody saying what was serviced (oil added, tyre inflated, samples clean). A low
 * strut is servicing in the catalogue but wants a maintenance entry (14 CFR part 43 appendix A(c)(3)), so the catalogue's
 * word on who settles it counts, not the kind. A kind that a person has made stricter closes this way.
 */
export function isClosedByServicing(writeUp: { readonly findingKey: string | null; readonly kind: string }) {
  return (
    settledByOf(writeUp.findingKey) === 'pilot-servicing' &&
    writeUp.findingKey !== null &&
    findingOf(writeUp.findingKey)?.kind === writeUp.kind
  );
}
