'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { judgeSeverityInput } from '@/lib/determinations/schema';
import { FINDING_KINDS } from '@/lib/findings/schema';
import { CommandForm } from '../../_ui/command-form';
import { ChoiceGroup, NumberField, SelectField, TextArea } from '../../_ui/fields';
import { judge } from '../actions';
import { kindWords } from '../words';
import { JascField } from './jasc-field';
import { SigningPassword } from './signing-password';
import { orNull, wholeOrNull } from './typed';
import { useAct } from './use-act';

interface JudgeProps {
  readonly discrepancyId: string;
  readonly jasc: string;
  readonly equipmentId: string | null;
  readonly inoperativeCount: number | null;
  readonly equipment: readonly { readonly id: string; readonly name: string; readonly installed: number }[];
  readonly signer: string;
}

/** What it is, which system, how bad. Filed particulars stand as written up; kind and severity are chosen anew. */
export function JudgeForm(props: JudgeProps) {
  const t = useWords();
  const { discrepancyId, jasc, equipmentId, inoperativeCount, equipment, signer } = props;
  const command = useAct({
    action: judge,
    schema: judgeSeverityInput,
    start: {
      kind: '',
      jasc,
      equipmentId: equipmentId ?? '',
      inoperativeCount: inoperativeCount?.toString() ?? '',
      severity: '',
      statement: '',
      password: '',
    },
    input: (typed) => ({
      ...typed,
      discrepancyId,
      equipmentId: orNull(typed.equipmentId),
      inoperativeCount: wholeOrNull(typed.inoperativeCount),
    }),
    done: t('Judged and signed.'),
  });
  const kind = useWatch({ control: command.form.control, name: 'kind' });
  return (
    <CommandForm
      command={command}
      submit={t('Sign the judgement')}
      pendingWords={t('Signing…')}
      label={t('Judge')}
    >
      <SelectField
        name="kind"
        label={t('What is it?')}
        choices={FINDING_KINDS.map((value) => ({ value, label: kindWords(t, value) }))}
      />
      <JascField name="jasc" />
      <SelectField
        name="equipmentId"
        label={t('Line of the equipment list')}
        optional={kind !== 'inoperative'}
        chooseWords={t('None of the list')}
        choices={equipment.map((item) => ({
          value: item.id,
          label:
            item.installed === 1
              ? item.name
              : t('{name} ({installed} installed)', { name: item.name, installed: item.installed }),
        }))}
      />
      <NumberField
        name="inoperativeCount"
        label={t('How many of them do not work')}
        hint={t('Without the number 91.213 cannot be answered, and no answer is no flight.')}
        optional={kind !== 'inoperative'}
        whole
      />
      <ChoiceGroup
        name="severity"
        label={t('How bad is it?')}
        choices={[
          { value: 'grounding', label: t('Grounding'), hint: t('No flight until it is resolved.') },
          {
            value: 'limiting',
            label: t('Limiting'),
            hint: t('Equipment that does not work; 91.213 says for which flights it matters.'),
          },
          { value: 'note', label: t('Note'), hint: t('Looks only; bars nothing.') },
        ]}
      />
      <TextArea name="statement" label={t('Your reason')} rows={3} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
