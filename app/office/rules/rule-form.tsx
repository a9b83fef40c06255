'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { useWatch } from 'react-hook-form';
import { Button } from '@/app/_ui/button';
import { CheckList } from '@/app/_ui/check-list';
import { CommandForm } from '@/app/_ui/command-form';
import { ChoiceGroup, TextArea } from '@/app/_ui/fields';
import { ProblemNotice } from '@/app/_ui/problem-notice';
import { useCommand } from '@/app/_ui/use-command';
import { type HouseRuleAsTyped } from '@/lib/house-rules/form';
import { type HousePreview } from '@/lib/house-rules/preview-house-rule';
import { type Problem } from '@/lib/problems';
import { type HouseKind } from '@/lib/rules/house/house-rule';
import { previewRule, saveRule, type NextOf } from './actions';
import { Preview } from './preview';
import { SettingFields, type SettingChoices } from './setting-fields';

/** A rule to be set, or set anew. What it would change can be looked at before it is saved, as often as wanted. */
export function RuleForm(props: {
  kind: HouseKind;
  start: HouseRuleAsTyped;
  of: NextOf;
  choices: SettingChoices;
}) {
  const t = useWords();
  const { kind, start, of, choices } = props;
  const router = useRouter();
  const [looked, setLooked] = useState<{ of: string; preview: HousePreview } | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [looking, look] = useTransition();
  const command = useCommand<HouseRuleAsTyped, { ruleId: string }>({
    action: (typed) => saveRule(typed, of),
    start,
    afterDone: 'keep',
    onDone: ({ ruleId }) => router.push(`/office/rules?set=${ruleId}`),
  });
  const typed = useWatch({ control: command.form.control });
  const { why: _, ...asked } = typed;
  const asking = JSON.stringify(asked);

  const preview = () =>
    look(async () => {
      setProblem(null);
      command.form.clearErrors();
      const values = command.form.getValues();
      const result = await previewRule(values, of?.ruleId ?? null);
      if (result.ok) {
        const { why: __, ...askedThen } = values;
        setLooked({ of: JSON.stringify(askedThen), preview: result.value });
        return;
      }
      for (const [path, messages] of Object.entries(result.problem.fields ?? {})) {
        command.form.setError(path as keyof HouseRuleAsTyped, {
          type: 'server',
          message: messages.join(' '),
        });
      }
      setProblem(result.problem);
    });

  return (
    <CommandForm
      command={command}
      submit={of ? t('Save as a new version') : t('Set the rule')}
      label={t('Rule of the house')}
      pendingWords={t('Saving…')}
      beside={
        <Button onClick={preview} disabled={looking}>
          {looking ? t('Asking the rules…') : t('See what it would change')}
        </Button>
      }
    >
      <SettingFields kind={kind} choices={choices} />
      <ChoiceGroup
        name="reach"
        label={t('For which aircraft')}
        choices={[
          { value: 'fleet', label: t('The whole fleet, also aircraft that come later') },
          { value: 'named', label: t('Only some aircraft or types') },
        ]}
      />
      {typed.reach === 'named' && (
        <>
          <CheckList name="aircraftIds" label={t('Aircraft')} choices={choices.aircraft} />
          <CheckList name="typeIds" label={t('Types: all aircraft of them')} choices={choices.types} />
        </>
      )}
      <TextArea
        name="why"
        label={t('Why')}
        rows={3}
        maxLength={500}
        hint={t('Stands beside the rule wherever somebody meets it, with your name and the date.')}
      />
      {problem && <ProblemNotice problem={problem} />}
      {looked && <Preview preview={looked.preview} isOld={looked.of !== asking} />}
    </CommandForm>
  );
}
