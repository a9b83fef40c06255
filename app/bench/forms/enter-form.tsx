'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useWatch } from 'react-hook-form';
import { type RequirementKind } from '@/lib/rules/aircraft';
import { enterWorkInput } from '@/lib/work/schema';
import { type WorkView } from '@/lib/work/work-view';
import { CommandForm } from '../../_ui/command-form';
import { ChoiceGroup, NumberField, TextArea, TextField } from '../../_ui/fields';
import { enter } from '../actions';
import { asInput, typedFrom } from './entry-typed';
import { FormGroup } from './form-group';
import { MajorFields } from './major-fields';
import { PartsFields } from './parts-fields';
import { RecordFields } from './record-fields';
import { TestsFields } from './tests-fields';
import { useAct } from './use-act';
import { YesNo } from './yes-no';

/**
 * The entry of 43.9(a). May be written again until it is signed. When somebody else wrote it meanwhile, the page is drawn
 * anew with theirs, and what was typed here stays.
 */
export function EnterForm(props: {
  work: Pick<WorkView, 'id' | 'entry' | 'entryHash' | 'asks'>;
  /** The kind of requirement this work answers; its record asks more than 43.9(a). */
  recurs?: RequirementKind;
}) {
  const t = useWords();
  const { work, recurs } = props;
  const { id, entry, entryHash, asks } = work;
  const router = useRouter();
  const command = useAct({
    action: async (input: unknown) => {
      const answer = await enter(input);
      if (!answer.ok && answer.problem.code === 'superseded') router.refresh();
      return answer;
    },
    schema: enterWorkInput,
    start: typedFrom(entry),
    input: (typed) => ({ ...asInput(typed, entry, asks), workId: id, entryHash }),
    done: t('The entry is written. Read it below as it stands, then sign it.'),
    afterDone: 'keep',
  });
  const { control } = command.form;
  const outcome = useWatch({ control, name: 'outcome' });
  return (
    <CommandForm
      command={command}
      submit={t('Write the entry')}
      pendingWords={t('Writing…')}
      label={t('Write the entry')}
    >
      <FormGroup title={t('The work')}>
        {asks.outcome && (
          <ChoiceGroup
            name="outcome"
            label={t('What came of it?')}
            choices={[
              { value: 'repaired', label: t('Repaired') },
              {
                value: 'could-not-duplicate',
                label: t('Could not be found again'),
                hint: t('Looked for and not there. Damage, wear and missing papers do not vanish.'),
              },
            ]}
          />
        )}
        {asks.outcome && outcome === 'could-not-duplicate' && (
          <TextArea name="lookedFor" label={t('How it was looked for')} rows={3} />
        )}
        <TextArea name="description" label={t('What was done')} rows={5} />
        <TextField
          name="references"
          label={t('By which data')}
          hint={t('Manual, chapter, revision.')}
          optional
        />
        <NumberField
          name="laborHours"
          label={t('Hours of work')}
          unit="h"
          hint={t('With one decimal: 1.5.')}
          optional
        />
        <TextField name="completedOn" label={t('Completed on')} type="date" />
        <TextField
          name="performedBy"
          label={t('Done by')}
          hint={t('Full name of whoever did the work, as it is to stand in the record.')}
        />
      </FormGroup>
      <FormGroup title={t('Parts')}>
        <PartsFields />
        {entry.partsUsed && <TextArea name="partsUsed" label={t('Parts in words')} rows={2} optional />}
      </FormGroup>
      {asks.repair && <MajorFields begunAs={entry.workKind} questions={asks.majorQuestions} />}
      <TestsFields questions={asks.testQuestions} mayOpenStatic={asks.repair && entry.part === 'airframe'} />
      {recurs && <RecordFields kind={recurs} />}
      <FormGroup title={t('Check flight')}>
        <YesNo
          name="checkFlightNeeded"
          label={t('Could it have changed how the aircraft flies or is operated in flight?')}
          hint={t('If so, a check flight is owed before anybody is carried (14 CFR 91.407(b)).')}
        />
        <TextArea name="checkFlightReason" label={t('Why, or why not')} rows={2} />
      </FormGroup>
    </CommandForm>
  );
}
