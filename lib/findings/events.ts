import { said } from '../words/said';

/** One thing that happened to a write-up, in the words of whoever did it. */
export interface WriteUpEvent {
  readonly at: string;
  readonly who: string;
  readonly what: string;
  readonly words: string;
}

interface DeterminationDone {
  readonly kind: string;
  readonly by: string;
  readonly statement: string;
  readonly at: string;
  /** It stood on paper, and was carried over at this time. */
  readonly onPaper?: { readonly document: string } | null;
}

interface WorkDone {
  readonly forDeferral: boolean;
  readonly state: string;
  readonly startedAt: string;
  readonly startedBy: string;
  readonly description: string;
  readonly signOff: { readonly by: string; readonly at: string } | null;
}

const DETERMINED: Readonly<Record<string, string>> = {
  severity: 'Judged',
  'within-limits': 'Found within limits',
  'no-hazard': 'Deferred',
  servicing: 'Serviced',
  'inspected-at-inspection': 'Looked at again at an inspection',
};

/** What became of a write-up after it was written, oldest first. Work given up without doing it is no event. */
export function eventsOf(
  determinations: readonly DeterminationDone[],
  work: readonly WorkDone[],
): readonly WriteUpEvent[] {
  const events = [
    ...determinations.map(({ kind, by, statement, at, onPaper }) => ({
      at,
      who: by,
      what: onPaper ? said('Deferred on paper, carried over') : (DETERMINED[kind] ?? kind),
      words: statement,
    })),
    ...work
      .filter(({ state }) => state !== 'abandoned')
      .map(({ forDeferral, startedAt, startedBy, description, signOff }) =>
        signOff
          ? {
              at: signOff.at,
              who: signOff.by,
              what: forDeferral ? 'Taken out of use, and signed' : 'Repaired and signed',
              words: description,
            }
          : { at: startedAt, who: startedBy, what: 'Work begun, not signed yet', words: description },
      ),
  ];
  return events.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}
