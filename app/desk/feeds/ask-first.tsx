'use client';

import { useState } from 'react';
import { Button, ButtonRow } from '@/app/_ui/button';
import { CommandForm } from '@/app/_ui/command-form';
import { useCommand } from '@/app/_ui/use-command';
import { type Result } from '@/lib/problems';

interface AskFirstProps {
  /** On the button. */
  readonly label: string;
  /** What it is done to, for whoever cannot see beside what the button stands. */
  readonly name: string;
  readonly question: string;
  readonly yes: string;
  readonly no: string;
  readonly action: (input: { requestId: string }) => Promise<Result<unknown>>;
}

/** Something that cannot be taken back: asked once more before it is done. */
export function AskFirst({ label, name, question, yes, no, action }: AskFirstProps) {
  const [asks, setAsks] = useState(false);
  const command = useCommand<Record<string, never>, unknown>({
    action: ({ requestId }) => action({ requestId }),
    start: {},
    onDone: () => setAsks(false),
  });
  if (!asks) {
    return (
      <ButtonRow>
        <Button aria-label={`${label}: ${name}`} onClick={() => setAsks(true)}>
          {label}
        </Button>
      </ButtonRow>
    );
  }
  return (
    <CommandForm
      command={command}
      submit={yes}
      label={`${label}: ${name}`}
      beside={
        <Button weight="quiet" onClick={() => setAsks(false)}>
          {no}
        </Button>
      }
    >
      <p>{question}</p>
    </CommandForm>
  );
}
