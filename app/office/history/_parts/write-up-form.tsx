'use client';

import { useWords } from '#words';
import { useWatch } from 'react-hook-form';
import { JascField } from '@/app/bench/forms/jasc-field';
import { useAct } from '@/app/bench/forms/use-act';
import { CommandForm } from '@/app/_ui/command-form';
import { ChoiceGroup, NumberField, SelectField, TextArea, TextField } from '@/app/_ui/fields';
import { carryOverWriteUpInput } from '@/lib/carry-over/schema';
import { DEFERRAL_STATEMENT, WRITE_UP_STATEMENT } from '@/lib/carry-over/statements';
import { WRITE_UP_DOCS } from '@/lib/carry-over/write-up-columns';
import { FINDING_KINDS } from '@/lib/findings/schema';
import { KIND_TITLES } from '@/lib/rules/findings/kinds';
import { writeUpCarried } from '../actions';
import styles from '../history.module.css';
import { DeferralFields } from './deferral-fields';
import { Vouching } from '@/app/office/_parts/vouching';

const START: Record<string, string> = {
  ...Object.fromEntries(WRITE_UP_DOCS.map(({ column }) => [column, ''])),
  password: '',
};

/** An open write-up copied from paper, with its deferral if one stands there. The fields are the columns of a file. */
export function WriteUpForm(props: {
  aircraftId: string;
  equipment: readonly { readonly name: string }[];
  melTitles: readonly string[];
  signer: string;
}) {
  const t = useWords();
  const { aircraftId, equipment, melTitles, signer } = props;
  const command = useAct({
    action: writeUpCarried,
    schema: carryOverWriteUpInput,
    start: START,
    input: (typed) => ({ ...typed, aircraftId }),
    done: t('Carried over. It counts from now on, as if it had been written up here.'),
  });
  const [kind, deferred] = useWatch({ control: command.form.control, name: ['kind', 'deferred'] });
  return (
    <CommandForm command={command} submit={t('Sign and carry over')} label={t('Carry over a write-up')}>
      <TextArea name="words" label={t('Its words, as they stand on paper')} rows={2} maxLength={2000} />
      <div className={styles.pair}>
        <TextField name="found_on" label={t('Day it was found')} type="date" />
        <TextField name="found_by" label={t('Who wrote it up')} optional maxLength={120} />
      </div>
      <SelectField
        name="kind"
        label={t('What kind of trouble')}
        choices={FINDING_KINDS.map((value) => ({ value, label: t(KIND_TITLES[value]) }))}
      />
      <JascField name="jasc" />
      <SelectField
        name="equipment"
        label={t('Line of the equipment list')}
        hint={t('Needed where a deferral stands on paper.')}
        optional
        chooseWords={t('None')}
        choices={[...new Set(equipment.map(({ name }) => name))].map((name) => ({
          value: name,
          label: name,
        }))}
      />
      {kind === 'inoperative' && (
        <NumberField name="how_many" label={t('How many do not work')} whole optional />
      )}
      <TextField name="place" label={t('Where on the aircraft')} optional maxLength={200} />
      <ChoiceGroup
        name="severity"
        label={t('How severe, as the paper says')}
        choices={[
          { value: 'grounding', label: t('Grounding') },
          { value: 'limiting', label: t('Limiting'), hint: t('Only equipment that does not work.') },
          { value: 'note', label: t('A note'), hint: t('Only what is cosmetic.') },
          { value: 'not known', label: t('Not known'), hint: t('Grounds until a mechanic has judged it.') },
        ]}
      />
      <TextField
        name="document"
        label={t('Document it is written in')}
        hint={t('With page or date: squawk sheet 41.')}
        maxLength={300}
      />
      <ChoiceGroup
        name="deferred"
        label={t('Does a deferral stand on paper?')}
        sideBySide
        choices={[
          { value: 'yes', label: t('Yes') },
          { value: 'no', label: t('No') },
        ]}
      />
      {deferred === 'yes' && <DeferralFields melTitles={melTitles} />}
      <Vouching
        statement={deferred === 'yes' ? `${WRITE_UP_STATEMENT} ${DEFERRAL_STATEMENT}` : WRITE_UP_STATEMENT}
        signer={signer}
      />
    </CommandForm>
  );
}
