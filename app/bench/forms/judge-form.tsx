'use client';

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
    done: 'Judged and signed.',
  });
  const kind = useWatch({ control: command.form.control, name: 'kind' });
  return (
    <CommandForm command={command} submit="Sign the judgement" pendingWords="Signing…" label="Judge">
      <SelectField
        name="kind"
        label="What is it?"
        choices={FINDING_KINDS.map((value) => ({ value, label: kindWords(value) }))}
      />
      <JascField name="jasc" />
      <SelectField
        name="equipmentId"
        label="Line of the equipment list"
        optional={kind !== 'inoperative'}
        chooseWords="None of the list"
        choices={equipment.map((item) => ({
          value: item.id,
          label: item.installed === 1 ? item.name : `${item.name} (${item.installed} installed)`,
        }))}
      />
      <NumberField
        name="inoperativeCount"
        label="How many of them do not work"
        hint="Without the number 91.213 cannot be answered, and no answer is no flight."
        optional={kind !== 'inoperative'}
        whole
      />
      <ChoiceGroup
        name="severity"
        label="How bad is it?"
        choices={[
          { value: 'grounding', label: 'Grounding', hint: 'No flight until it is resolved.' },
          {
            value: 'limiting',
            label: 'Limiting',
            hint: 'Equipment that does not work; 91.213 says for which flights it matters.',
          },
          { value: 'note', label: 'Note', hint: 'Looks only; bars nothing.' },
        ]}
      />
      <TextArea name="statement" label="Your reason" rows={3} />
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
