'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { Button } from '@/app/_ui/button';
import { CommandForm } from '@/app/_ui/command-form';
import { TextArea } from '@/app/_ui/fields';
import { ProblemNotice } from '@/app/_ui/problem-notice';
import { useCommand } from '@/app/_ui/use-command';
import { type HousePreview } from '@/lib/house-rules/preview-house-rule';
import { type Problem } from '@/lib/problems';
import { endRule, previewEnd } from './actions';
import { Preview } from './preview';

/** Ends a rule; the law goes on to count. What changes is shown before. */
export function EndRule({ ruleId, version }: { ruleId: string; version: number }) {
  const t = useWords();
  const router = useRouter();
  const [preview, setPreview] = useState<HousePreview | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [looking, look] = useTransition();
  const command = useCommand<{ why: string }, unknown>({
    action: ({ why, requestId }) => endRule({ requestId, ruleId, seenVersion: version, why }),
    start: { why: '' },
    onDone: () => router.push('/office/rules'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('End the rule')}
      label={t('End the rule')}
      beside={
        <Button
          disabled={looking}
          onClick={() =>
            look(async () => {
              const result = await previewEnd(ruleId);
              if (result.ok) setPreview(result.value);
              setProblem(result.ok ? null : result.problem);
            })
          }
        >
          {looking ? t('Asking the rules…') : t('See what its end would change')}
        </Button>
      }
    >
      <TextArea name="why" label={t('Why it ends')} rows={2} maxLength={500} />
      {problem && <ProblemNotice problem={problem} />}
      {preview && <Preview preview={preview} isOld={false} />}
    </CommandForm>
  );
}
