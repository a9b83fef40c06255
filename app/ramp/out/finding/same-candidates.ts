import { NOT_SURE, readSame, SOMETHING_ELSE, type FindingDraft } from '@/lib/findings/compose-finding';
import { likelyTheSame, type MatchDraft } from '@/lib/rules/findings/same-finding';
import { type PackAircraft, type PackFinding, type PackWriteUp } from '@/lib/walkarounds/pack';
import { knownOf } from './asked';

/** One that may be meant, with the reasons why it was thought of. */
export interface MayBeThis {
  readonly writeUp: PackWriteUp;
  readonly because: readonly string[];
}

export interface Candidates {
  /** At most three, and in any case the one that was answered about. */
  readonly shown: readonly MayBeThis[];
  /** One of them is so likely that a twin must not be written without a word. */
  readonly isStrong: boolean;
  /** What was chosen is enough to think of one; nothing had to be typed. */
  readonly isByChoice: boolean;
}

const NONE: Candidates = { shown: [], isStrong: false, isByChoice: false };
const MOST_SHOWN = 3;

/** Write-ups of the aircraft, open, deferred or lately closed, that what is being written up may be the same as. */
export function candidatesFor(
  draft: FindingDraft,
  area: string,
  findings: readonly PackFinding[],
  aircraft: PackAircraft,
): Candidates {
  if (draft.finding === '') return NONE;
  const known = knownOf(aircraft);
  const asked = matchDraft(draft, area, findings);
  const likely = likelyTheSame(asked, known);
  const answered = known.find(({ id }) => id === readSame(draft.same)?.writeUpId);
  const others = likely.filter(({ writeUp }) => writeUp.id !== answered?.id);
  const because = likely.find(({ writeUp }) => writeUp.id === answered?.id)?.because ?? [];
  return {
    shown: [...(answered ? [{ writeUp: answered, because }] : []), ...others].slice(0, MOST_SHOWN),
    isStrong: likely.some(({ strong }) => strong),
    isByChoice: answered !== undefined || likelyTheSame({ ...asked, place: '', words: '' }, known).length > 0,
  };
}

function matchDraft(draft: FindingDraft, area: string, findings: readonly PackFinding[]): MatchDraft {
  const sure = (answer: string) => (answer === '' || answer === NOT_SURE ? null : answer);
  const finding =
    draft.finding === SOMETHING_ELSE ? null : (findings.find(({ key }) => key === draft.finding) ?? null);
  return {
    station: area,
    findingKey: finding?.key ?? null,
    title: finding?.title ?? null,
    kind: finding ? finding.kind : sure(draft.kind),
    jasc: finding ? (finding.choices.length > 0 ? sure(draft.choice) : finding.jasc) : null,
    place: draft.place,
    words: draft.words,
  };
}
