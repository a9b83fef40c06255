import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Severity } from '@/lib/rules/aircraft';
import { type Effect, type Outcome } from '@/lib/rules/verdict';
import { Tag, type Shape, type Size, type Tone } from './tag';

interface Look {
  readonly tone: Tone;
  readonly word: string;
  readonly shape: Shape;
}

const OUTCOMES: Record<Outcome, Look> = {
  go: { tone: 'green', word: said('Go'), shape: 'disc' },
  'go-with-limits': { tone: 'amber', word: said('Go with limits'), shape: 'wedge' },
  'no-go': { tone: 'red', word: said('No go'), shape: 'block' },
};

/** An answer: go, go with limits, no go. `null` stands for an aircraft nobody has asked about. */
export function OutcomeMark({ outcome, size }: { outcome: Outcome | null; size?: Size }) {
  const t = useWords();
  const look = outcome
    ? OUTCOMES[outcome]
    : ({ tone: 'grey', word: t('Not looked at'), shape: 'dashes' } as const);
  return (
    <Tag tone={look.tone} shape={look.shape} size={size}>
      {t(look.word)}
    </Tag>
  );
}

const SEVERITIES: Record<Severity, Look> = {
  grounding: { tone: 'red', word: said('Grounding'), shape: 'block' },
  limiting: { tone: 'amber', word: said('Limiting'), shape: 'wedge' },
  watch: { tone: 'blue', word: said('Watch'), shape: 'ring' },
  note: { tone: 'grey', word: said('Note'), shape: 'dot' },
};

/** A severity. `null`: nobody has decided, and an undecided write-up grounds. */
export function SeverityMark({ severity, size }: { severity: Severity | null; size?: Size }) {
  const t = useWords();
  if (severity === null) {
    return (
      <Tag tone="amber" shape="question" size={size}>
        {t('Undecided: grounds')}
      </Tag>
    );
  }
  const look = SEVERITIES[severity];
  return (
    <Tag tone={look.tone} shape={look.shape} size={size}>
      {t(look.word)}
    </Tag>
  );
}

/** What a line does, in the words lists use. Supporting lines stay in ink: green is kept for the answer itself. */
export const EFFECTS: Record<Effect, Look> = {
  bars: { tone: 'red', word: said('Bars'), shape: 'block' },
  limits: { tone: 'amber', word: said('Limits'), shape: 'wedge' },
  notes: { tone: 'blue', word: said('Note'), shape: 'ring' },
  supports: { tone: 'grey', word: said('In order'), shape: 'tick' },
};
