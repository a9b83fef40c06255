import { type Severity } from '@/lib/rules/aircraft';
import { type Effect, type Outcome } from '@/lib/rules/verdict';
import { Tag, type Shape, type Size, type Tone } from './tag';

interface Look {
  readonly tone: Tone;
  readonly word: string;
  readonly shape: Shape;
}

const OUTCOMES: Record<Outcome, Look> = {
  go: { tone: 'green', word: 'Go', shape: 'disc' },
  'go-with-limits': { tone: 'amber', word: 'Go with limits', shape: 'wedge' },
  'no-go': { tone: 'red', word: 'No go', shape: 'block' },
};

/** An answer: go, go with limits, no go. `null` stands for an aircraft nobody has asked about. */
export function OutcomeMark({ outcome, size }: { outcome: Outcome | null; size?: Size }) {
  const look = outcome
    ? OUTCOMES[outcome]
    : ({ tone: 'grey', word: 'Not looked at', shape: 'dashes' } as const);
  return (
    <Tag tone={look.tone} shape={look.shape} size={size}>
      {look.word}
    </Tag>
  );
}

const SEVERITIES: Record<Severity, Look> = {
  grounding: { tone: 'red', word: 'Grounding', shape: 'block' },
  limiting: { tone: 'amber', word: 'Limiting', shape: 'wedge' },
  watch: { tone: 'blue', word: 'Watch', shape: 'ring' },
  note: { tone: 'grey', word: 'Note', shape: 'dot' },
};

/** A severity. `null`: nobody has decided, and an undecided write-up grounds. */
export function SeverityMark({ severity, size }: { severity: Severity | null; size?: Size }) {
  if (severity === null) {
    return (
      <Tag tone="amber" shape="question" size={size}>
        Undecided: grounds
      </Tag>
    );
  }
  const look = SEVERITIES[severity];
  return (
    <Tag tone={look.tone} shape={look.shape} size={size}>
      {look.word}
    </Tag>
  );
}

/** What a line does, in the words lists use. Supporting lines stay in ink: green is kept for the answer itself. */
export const EFFECTS: Record<Effect, Look> = {
  bars: { tone: 'red', word: 'Bars', shape: 'block' },
  limits: { tone: 'amber', word: 'Limits', shape: 'wedge' },
  notes: { tone: 'blue', word: 'Note', shape: 'ring' },
  supports: { tone: 'grey', word: 'In order', shape: 'tick' },
};
